/** What a stake is, and a group of them. */
import type { PlanPoint } from "../../site/index.js";
import type { words } from "../../words/index.js";
import type { StationKind } from "./path.js";

/** What a stake stands for. */
export type StakeKind = keyof typeof words.stakes.kinds;

/** One point to set out. m, site coordinates. */
export interface Stake {
  /** Short enough for a lath, no two alike: "T1-F3". */
  name: string;
  work: string;
  kind: StakeKind;
  at: PlanPoint;
  /** Ground as found; null beyond the survey. */
  ground: number | null;
  /** What is to be dug or filled to; null where it is the ground, as at daylight. */
  grade: number | null;
  /** m along a trench's path in plan. */
  station?: number;
  stationKind?: StationKind;
  /** True where a dig would take the stake away. */
  lost: boolean;
}

/** Stakes in the order in which they are set, a group for each line that is closed or followed. */
export interface StakeGroup {
  work: string;
  kind: StakeKind;
  closed: boolean;
  stakes: readonly Stake[];
}
