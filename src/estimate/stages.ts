import type { Stage } from "./types.js";

/**
 * The stages of the job in order: the one list that the slider, the command line and the scene read.
 * A stage that `Stage` gains goes here and into the names below.
 */
export const STAGES: readonly Stage[] = [
  "found",
  "stripped",
  "dug",
  "bedded",
  "set",
  "zone",
  "backfilled",
];

/** True when the job has come at least as far as a stage. */
export function hasCome(stage: Stage, to: Stage): boolean {
  return STAGES.indexOf(stage) >= STAGES.indexOf(to);
}

/** What a person reads for each stage. */
export const STAGE_NAMES: Readonly<Record<Stage, string>> = {
  found: "as found",
  stripped: "stripped",
  dug: "dug",
  bedded: "bedded",
  set: "set",
  zone: "covered",
  backfilled: "backfilled",
};
