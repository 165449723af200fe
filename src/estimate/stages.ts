import type { Stage } from "./types.js";

/** The stages of the job in order, as the slider and the command line know them. */
export const STAGES: readonly Stage[] = ["found", "dug", "bedded", "set", "backfilled"];

/** What a person reads for each stage. */
export const STAGE_NAMES: Readonly<Record<Stage, string>> = {
  found: "as found",
  dug: "dug",
  bedded: "bedded",
  set: "set",
  backfilled: "backfilled",
};
