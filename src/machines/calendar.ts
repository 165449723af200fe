/** Working days as calendar days: the week's pattern and the share lost to weather. No clock. */

/** What the calendar needs of the settings. */
export interface WeekPattern {
  start?: string;
  perWeek: number;
  weather: number;
}

/**
 * Working days lost to weather before working day `day` (from 1): the share w of all days is lost,
 * so w ÷ (1 − w) for each day worked, spread evenly, to the nearest whole day. The same settings
 * always lose the same days: an allowance, not a forecast.
 */
export function lostBefore(day: number, weather: number): number {
  if (!(weather >= 0 && weather < 1)) {
    throw new Error(`weather: got ${weather}, expected a share from 0 to below 1`);
  }
  return Math.floor(((day - 1) * weather) / (1 - weather) + 0.5 + 1e-9);
}

/**
 * Calendar day (1 is the day of the first working day) of a working day from 1, with the days lost
 * to weather before it. Worked are the first `perWeek` days of each week from Monday; a start on
 * another day moves to the next Monday.
 */
export function calendarDayOf(day: number, week: WeekPattern): number {
  return dayOfWorkable(day + lostBefore(day, week.weather), week);
}

/** Calendar days lost to weather before working day `last`. */
export function lostDaysUpTo(last: number, week: WeekPattern): number[] {
  const lost: number[] = [];
  for (let day = 2; day <= last; day++) {
    const before = lostBefore(day - 1, week.weather);
    const count = lostBefore(day, week.weather) - before;
    for (let i = 0; i < count; i++) lost.push(dayOfWorkable(day + before + i, week));
  }
  return lost;
}

/** Date YYYY-MM-DD of a calendar day (1 is the first worked); undefined without a start. */
export function dateOf(calendarDay: number, { start, perWeek }: WeekPattern): string | undefined {
  if (start === undefined) return undefined;
  const given = dayNumber(start);
  const weekday = weekdayOf(given);
  const first = weekday < perWeek ? given : given + 7 - weekday;
  return dateOfNumber(first + calendarDay - 1);
}

/** Days from one date to another, both YYYY-MM-DD. */
export const daysBetween = (from: string, to: string): number => dayNumber(to) - dayNumber(from);

/** Calendar day of the n-th day (from 1) that the week's pattern lets be worked. */
function dayOfWorkable(n: number, { start, perWeek }: WeekPattern): number {
  const weekday = start === undefined ? 0 : weekdayOf(dayNumber(start));
  const first = weekday < perWeek ? weekday : 0;
  const index = first + n - 1;
  return Math.floor(index / perWeek) * 7 + (index % perWeek) - first + 1;
}

/** 0 is Monday. Day 0 of the count is 1 March of the year 0, a Wednesday. */
function weekdayOf(day: number): number {
  return (((day + 2) % 7) + 7) % 7;
}

/** Days since 1 March of the year 0 in the Gregorian calendar, whose year here ends in February. */
function dayNumber(date: string): number {
  const [year, month, day] = date.split("-").map(Number);
  if (year === undefined || month === undefined || !(day !== undefined && day >= 1)) {
    throw new Error(`date: got "${date}", expected YYYY-MM-DD`);
  }
  const marchYear = month > 2 ? year : year - 1;
  return daysBeforeYear(marchYear) + daysBeforeMonth((month + 9) % 12) + day - 1;
}

function dateOfNumber(count: number): string {
  let year = Math.floor(count / 365.2425);
  while (daysBeforeYear(year + 1) <= count) year++;
  while (daysBeforeYear(year) > count) year--;
  const rest = count - daysBeforeYear(year);
  let month = 11;
  while (daysBeforeMonth(month) > rest) month--;
  const day = rest - daysBeforeMonth(month) + 1;
  const calendarYear = month < 10 ? year : year + 1;
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${String(calendarYear).padStart(4, "0")}-${two(((month + 2) % 12) + 1)}-${two(day)}`;
}

function daysBeforeYear(year: number): number {
  return 365 * year + Math.floor(year / 4) - Math.floor(year / 100) + Math.floor(year / 400);
}

/** Days from 1 March to the first of the month-th month after it: 31, 30, 31, 30, 31 and again. */
function daysBeforeMonth(month: number): number {
  return Math.floor((153 * month + 2) / 5);
}
