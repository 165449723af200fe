/** What the crane lift is worked out from, and what comes of it. */
import type { DigResult } from "../dig/index.js";
import type { Lift, Quantity, Site } from "../site/index.js";
import type { ChartRow } from "./cranes.js";
import type { GroundAt } from "./standing.js";
import type { Reason } from "./types.js";

/** The crane that a scheme lifts with: kg, m, m²; figures that nobody gave are absent. */
export interface LiftCrane {
  name: string;
  table: readonly ChartRow[];
  mass?: number;
  block?: number;
  outriggers?: number;
  padArea?: number;
  source: string;
}

/** One short thing to be minded at a stand. */
export interface LiftWarning {
  /** As the finding's code, without its "lift." */
  code: string;
  text: string;
}

/** One tank lifted from one stand. A figure is null where it cannot be had from what was entered. */
export interface StandLift {
  /** Id and name of the stand. */
  stand: string;
  name: string;
  /** Whether nothing entered speaks against it; the operator decides. */
  works: boolean;
  /** Every reason against it. */
  reasons: readonly Reason[];
  /** What is to be minded there all the same, as the findings say at length. */
  warnings: readonly LiftWarning[];
  /** m in plan from the axis of rotation to the tank's centre. */
  radius: Quantity;
  /** kg rated at that radius; null beyond the chart. */
  rated: Quantity | null;
  /** load ÷ rated. */
  share: Quantity | null;
  /** m from the nearest pad to the hole's edge, and what is to be kept. */
  edge: { distance: Quantity; needed: Quantity } | null;
  /** The overhead line that leaves least room; null without lines. */
  line: LineRoom | null;
  /** Pa under the most loaded pad. */
  pad: Quantity | null;
  /** m that the ground differs under the pads; null without outriggers or beyond the survey. */
  unlevel: Quantity | null;
}

/** One tank and the stands that it might be set from. */
export interface TankLift {
  tank: string;
  name: string;
  /** kg on the hook; null where no weight of the tank is entered. */
  load: Quantity | null;
  stands: readonly StandLift[];
  /** Id of the stand that works with the smallest share of the rating; null when none does. */
  best: string | null;
}

/** What the lift part says. SI; shares as plain ratios. */
export interface LiftResult {
  crane: LiftCrane;
  tanks: readonly TankLift[];
  /** Id of the stand that works for every tank with the smallest greatest share; null if none. */
  best: string | null;
}

/** Line of an erosion barrier; what each place has beyond east and north does not count. */
export type Barrier = readonly (readonly [number, number, ...number[]])[];

/** What `checkLift` hands on to the parts of one lift. */
export interface LiftJob {
  site: Pick<Site, "limits" | "units" | "rules">;
  lift: Lift;
  crane: LiftCrane;
  dig: Pick<DigResult, "works">;
  groundAt: GroundAt;
  /** Lines of the erosion barriers in plan, m. */
  barriers: readonly Barrier[];
}

/** One overhead line and how near boom or load could come to it. */
export interface LineRoom {
  /** Id and name of the limit. */
  limit: string;
  name: string;
  /** m in plan, the boom swung any way; 0 where it could be over the line. */
  distance: Quantity;
  /** m to be kept. */
  needed: Quantity;
  /** Whether anything could come within 20 ft, so that the line's owner must be asked first. */
  isAskFirst: boolean;
  /** Over 1,000 kV: how far is for the line's owner to say. */
  isOwners: boolean;
}
