import type { Range } from "./types.js";

/** What there is one of on the job, and a task may have to wait for. */
export const RESOURCES = [
  "digger",
  "hammer",
  "compactor",
  "craneTruck",
  "dumpTruck",
  "crew",
  "electrician",
] as const;
export type Resource = (typeof RESOURCES)[number];

/** What is done, in the order of the job. */
export type TaskKind =
  | "locate"
  | "setUp"
  | "strip"
  | "hand"
  | "dig"
  | "break"
  | "bed"
  | "set"
  | "lay"
  | "pump"
  | "electrical"
  | "test"
  | "stand"
  | "inspect"
  | "zone"
  | "backfill"
  | "pad"
  | "fill"
  | "spread"
  | "haul"
  | "restore";

/** One thing to do on the site. */
export interface Task {
  id: string;
  name: string;
  /** Id of the work that it belongs to; null for the job as a whole. */
  work: string | null;
  kind: TaskKind;
  /** Ids of the tasks that must be done first. */
  after: readonly string[];
  needs: readonly Resource[];
  /** h; zeros for a wait. */
  hours: Range;
  /** Whole working days to wait, from the end of the day on which all before it is done; else 0. */
  wait: number;
  /** True when it has to be done within one day if it fits in one, as a truck's visit. */
  inOneDay: boolean;
  /** What is brought to the site for it, on its first day. */
  deliveries: readonly string[];
  /** Where the hours come from. */
  source: string;
}

/** How the days of the job run, every field settled. */
export interface DaysSettings {
  /** First day, YYYY-MM-DD; absent: day 1 is a Monday without a date. */
  start?: string;
  hoursPerDay: number;
  /** 1 to 7, from Monday. */
  perWeek: number;
  /** Share of working days lost, 0 to below 1. */
  weather: number;
  inspectionWait: number;
  standing: number;
  crew: number;
  /** m/h for that crew. */
  layPerHour: Range;
}

/** One task as scheduled. Days are working days from 1. */
export interface TimedTask {
  id: string;
  /** Working hours from the start of the job. */
  start: number;
  end: number;
  firstDay: number;
  lastDay: number;
  /** True on the chain of tasks that sets the length of the job. */
  critical: boolean;
}

/** A calendar day (1 is the first worked) on which something is used, and for how many hours. */
export interface UseDay {
  day: number;
  hours: number;
}

/** The job with one value for the hours of every task. */
export interface TimedJob {
  /** In the order of the tasks given. */
  tasks: readonly TimedTask[];
  /** Working hours from start to end, waits included. */
  hours: number;
  workingDays: number;
  /** Working days lost to weather before the end. */
  lostDays: number;
  /** From the first worked day to the last, both counted. */
  calendarDays: number;
  /** Task ids from first to last of the chain that sets the length of the job. */
  critical: readonly string[];
  /** Days on which each resource works. */
  uses: Readonly<Record<Resource, readonly UseDay[]>>;
}

/** What happens on one working day. */
export interface SiteDay {
  /** Working day from 1. */
  day: number;
  /** Calendar day from 1. */
  calendarDay: number;
  /** YYYY-MM-DD when the start is known. */
  date?: string;
  /** h of each task on this day; 0 for a wait. */
  tasks: readonly { id: string; name: string; hours: number }[];
  deliveries: readonly string[];
}

/** A day of the week's pattern that is kept for weather, so that nothing is planned on it. */
export interface LostDay {
  calendarDay: number;
  /** YYYY-MM-DD when the start is known. */
  date?: string;
}

/** The schedule: quick, likely and slow, and the likely one day by day. */
export interface Schedule {
  low: TimedJob;
  likely: TimedJob;
  high: TimedJob;
  days: readonly SiteDay[];
  /** Days kept for weather in the likely schedule. */
  lost: readonly LostDay[];
}
