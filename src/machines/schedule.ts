/** List scheduling: which task when, with one of each resource. Pure and the same every time. */
import { calendarDayOf, dateOf, lostBefore, lostDaysUpTo } from "./calendar.js";
import { RESOURCES } from "./dayTypes.js";
import type {
  DaysSettings,
  Resource,
  Schedule,
  SiteDay,
  Task,
  TimedJob,
  TimedTask,
  UseDay,
} from "./dayTypes.js";
import type { Range } from "./types.js";

/** Which hours count: an end of the range, or a figure of one's own for each task, h. */
export type HoursPick = keyof Range | ((task: Task) => number);

/** What the schedule needs of the settings. */
export type DayPattern = Pick<DaysSettings, "start" | "hoursPerDay" | "perWeek" | "weather">;

/** Hours that count as none: against rounding at the ends of days. */
const TINY = 1e-9;

/** Tasks as numbers: who comes before whom, and what is needed. */
interface Network {
  /** Task numbers that come first, and those that follow. */
  before: number[][];
  following: number[][];
  needs: number[][];
  hours: number[];
  /** h from a task's start to the end of the longest chain that follows from it. */
  tail: number[];
}

/** When tasks start and end, and which one each had to wait for last (−1 for none). */
interface Timing {
  start: number[];
  end: number[];
  bound: number[];
}

/**
 * Schedules the tasks with one value of hours each. At every moment, of the tasks whose turn has
 * come and whose resources are free, the one with the longest chain behind it starts first, in the
 * order given among equals: the longest-tail rule of list scheduling, not always the shortest job
 * possible. Tasks are not interrupted, but run on over the end of a day. A wait runs from the end
 * of the day on which it begins. Throws on a repeated or unknown id, a circle, or hours that are
 * not finite and at least 0.
 */
export function scheduleOnce(
  tasks: readonly Task[],
  pattern: DayPattern,
  pick: HoursPick = "likely",
): TimedJob {
  if (!(pattern.hoursPerDay > 0)) {
    throw new Error(`hours per day: got ${pattern.hoursPerDay}, expected more than 0`);
  }
  const network = networkOf(tasks, pattern.hoursPerDay, pick);
  const timing = timeTasks(tasks, network, pattern.hoursPerDay);
  const chain = bindingChain(timing);
  const onChain = new Set(chain);
  const timed = tasks.map((task, i): TimedTask => {
    const [start, end] = [timing.start[i]!, timing.end[i]!];
    return {
      id: task.id,
      start,
      end,
      ...daysBetween(start, end, pattern.hoursPerDay),
      critical: onChain.has(i),
    };
  });
  const hours = Math.max(0, ...timing.end);
  const workingDays = Math.max(0, Math.ceil(hours / pattern.hoursPerDay - TINY));
  return {
    tasks: timed,
    hours,
    workingDays,
    lostDays: workingDays > 0 ? lostBefore(workingDays, pattern.weather) : 0,
    calendarDays: workingDays > 0 ? calendarDayOf(workingDays, pattern) : 0,
    critical: chain.map((i) => tasks[i]!.id),
    uses: usesOf(tasks, timed, pattern),
  };
}

/** The schedule at low, likely and high hours, and the likely one day by day; see `scheduleOnce`. */
export function schedule(tasks: readonly Task[], pattern: DayPattern): Schedule {
  const likely = scheduleOnce(tasks, pattern, "likely");
  return {
    low: scheduleOnce(tasks, pattern, "low"),
    likely,
    high: scheduleOnce(tasks, pattern, "high"),
    days: siteDays(tasks, likely, pattern),
    lost: lostDaysUpTo(likely.workingDays, pattern).map((calendarDay) => {
      const date = dateOf(calendarDay, pattern);
      return { calendarDay, ...(date !== undefined && { date }) };
    }),
  };
}

/** What happens on each working day of a scheduled job, its deliveries among it. */
export function siteDays(
  tasks: readonly Task[],
  job: TimedJob,
  pattern: DayPattern,
): readonly SiteDay[] {
  return Array.from({ length: job.workingDays }, (_, i): SiteDay => {
    const day = i + 1;
    const onDay = tasks
      .map((task, number) => ({ task, timed: job.tasks[number]! }))
      .filter(({ timed }) => timed.firstDay <= day && day <= timed.lastDay)
      .sort((a, b) => a.timed.start - b.timed.start);
    const calendarDay = calendarDayOf(day, pattern);
    const date = dateOf(calendarDay, pattern);
    return {
      day,
      calendarDay,
      ...(date !== undefined && { date }),
      tasks: onDay.map(({ task, timed }) => ({
        id: task.id,
        name: task.name,
        hours: task.wait > 0 ? 0 : hoursOnDay(timed, day, pattern.hoursPerDay),
      })),
      deliveries: onDay
        .filter(({ timed }) => timed.firstDay === day)
        .flatMap(({ task }) => task.deliveries),
    };
  });
}

function networkOf(tasks: readonly Task[], hoursPerDay: number, pick: HoursPick): Network {
  const numbers = new Map<string, number>();
  tasks.forEach(({ id }, i) => {
    if (numbers.has(id)) throw new Error(`tasks: got "${id}" twice, expected each id once`);
    numbers.set(id, i);
  });
  const following: number[][] = tasks.map(() => []);
  const before = tasks.map((task, i) =>
    task.after.map((id) => {
      const number = numbers.get(id);
      if (number === undefined) {
        throw new Error(`task "${task.id}": got "${id}" before it, expected the id of a task`);
      }
      following[number]!.push(i);
      return number;
    }),
  );
  const needs = tasks.map((task) => task.needs.map((resource) => RESOURCES.indexOf(resource)));
  const hours = tasks.map((task) => hoursOf(task, pick));
  const lasting = tasks.map((task, i) => hours[i]! + task.wait * hoursPerDay);
  return { before, following, needs, hours, tail: tailsOf(tasks, before, following, lasting) };
}

function hoursOf(task: Task, pick: HoursPick): number {
  const hours = typeof pick === "function" ? pick(task) : task.hours[pick];
  if (!(hours >= 0 && hours < Infinity)) {
    throw new Error(`task "${task.id}": got ${hours} hours, expected a finite figure of 0 or more`);
  }
  return hours;
}

/** Longest chain from each task's start to the end of the job, h; throws on a circle. */
function tailsOf(
  tasks: readonly Task[],
  before: readonly number[][],
  following: readonly number[][],
  lasting: readonly number[],
): number[] {
  const open = following.map((list) => list.length);
  const tail = tasks.map(() => 0);
  const closed = tasks.map((_, i) => i).filter((i) => open[i] === 0);
  for (let next = 0; next < closed.length; next++) {
    const i = closed[next]!;
    const longest = following[i]!.reduce((most, j) => Math.max(most, tail[j]!), 0);
    tail[i] = lasting[i]! + longest;
    for (const j of before[i]!) {
      open[j]! -= 1;
      if (open[j] === 0) closed.push(j);
    }
  }
  if (closed.length < tasks.length) {
    const stuck = tasks.filter((_, i) => open[i]! > 0).map(({ id }) => id);
    throw new Error(`tasks: got a circle among ${stuck.join(", ")}, expected an order of work`);
  }
  return tail;
}

function timeTasks(tasks: readonly Task[], network: Network, hoursPerDay: number): Timing {
  const timing: Timing = {
    start: tasks.map(() => NaN),
    end: tasks.map(() => NaN),
    bound: tasks.map(() => -1),
  };
  const lastUser = RESOURCES.map(() => -1);
  const waiting = tasks.map((_, i) => i).sort((a, b) => network.tail[b]! - network.tail[a]!);
  let now = 0;
  while (waiting.length > 0) {
    let next = Infinity;
    for (let w = 0; w < waiting.length; w++) {
      const i = waiting[w]!;
      const from = earliest(tasks[i]!, i, { network, timing, lastUser, now, hoursPerDay });
      if (from.at > now + TINY) {
        next = Math.min(next, from.at);
        continue;
      }
      timing.start[i] = now;
      timing.end[i] = endOf(tasks[i]!, network.hours[i]!, now, hoursPerDay);
      timing.bound[i] = from.bound;
      for (const resource of network.needs[i]!) lastUser[resource] = i;
      waiting.splice(w, 1);
      // What ends at once may let one before it in the list start now.
      const endsAtOnce = !(timing.end[i] > now + TINY);
      if (!endsAtOnce) next = Math.min(next, timing.end[i]);
      w = endsAtOnce ? -1 : w - 1;
    }
    if (waiting.length > 0) now = next;
  }
  return timing;
}

/** When a task may start as things stand, h (infinite while one before it has no start yet). */
function earliest(
  task: Task,
  i: number,
  state: {
    network: Network;
    timing: Timing;
    lastUser: readonly number[];
    now: number;
    hoursPerDay: number;
  },
): { at: number; bound: number } {
  const { network, timing, lastUser, now, hoursPerDay } = state;
  let at = 0;
  let bound = -1;
  for (const other of network.before[i]!) {
    const end = timing.end[other]!;
    if (Number.isNaN(end)) return { at: Infinity, bound };
    if (end > at + (bound < 0 ? -TINY : TINY)) [at, bound] = [end, other];
  }
  for (const resource of network.needs[i]!) {
    const other = lastUser[resource]!;
    if (other < 0) continue;
    const end = timing.end[other]!;
    if (end > at + (bound < 0 ? -TINY : TINY)) [at, bound] = [end, other];
  }
  const hours = network.hours[i]!;
  if (!task.inOneDay || hours > hoursPerDay) return { at, bound };
  const from = Math.max(at, now);
  const dayEnd = (Math.floor(from / hoursPerDay + TINY) + 1) * hoursPerDay;
  return { at: from + hours > dayEnd + TINY ? dayEnd : at, bound };
}

function endOf(task: Task, hours: number, start: number, hoursPerDay: number): number {
  if (!(task.wait > 0)) return start + hours;
  return (Math.ceil(start / hoursPerDay - TINY) + task.wait) * hoursPerDay;
}

/** Task numbers from first to last: back from the end, each time to what was waited for last. */
function bindingChain({ end, bound }: Timing): number[] {
  let last = -1;
  end.forEach((h, i) => {
    if (last < 0 || h > end[last]! + TINY) last = i;
  });
  const chain: number[] = [];
  for (let i = last; i >= 0; i = bound[i]!) chain.unshift(i);
  return chain;
}

function daysBetween(
  start: number,
  end: number,
  hoursPerDay: number,
): { firstDay: number; lastDay: number } {
  const firstDay = Math.floor(start / hoursPerDay + TINY) + 1;
  return { firstDay, lastDay: Math.max(firstDay, Math.ceil(end / hoursPerDay - TINY)) };
}

function hoursOnDay({ start, end }: TimedTask, day: number, hoursPerDay: number): number {
  const overlap = Math.min(end, day * hoursPerDay) - Math.max(start, (day - 1) * hoursPerDay);
  return Math.max(0, overlap);
}

function usesOf(
  tasks: readonly Task[],
  timed: readonly TimedTask[],
  pattern: DayPattern,
): Record<Resource, readonly UseDay[]> {
  const none = (): Map<number, number> => new Map();
  const byDay: Record<Resource, Map<number, number>> = {
    digger: none(),
    hammer: none(),
    compactor: none(),
    craneTruck: none(),
    dumpTruck: none(),
    crew: none(),
    electrician: none(),
  };
  tasks.forEach((task, i) => {
    const { firstDay, lastDay } = timed[i]!;
    for (let day = firstDay; day <= lastDay && task.needs.length > 0; day++) {
      const hours = hoursOnDay(timed[i]!, day, pattern.hoursPerDay);
      if (!(hours > TINY)) continue;
      for (const resource of task.needs) {
        byDay[resource].set(day, (byDay[resource].get(day) ?? 0) + hours);
      }
    }
  });
  const listed = (resource: Resource): UseDay[] =>
    [...byDay[resource]]
      .sort(([a], [b]) => a - b)
      .map(([day, hours]) => ({ day: calendarDayOf(day, pattern), hours }));
  return {
    digger: listed("digger"),
    hammer: listed("hammer"),
    compactor: listed("compactor"),
    craneTruck: listed("craneTruck"),
    dumpTruck: listed("dumpTruck"),
    crew: listed("crew"),
    electrician: listed("electrician"),
  };
}
