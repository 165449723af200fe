import type { Work } from "../site/index.js";

/** Every id that a finding about this work may name: its own and its pipes'. */
export function idsOf(work: Work): string[] {
  return work.kind === "trench" ? [work.id, ...work.pipes.map((pipe) => pipe.id)] : [work.id];
}
