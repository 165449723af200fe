import type { PlanPoint } from "./schema.js";

/** What the engine has to say about a site: data, never a thrown error. */
export interface Finding {
  /** `stop`: it does not work as drawn; `caution`: a person must look; `note`: worth knowing. */
  level: "stop" | "caution" | "note";
  /** Closed, dotted code such as `pipe.fall-too-small`; stable, for tests and links. */
  code: string;
  /** Id of the work, pipe, point, probe or limit that it concerns; "site" when it is the whole. */
  where: string;
  /** The place meant, [x, y] in site coordinates, m; absent when `where` says it all. */
  at?: PlanPoint;
  /** One or two plain sentences, in the site's own units: what, where, what to do. */
  text: string;
  /** Title, publisher and section, or "common practice, no source", or "geometry". */
  source: string;
  /** Why a person took it on, from the file, and what it said then where that differs; never on a stop. */
  accepted?: { reason: string; by?: string; on?: string; then?: string };
}

/** A figure that a person can open: what it is, how it was reached, and from what. */
export interface Quantity {
  /** SI value (or plain money, hours, days, counts). */
  value: number;
  /** SI unit of `value`: "m³", "m", "m²", "kg", "h", "d", "each", "load", or the currency code. */
  unit: string;
  /** The formula in words, such as "bank volume ÷ hourly output". */
  formula: string;
  /** What went in, each with its SI unit. */
  inputs: readonly { name: string; value: number; unit: string }[];
  source: string;
}
