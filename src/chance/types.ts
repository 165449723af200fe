import type { Range } from "../machines/index.js";
import type { PlanPoint } from "../site/index.js";

/** How one figure turned out over all runs, in its own unit. */
export interface Spread {
  /** One run in ten lies below. */
  low: number;
  /** As many runs lie below as above. */
  likely: number;
  /** One run in ten lies above. */
  high: number;
  mean: number;
  /** Standard deviation. */
  sd: number;
}

/** What a driver is about, for words and for a jump to where it can be mended. */
export type DriverKind = "rock" | "output" | "swell" | "price";

/** One thing that is not known, and how much of the spread of the total goes with it. */
export interface Driver {
  id: string;
  kind: DriverKind;
  name: string;
  /**
   * Share of the variance of the total that goes with it, 0 to 1: the squared correlation, or for
   * the rock the share that its volumes explain together.
   */
  share: number;
}

/** A place where a further probe could go, and what it would tell. */
export interface ProbePlace {
  at: PlanPoint;
  /** Share of the variance of the total that a probe here would take away, 0 to 1. */
  share: number;
  /** The same of the volume of rock. */
  rockShare: number;
}

/** What is known of the total once the next probe is in, as expected beforehand. */
export interface NextProbe extends ProbePlace {
  /** m of each layer but the last that the probes around it give. */
  thickness: readonly number[];
  /** Standard deviation of the total without and with it, in money. */
  sdBefore: number;
  sdAfter: number;
  /** Standard deviation of the volume of rock without and with it, m³ bank. */
  rockBefore: number;
  rockAfter: number;
}

/** How many runs fell into one of the equal steps from `from` to `to`. */
export interface Histogram {
  from: number;
  to: number;
  counts: readonly number[];
}

/** The whole simulation of one scheme. Money in the site's currency. */
export interface Chance {
  runs: number;
  seed: number;
  total: Spread;
  /** Whole working days of the digger. */
  days: Spread;
  /** Calendar days of the whole job, from the first worked to the last. */
  jobDays: Spread;
  /** h of the digger. */
  hours: Spread;
  /** m³ bank of rippable and hard rock. */
  rock: Spread;
  /** m³ bank of hard rock alone. */
  hardRock: Spread;
  /** Truckloads in and away. */
  loads: Spread;
  totalCounts: Histogram;
  /** All of them, the largest share first. */
  drivers: readonly Driver[];
  /**
   * Everywhere that was tried, and the place that narrows the total most; null where no probe would
   * tell anything.
   */
  probeMap: readonly ProbePlace[];
  nextProbe: NextProbe | null;
  /** What was drawn, in words, with its ends and source. */
  drawn: readonly Drawn[];
}

/** One figure that every run draws anew. */
export interface Drawn {
  id: string;
  kind: DriverKind;
  name: string;
  range: Range;
  unit: string;
  source: string;
}
