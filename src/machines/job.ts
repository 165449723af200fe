/** The chosen digger's job by day, and what every hired thing costs over it. */
import type { DigResult } from "../dig/index.js";
import type { Material, Scheme } from "../site/index.js";
import type { Digger } from "./catalogue.js";
import type { DaysSettings, Schedule, Task } from "./dayTypes.js";
import { daysSettings } from "./daysSettings.js";
import { hiredThings, hiresOf, type Hire } from "./hires.js";
import type { HirePlan } from "./hireCover.js";
import { schedule, scheduleOnce } from "./schedule.js";
import { tasksOf, type TaskHours } from "./tasks.js";
import { exactly, sumRanges } from "./range.js";
import type { Range, Rental, RentalCover } from "./types.js";

/** The job in days: its settings, its tasks, when each is done, and what is hired for it. */
export interface JobDays {
  settings: DaysSettings;
  tasks: readonly Task[];
  schedule: Schedule;
  hires: readonly Hire[];
}

/** What `jobDays` works from; `once` schedules the likely hours alone, as for one draw. */
export interface JobGiven {
  scheme: Scheme;
  dig: DigResult;
  materials: ReadonlyMap<string, Material>;
  digger: Digger;
  times: TaskHours;
  hoursPerDay: number;
  once: boolean;
}

/** Schedules a scheme's job with one digger and finds the cheapest hire of everything. */
export function jobDays(given: JobGiven): JobDays {
  const { scheme, dig, materials, digger, times, hoursPerDay, once } = given;
  const settings = daysSettings(scheme, hoursPerDay);
  const tasks = tasksOf(scheme, dig, times, materials, settings);
  const days = once ? onceOnly(tasks, settings) : schedule(tasks, settings);
  return {
    settings,
    tasks,
    schedule: days,
    hires: hiresOf(hiredThings(digger, scheme.prices), days),
  };
}

function onceOnly(tasks: readonly Task[], settings: DaysSettings): Schedule {
  const likely = scheduleOnce(tasks, settings);
  return { low: likely, likely, high: likely, days: [], lost: [] };
}

/** The digger's own hire as the schedule asks for it, in place of one by its working days alone. */
export function rentalByDays({ hires }: JobDays, digger: Digger, byWork: Rental): Rental {
  const own = hires.find(({ id }) => id === digger.id);
  if (own === undefined) return byWork;
  const { low, likely, high } = own.plans;
  const cost = inOrder(low.hire, likely.hire, high.hire);
  const delivery = inOrder(low.delivery, likely.delivery, high.delivery);
  const hammer = hires.find(({ resource }) => resource === "hammer");
  const hammerCost = hammer?.price ?? exactly(0);
  return {
    cover: coverOf(likely),
    coverIf: { quick: coverOf(low), slow: coverOf(high) },
    cost,
    delivery,
    hammer: { days: byWork.hammer.days, cost: hammerCost },
    total: sumRanges([cost, delivery, hammerCost]),
    source: byWork.source,
  };
}

/** Longer hours may in rare cases end sooner, so the ends are put in order. */
function inOrder(low: number, likely: number, high: number): Range {
  return { low: Math.min(low, likely, high), likely, high: Math.max(low, likely, high) };
}

/** All periods of a plan's stays together. */
function coverOf({ stays }: HirePlan): RentalCover {
  const sum = { days: 0, weeks: 0, fourWeeks: 0 };
  for (const { cover } of stays) {
    sum.days += cover.days;
    sum.weeks += cover.weeks;
    sum.fourWeeks += cover.fourWeeks;
  }
  return sum;
}
