import type { Quantity } from "../site/index.js";

/** Low, likely and high of one figure, in the figure's own unit; low ≤ likely ≤ high. */
export interface Range {
  low: number;
  likely: number;
  high: number;
}

/** Time that one material takes in one work. */
export interface MaterialHours {
  /** Material id, or "native" for the site's own earth. */
  material: string;
  /** `dig`: taken out (m³ bank); `place`: put back and compacted (m³ in place). */
  action: "dig" | "place";
  volume: number;
  /** h; low is the quickest. */
  hours: Range;
  /** The likely hours, opened. */
  working: Quantity;
}

/** Time that one work takes. */
export interface WorkHours {
  id: string;
  name: string;
  /** h of the machine to dig it. */
  dig: Range;
  /** h to place and compact what goes in. */
  place: Range;
  /** `dig` and `place` together. */
  hours: Range;
  materials: readonly MaterialHours[];
}

/** A mix of hire periods: how many of each are paid for. */
export interface RentalCover {
  days: number;
  /** Of 7 calendar days and 40 meter hours. */
  weeks: number;
  /** Of 28 calendar days and 160 meter hours. */
  fourWeeks: number;
}

/** What the digger costs to hire, in the money of the price list. */
export interface Rental {
  /** The cheapest cover for the likely hours. */
  cover: RentalCover;
  /** The cheapest covers if the job goes quickly or slowly. */
  coverIf: { quick: RentalCover; slow: RentalCover };
  /** Hire alone: quick job at low rates, likely, slow job at high rates. */
  cost: Range;
  delivery: Range;
  /** Days of hydraulic hammer and what they cost; zeros where there is no hard rock. */
  hammer: { days: Range; cost: Range };
  /** `cost`, `delivery` and the hammer together, without fuel. */
  total: Range;
  source: string;
}

/** One reason why a machine cannot do the job. */
export interface Reason {
  /** What it falls short in: depth, bucket, reach, dump-height, access-width, stand-slope and such. */
  code: string;
  /** Id of the work that it cannot do; null for the job as a whole. */
  work: string | null;
  /** What follows the machine's name in a sentence, in the site's own units. */
  text: string;
  /** What the job asks and what the machine or the place has, in `unit` (SI; "" for a slope). */
  needs: number;
  has: number;
  unit: string;
}

/** One machine of the catalogue, held against the job. */
export interface Candidate {
  id: string;
  name: string;
  can: boolean;
  /** Every reason why it cannot, worst first; empty when it can. */
  reasons: readonly Reason[];
  /** One plain sentence: why it cannot, or how it compares. */
  reason: string;
  hours: Range;
  /** Whole working days. */
  days: Range;
  /** Hire, delivery and hammer over its schedule, without fuel; of one that cannot, unscheduled. */
  price: Range;
  /** Money: likely cost of the whole job with it; absent where it was not planned. */
  whole?: number;
  /** Likely working days of the whole job with it, and calendar days from first to last. */
  jobDays?: number;
  calendarDays?: number;
}
