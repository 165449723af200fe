/** The days of the job as a person reads them: those worked and those kept for weather. */
import type { LostDay, Schedule, SiteDay } from "./dayTypes.js";

export type ListedDay = { worked: SiteDay } | { kept: LostDay };

/** Worked days and days kept for weather in the calendar's order; days off are in neither. */
export function listedDays({ days, lost }: Pick<Schedule, "days" | "lost">): ListedDay[] {
  const listed: ListedDay[] = [
    ...days.map((worked) => ({ worked })),
    ...lost.map((kept) => ({ kept })),
  ];
  return listed.sort((a, b) => dayOf(a) - dayOf(b));
}

const dayOf = (day: ListedDay): number =>
  "worked" in day ? day.worked.calendarDay : day.kept.calendarDay;
