import type { Finding, Quantity } from "../site/index.js";
import type { HandDug } from "./handDigging.js";
import type { JobDays } from "./job.js";
import type { SurplusTime } from "./surplus.js";
import type { Candidate, Range, Rental, WorkHours } from "./types.js";

/** What the machines part of the estimate says. Hours in h, days in whole working days. */
export interface MachinesResult {
  digger: { id: string; name: string; reason: string };
  hoursPerDay: number;
  works: readonly WorkHours[];
  /** Once for the job: bringing it off the trailer, checking, laying out; zeros if nothing is dug. */
  setUp: Range;
  /** The digger's time with what is left over: shaping the pile, or loading; absent without any. */
  left?: SurplusTime;
  /** All that the digger does: set-up, every work, and what is left over. */
  hours: Range;
  days: Range;
  /** Of `hours`, those spent with the hydraulic hammer. */
  hammerHours: Range;
  /** m³ of fuel. */
  fuel: Range;
  working: { hours: Quantity; days: Quantity; fuel: Quantity };
  /** Of the digger and its hammer, over the days that the schedule keeps them. */
  rental: Rental;
  /** The job by day, and everything that is hired for it. */
  job: JobDays;
  /** What is dug by hand beside buried lines. */
  byHand: readonly HandDug[];
  candidates: readonly Candidate[];
  findings: readonly Finding[];
}

/** What pricing a job needs to know of its machines. */
export type MachinesCosted = Pick<
  MachinesResult,
  "rental" | "fuel" | "working" | "hours" | "job" | "byHand"
> & { digger: { id: string; name: string } };
