import type { RentalCover } from "./types.js";

/** Hire rates of one machine, money for each period. */
export interface HireRates {
  day: number;
  week: number;
  fourWeeks: number;
}

/**
 * What each hire period covers: calendar days and hours on the meter. Rental terms as commonly
 * published: 8 h a day, 40 h a week, 160 to 176 h a month (read; the lower is taken).
 */
export const HIRE_PERIODS = {
  day: { days: 1, hours: 8 },
  week: { days: 7, hours: 40 },
  fourWeeks: { days: 28, hours: 160 },
} as const;

/** Money for a cover at these rates. */
export function hirePrice(cover: RentalCover, rates: HireRates): number {
  return cover.days * rates.day + cover.weeks * rates.week + cover.fourWeeks * rates.fourWeeks;
}

/**
 * The cheapest mix of day, week and four-week hire whose calendar days are at least `days` and
 * whose meter hours are at least `hours`; among equals, the fewest periods. Exact: four weeks
 * cover just what four single weeks do, so only the cheaper of those two is ever repeated, and for
 * each mix of the longer periods the least number of days follows. Days are working days of the
 * job; days on which it stands idle on site are not counted. A need of over ten years is no hire:
 * it is covered by the cheapest single period, which bounds the search.
 */
export function cheapestCover(
  need: { days: number; hours: number },
  rates: HireRates,
): RentalCover {
  if (!Number.isFinite(need.days) || !Number.isFinite(need.hours)) {
    throw new Error(`hire: got ${need.days} days and ${need.hours} hours, expected finite figures`);
  }
  const longPays = rates.fourWeeks <= 4 * rates.week;
  const mostFour = longPays ? periodsFor(need, HIRE_PERIODS.fourWeeks) : 0;
  const mostWeeks = longPays ? 4 : periodsFor(need, HIRE_PERIODS.week);
  if (mostFour + mostWeeks > LONGEST_SEARCH) return singlePeriodCover(need, rates);
  let best: RentalCover | undefined;
  for (let fourWeeks = 0; fourWeeks <= mostFour; fourWeeks++) {
    for (let weeks = 0; weeks <= mostWeeks; weeks++) {
      const rest = {
        days: need.days - 28 * fourWeeks - 7 * weeks,
        hours: need.hours - 160 * fourWeeks - 40 * weeks,
      };
      const cover = { days: periodsFor(rest, HIRE_PERIODS.day), weeks, fourWeeks };
      if (!best || isBetter(cover, best, rates)) best = cover;
    }
  }
  return best ?? { days: 0, weeks: 0, fourWeeks: 0 };
}

/** Periods tried of one length before a need counts as no hire: weeks in ten years. */
const LONGEST_SEARCH = 520;

function singlePeriodCover(need: { days: number; hours: number }, rates: HireRates): RentalCover {
  const none = { days: 0, weeks: 0, fourWeeks: 0 };
  const covers: RentalCover[] = [
    { ...none, days: periodsFor(need, HIRE_PERIODS.day) },
    { ...none, weeks: periodsFor(need, HIRE_PERIODS.week) },
    { ...none, fourWeeks: periodsFor(need, HIRE_PERIODS.fourWeeks) },
  ];
  return covers.reduce((best, cover) => (isBetter(cover, best, rates) ? cover : best));
}

/** Least number of one period that covers a need on its own. */
function periodsFor(
  need: { days: number; hours: number },
  period: { days: number; hours: number },
): number {
  return Math.max(
    0,
    Math.ceil(need.days / period.days - 1e-9),
    Math.ceil(need.hours / period.hours - 1e-9),
  );
}

function isBetter(cover: RentalCover, best: RentalCover, rates: HireRates): boolean {
  const difference = hirePrice(cover, rates) - hirePrice(best, rates);
  if (difference !== 0) return difference < 0;
  return periodCount(cover) < periodCount(best);
}

function periodCount(cover: RentalCover): number {
  return cover.days + cover.weeks + cover.fourWeeks;
}
