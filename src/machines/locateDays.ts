/** The days to wait after the call to the locate service, against the start of the job. */
import { isLocated } from "../site/index.js";
import type { Finding, Scheme, Site } from "../site/index.js";
import { calendarDayOf, dateOf } from "./calendar.js";
import { hireCatalogue } from "./hireCatalogue.js";

/**
 * The first day (YYYY-MM-DD) after so many whole working days, Monday to Friday, that follow the day
 * of a call. Holidays are not known.
 */
export function afterWorkingDays(called: string, days: number): string {
  const week = { start: called, perWeek: 5, weather: 0 };
  const first = dateOf(1, week);
  // A call on a working day does not count that day; after one at the weekend Monday counts.
  const day = days + (first === called ? 2 : 1);
  return dateOf(calendarDayOf(day, week), week) ?? called;
}

/**
 * A job that starts before the days of its locate call are over: those entered, else the usual ones.
 * None where day of call or start is not known.
 */
export function startsTooEarly(
  site: Pick<Site, "locate">,
  { machines }: Pick<Scheme, "machines">,
): Finding[] {
  const { ticket, date, days: entered } = site.locate ?? {};
  const start = machines?.days?.start;
  if (!isLocated(site) || date === undefined || start === undefined) return [];
  const usual = hireCatalogue().locate;
  const days = entered ?? usual.days;
  const from = afterWorkingDays(date, days);
  if (start >= from) return [];
  return [
    {
      level: "caution",
      code: "line.locate-early",
      where: "site",
      text: `The job starts on ${start}, but locate ticket ${ticket ?? ""} of ${date} and ${days} ${entered === undefined ? "usual " : ""}working days to wait make it ${from} at the earliest; holidays come on top. Start later, or ask the service.`,
      source: `${entered === undefined ? usual.source : "the days to wait as entered"}; 29 CFR 1926.651(b)`,
    },
  ];
}
