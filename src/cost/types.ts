import type { Range } from "../machines/index.js";
import type { PRICE_UNITS, Finding, Quantity } from "../site/index.js";

/** What one price is for: t is 1,000 kg, L a litre, load one truckload, h an hour, d one day. */
export type PriceUnit = (typeof PRICE_UNITS)[number];

/** One priced line. Money in the site's currency. */
export interface CostLine {
  /** Unique in the result: the price line's id, with what it is for where it is used twice. */
  id: string;
  name: string;
  /** Ids of the works that it is for; absent when it is for the job as a whole. */
  where?: readonly string[];
  quantity: Quantity;
  /** Price ids that `scheme.prices` may set to change this line; several for a mix of hire. */
  priceIds: readonly string[];
  per: PriceUnit;
  /** Money for one `per`; for the mix of hire, for all of it. */
  price: Range;
  amount: Range;
  /** Of the price. */
  source: string;
  /** True when the scheme set the price, false when it is a demo price. */
  own: boolean;
  /** The price is one that stands in: what this very thing costs is not known yet. */
  unpriced?: true;
  /** Absent for a line that follows from the works. */
  made?: "own-line" | "tax";
}

/** Truckloads of one material, its mass and its volumes. */
export interface ImportLoads {
  material: string;
  name: string;
  /** m³ in place. */
  placed: number;
  /** m³ in the truck. */
  loose: number;
  mass: Quantity;
  loads: Quantity;
}

/** Truckloads away and in. */
export interface Loads {
  /** m³ loose in one truckload. */
  truckVolume: number;
  surplus: Quantity;
  imports: readonly ImportLoads[];
}

/** What the scheme costs. Money in `currency`. */
export interface CostResult {
  currency: string;
  lines: readonly CostLine[];
  /** Sum of the lines end by end: the envelope, wider than chance would have it. */
  total: Range;
  totalWorking: Quantity;
  loads: Loads;
  /** Works that no line prices, by id. */
  notPriced: readonly string[];
  findings: readonly Finding[];
}
