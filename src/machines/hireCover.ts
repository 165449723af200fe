/** The cheapest way to hire one thing: periods, hours beyond them, and trips in between. Exact. */
import type { UseDay } from "./dayTypes.js";
import { HIRE_PERIODS, hirePrice } from "./rental.js";
import type { HireRates } from "./rental.js";
import type { RentalCover } from "./types.js";

/** What one stay on site needs: calendar days from first to last, and hours on the meter. */
export interface HireNeed {
  days: number;
  hours: number;
}

/** A stay on site as paid for. */
export interface HireCover {
  need: HireNeed;
  rates: HireRates;
  cover: RentalCover;
  /** Money for the periods and the overage. */
  price: number;
  /** h on the meter beyond what the periods include. */
  overageHours: number;
  /** Money for those hours, part of `price`. */
  overage: number;
}

/** One stay of a hired thing, from calendar day `from` to `to`, both counted. */
export interface HireStay extends HireCover {
  from: number;
  to: number;
  /** Days of the stay on which it does not work. */
  idleDays: number;
}

/** All stays of a hired thing over the job. */
export interface HirePlan {
  stays: readonly HireStay[];
  /** Money for the stays without the trips. */
  hire: number;
  /** Money for bringing it and taking it away, every time. */
  delivery: number;
  /** `hire` and `delivery`. */
  price: number;
  idleDays: number;
  /** Money for keeping it all the time instead, less `price`; 0 where it is kept. */
  savedByReturning: number;
}

/** Rates, and what it costs to bring a thing the first time and each time after. */
export interface HireTerms {
  rates: HireRates;
  firstDelivery: number;
  delivery: number;
}

/** Longest need that is still searched, calendar days; beyond ten years it is no hire. */
const LONGEST = 3650;

/**
 * The cheapest mix of day, week and four-week hire for a stay. Its calendar days (1, 7, 28) must
 * reach over the stay, idle days included; hours on the meter beyond those included (8, 40, 160)
 * are paid pro rata, at the price of the mix over the hours that it includes, which for one sort of
 * period is rate ÷ included hours (published rental terms, read). Hours are counted over the whole
 * stay. Among equals, the fewest periods. Exact: for given weeks and four weeks the price per
 * included hour goes one way as days are added, so only the ends of that stretch can be cheapest.
 * Throws on a need that is not finite or beyond ten years.
 */
export function coverWith(need: HireNeed, rates: HireRates): HireCover {
  if (!(need.days <= LONGEST && need.hours <= 24 * LONGEST)) {
    throw new Error(
      `hire: got ${need.days} days and ${need.hours} hours, expected at most ${LONGEST} days`,
    );
  }
  const best: Best = { cover: { days: 0, weeks: 0, fourWeeks: 0 }, price: Infinity, count: 0 };
  if (!(need.days > 0 || need.hours > 0)) return opened(need, rates, { ...best, price: 0 });
  // Four weeks reach and include just what four single weeks do: only the cheaper is repeated.
  const longPays = rates.fourWeeks <= 4 * rates.week;
  const mostFour = longPays ? periods(need, HIRE_PERIODS.fourWeeks) : 0;
  for (let fourWeeks = 0; fourWeeks <= mostFour; fourWeeks++) {
    const { days, hours } = HIRE_PERIODS.fourWeeks;
    const rest = { days: need.days - days * fourWeeks, hours: need.hours - hours * fourWeeks };
    const mostWeeks = Math.min(longPays ? 3 : Infinity, periods(rest, HIRE_PERIODS.week));
    for (let weeks = 0; weeks <= mostWeeks; weeks++) tryDays(need, rates, weeks, fourWeeks, best);
  }
  return opened(need, rates, best);
}

/**
 * Money more for keeping a thing `extraWeeks` weeks longer without working it, re-covered as
 * cheaply as can be: less than a week's rate where a longer period takes over; never below 0.
 */
export function keptLonger(kept: HireCover, extraWeeks: number): number {
  const need = { days: kept.need.days + 7 * extraWeeks, hours: kept.need.hours };
  return coverWith(need, kept.rates).price - kept.price;
}

/**
 * The cheapest way to have a thing on the days that it works: kept over each gap, or returned and
 * brought again. `uses` are calendar days in rising order with their hours. Exact, by dynamic
 * programming over the first day of the last stay; each stay covered by `coverWith`.
 */
export function hireStays(uses: readonly UseDay[], terms: HireTerms): HirePlan {
  const blocks = blocksOf(uses);
  const cheapest: { price: number; stays: HireStay[] }[] = [{ price: 0, stays: [] }];
  for (let last = 0; last < blocks.length; last++) {
    let best: { price: number; stays: HireStay[] } | undefined;
    for (let first = last; first >= 0; first--) {
      const stay = stayOver(blocks.slice(first, last + 1), terms.rates);
      const trip = first === 0 ? terms.firstDelivery : terms.delivery;
      const price = cheapest[first]!.price + stay.price + trip;
      // Among equals the longer stay: fewer trips.
      if (best && !(price <= best.price)) continue;
      best = { price, stays: [...cheapest[first]!.stays, stay] };
    }
    if (!best) throw new Error(`hire: got no price for block ${last}, expected finite rates`);
    cheapest.push(best);
  }
  const { price, stays } = cheapest[blocks.length]!;
  const hire = stays.reduce((sum, stay) => sum + stay.price, 0);
  const kept = blocks.length > 0 ? stayOver(blocks, terms.rates).price + terms.firstDelivery : 0;
  return {
    stays,
    hire,
    delivery: price - hire,
    price,
    idleDays: stays.reduce((sum, stay) => sum + stay.idleDays, 0),
    savedByReturning: stays.length > 1 ? kept - price : 0,
  };
}

/** The best mix found so far; changed in place, as this is tried thousands of times over. */
interface Best {
  cover: RentalCover;
  price: number;
  count: number;
}

/** Days that work together without a gap. */
interface Block {
  from: number;
  to: number;
  hours: number;
  used: number;
}

/** Tries the numbers of days that can be cheapest beside so many weeks and four weeks. */
function tryDays(
  need: HireNeed,
  rates: HireRates,
  weeks: number,
  fourWeeks: number,
  best: Best,
): void {
  const { day, week, fourWeeks: four } = HIRE_PERIODS;
  const least = Math.max(0, Math.ceil(need.days - week.days * weeks - four.days * fourWeeks));
  const missing = (need.hours - week.hours * weeks - four.hours * fourWeeks) / day.hours;
  const tried = [least, Math.max(least, Math.floor(missing)), Math.max(least, Math.ceil(missing))];
  for (const days of tried) {
    const cover = { days, weeks, fourWeeks };
    const price = hirePrice(cover, rates) * Math.max(1, need.hours / includedHours(cover));
    const count = days + weeks + fourWeeks;
    // A cover of nothing includes no hours: its price is 0 × ∞, which is not a number.
    if (!(count > 0) || price > best.price) continue;
    if (price === best.price && count >= best.count) continue;
    [best.cover, best.price, best.count] = [cover, price, count];
  }
}

function opened(need: HireNeed, rates: HireRates, { cover, price }: Best): HireCover {
  const overageHours = Math.max(0, need.hours - includedHours(cover));
  const overage = overageHours > 0 ? price - hirePrice(cover, rates) : 0;
  return { need, rates, cover, price, overageHours, overage };
}

function includedHours({ days, weeks, fourWeeks }: RentalCover): number {
  const { day, week, fourWeeks: four } = HIRE_PERIODS;
  return days * day.hours + weeks * week.hours + fourWeeks * four.hours;
}

/** Least number of one period that reaches over the rest of a need and includes its hours. */
function periods(rest: HireNeed, period: HireNeed): number {
  return Math.max(0, Math.ceil(rest.days / period.days), Math.ceil(rest.hours / period.hours));
}

function blocksOf(uses: readonly UseDay[]): Block[] {
  const blocks: Block[] = [];
  for (const { day, hours } of uses) {
    const last = blocks[blocks.length - 1];
    if (last && day <= last.to) throw new Error(`days of use: got ${day} after ${last.to}`);
    if (last && day === last.to + 1) {
      last.to = day;
      last.hours += hours;
      last.used += 1;
    } else {
      blocks.push({ from: day, to: day, hours, used: 1 });
    }
  }
  return blocks;
}

function stayOver(blocks: readonly Block[], rates: HireRates): HireStay {
  const from = blocks[0]!.from;
  const to = blocks[blocks.length - 1]!.to;
  let [hours, used] = [0, 0];
  for (const block of blocks) {
    hours += block.hours;
    used += block.used;
  }
  const days = to - from + 1;
  return { ...coverWith({ days, hours }, rates), from, to, idleDays: days - used };
}
