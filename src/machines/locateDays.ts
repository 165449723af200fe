/** The days to wait after the call to the locate service, against the start of the job. */
import { isLocated } from "../site/index.js";
import type { Finding, Scheme, Site } from "../site/index.js";
import { calendarDayOf, dateOf, daysBetween } from "./calendar.js";
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
 * Days after the call's day on which a start is still taken to lie within ten business days of it:
 * Nebraska Revised Statutes 76-2321 lets a notice be given no earlier. Holidays are not known.
 */
const TICKET_DAYS = 14;

/** A job that starts so long after the call that ticket and marks may have run out. */
export function startsTooLate(
  site: Pick<Site, "locate">,
  { machines }: Pick<Scheme, "machines">,
): Finding[] {
  const { ticket, date } = site.locate ?? {};
  const start = machines?.days?.start;
  if (!isLocated(site) || date === undefined || start === undefined) return [];
  const days = daysBetween(date, start);
  if (days <= TICKET_DAYS) return [];
  return [
    {
      level: "caution",
      code: "line.locate-old",
      where: "site",
      text: `The job starts on ${start}, ${days} days after the call for locate ticket ${ticket ?? ""} of ${date}: tickets and marks run out. Ask the service how long yours stand, and call again if they will have run out.`,
      source:
        "Nebraska Revised Statutes 76-2321 (notice no more than ten business days before the dig; taken as 14 days); your state decides",
    },
  ];
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
