/** What is not known, drawn many times over: ranges, what drives them, where to probe next. Pure. */
export { chanceModel, DEFAULT_SEED, runChance, shapeOf } from "./model.js";
export type { ChanceModel, ChanceRuns, ChanceShape } from "./model.js";
export { DEFAULT_RANGE, DEFAULT_SHARE, doubtsOf } from "./rockModel.js";
export { summarise } from "./summary.js";
export type {
  Chance,
  Drawn,
  Driver,
  DriverKind,
  Histogram,
  NextProbe,
  ProbePlace,
  Spread,
} from "./types.js";

/** Simulates a scheme at once, `runs` times. */
export { chanceOf } from "./chanceOf.js";
