/** Every digger that can, with its own days and hire, so that they can be compared by the whole job. */
import type { Digger } from "./catalogue.js";
import { workHours, type TimedWork } from "./hours.js";
import type { HandDug } from "./handDigging.js";
import { jobDays, rentalByDays, type JobDays, type JobGiven } from "./job.js";
import { mapRange } from "./range.js";
import { workingOf } from "./working.js";
import type { SurplusTime } from "./surplus.js";
import type { MachinesCosted, MachinesResult } from "./result.js";
import type { Range, Reason, Rental, WorkHours } from "./types.js";

/** One digger with the whole job worked out for it. */
export interface Trial {
  digger: Digger;
  works: TimedWork[];
  setUp: Range;
  /** What is left over, where there is any. */
  left?: SurplusTime;
  hours: Range;
  hammerHours: Range;
  /** By its working days alone. */
  rental: Rental;
  /** Why it cannot do the job; empty when it can. */
  obstacles: readonly Reason[];
}

/** A trial with its schedule, the hire that follows from it, and what the whole job then costs. */
export interface PlannedTrial {
  trial: Trial;
  works: readonly WorkHours[];
  job: JobDays;
  rental: Rental;
  fuel: Range;
  working: MachinesResult["working"];
  /** Money: the likely cost of the whole job with this digger. */
  whole: number;
}

/** What planning a trial needs besides it. */
export interface PlanGiven extends Pick<
  JobGiven,
  "scheme" | "dig" | "materials" | "hoursPerDay" | "once"
> {
  byHand: readonly HandDug[];
  locate?: { days: number | null } | undefined;
  /** The likely cost of the whole job, money; absent: everything that is hired, alone. */
  wholeCost?: ((machines: MachinesCosted) => number) | undefined;
}

/** Schedules the job with this digger, hires for it and prices it. */
export function planTrial(trial: Trial, given: PlanGiven): PlannedTrial {
  const { byHand, locate, wholeCost, ...rest } = given;
  const { digger, hours, setUp } = trial;
  const works = trial.works.map(workHours);
  const times = { ...{ works, setUp, byHand }, ...(locate && { locate }) };
  const job = jobDays({ ...rest, digger, times });
  const rental = rentalByDays(job, digger, trial.rental);
  const fuel = mapRange(hours, (h) => h * digger.fuelPerHour);
  const working = workingOf(trial, given.hoursPerDay);
  const costed = { ...{ digger, rental, fuel, working, hours, job, byHand } };
  const whole = wholeCost?.(costed) ?? allHires(job);
  return { trial, works, job, rental, fuel, working, whole };
}

function allHires({ hires }: JobDays): number {
  return hires
    .filter(({ within }) => within === undefined)
    .reduce((sum, { price }) => sum + price.likely, 0);
}

/** Money that is no difference: sums of the same lines in another order. */
const SAME = 1e-6;

/** The one with which the whole job costs least; of equals the one that is done first. */
export function cheapestOf(able: readonly PlannedTrial[]): PlannedTrial | undefined {
  return able.reduce<PlannedTrial | undefined>(
    (best, next) => (best && !isBetter(next, best) ? best : next),
    undefined,
  );
}

function isBetter(next: PlannedTrial, best: PlannedTrial): boolean {
  if (Math.abs(next.whole - best.whole) > SAME) return next.whole < best.whole;
  return daysOf(next) < daysOf(best);
}

const daysOf = ({ job }: PlannedTrial): number => job.schedule.likely.calendarDays;
