import { plural } from "../plural.js";

/** Counts with their nouns; `printed` is the count as it is shown, which may be a range. */
export const counts = {
  loads: (count: number, printed: string) => `${printed} ${plural(count, "load", "loads")}`,
  days: (count: number, printed: string) => `${printed} ${plural(count, "day", "days")}`,
  weeks: (count: number, printed: string) => `${printed} ${plural(count, "week", "weeks")}`,
  fourWeekHires: (count: number, printed: string) =>
    `${printed} ${plural(count, "four-week hire", "four-week hires")}`,
  workingDays: (count: number, printed: string) =>
    `${printed} ${plural(count, "working day", "working days")}`,
  calendarDays: (count: number, printed: string) =>
    `${printed} ${plural(count, "calendar day", "calendar days")}`,
  probes: (count: number, printed: string) => `${printed} ${plural(count, "probe", "probes")}`,
  moreReasons: (count: number) => plural(count, "One more reason", `${count} more reasons`),
  thingsToLookAt: (count: number) =>
    plural(count, "One thing to look at", `${count} things to look at`),
  rowsCannot: (count: number) => plural(count, "1 row cannot", `${count} rows cannot`),
  pointsAreGood: (count: number) => plural(count, "1 point is good", `${count} points are good`),
  notUnderstood: (count: number) =>
    plural(
      count,
      "1 reading was not understood: mend it.",
      `${count} readings were not understood: mend them.`,
    ),
};
