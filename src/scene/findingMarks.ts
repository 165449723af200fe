import type { Finding, Work } from "../site/index.js";

/**
 * The worst that was found about a work or its pipes; null when there is no more than a note,
 * or than what a person took on with a reason.
 */
export function worstOfWork(work: Work, findings: readonly Finding[]): "stop" | "caution" | null {
  const ids = work.kind === "trench" ? [work.id, ...work.pipes.map(({ id }) => id)] : [work.id];
  let worst: "caution" | null = null;
  for (const { level, where, accepted } of findings) {
    if (!ids.includes(where) || accepted !== undefined) continue;
    if (level === "stop") return "stop";
    if (level === "caution") worst = "caution";
  }
  return worst;
}
