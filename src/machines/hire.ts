import type { PriceChoice } from "../site/index.js";
import type { Digger } from "./catalogue.js";
import { chosenPrice } from "./prices.js";
import { mapRange, multiplyRanges, sumRanges } from "./range.js";
import { cheapestCover, hirePrice } from "./rental.js";
import type { HireRates } from "./rental.js";
import type { Range, Rental } from "./types.js";

/** Price line ids of one digger, as `scheme.prices` may name them. */
export function hirePriceIds(diggerId: string) {
  return {
    day: `${diggerId}-day`,
    week: `${diggerId}-week`,
    fourWeeks: `${diggerId}-four-weeks`,
    delivery: `${diggerId}-delivery`,
    hammerDay: `${diggerId}-hammer-day`,
  };
}

/** Whole working days for hours, at hours per day (more than 0). */
export function workingDays(hours: Range, hoursPerDay: number): Range {
  return mapRange(hours, (h) => Math.max(0, Math.ceil(h / hoursPerDay - 1e-9)));
}

/**
 * What it costs to hire a digger, bring it and take it away, and hire its hammer for the hours in
 * hard rock. Low is the quick job at low rates, high the slow job at high rates.
 */
export function hireOf(
  digger: Digger,
  hours: Range,
  hammerHours: Range,
  hoursPerDay: number,
  choices: readonly PriceChoice[] | undefined,
): Rental {
  const ids = hirePriceIds(digger.id);
  const { rates } = digger;
  const day = chosenPrice(ids.day, rates.day, rates.source, choices);
  const week = chosenPrice(ids.week, rates.week, rates.source, choices);
  const fourWeeks = chosenPrice(ids.fourWeeks, rates.fourWeeks, rates.source, choices);
  const delivery = chosenPrice(ids.delivery, rates.delivery, rates.source, choices);
  const hammerDay = chosenPrice(ids.hammerDay, rates.hammerDay, rates.source, choices);

  const days = workingDays(hours, hoursPerDay);
  const at = (end: keyof Range) => {
    const ratesAtEnd: HireRates = {
      day: day.price[end],
      week: week.price[end],
      fourWeeks: fourWeeks.price[end],
    };
    const cover = cheapestCover({ days: days[end], hours: hours[end] }, ratesAtEnd);
    return { cover, price: hirePrice(cover, ratesAtEnd) };
  };
  const [quick, likely, slow] = [at("low"), at("likely"), at("high")];
  const cost = { low: quick.price, likely: likely.price, high: slow.price };
  const hammerDays = workingDays(hammerHours, hoursPerDay);
  const hammerCost = multiplyRanges(hammerDays, hammerDay.price);
  const trip = mapRange(delivery.price, (price) => (hours.likely > 0 ? price : 0));
  const sources = [day, week, fourWeeks, delivery, hammerDay].map((rate) => rate.source);
  return {
    cover: likely.cover,
    coverIf: { quick: quick.cover, slow: slow.cover },
    cost,
    delivery: trip,
    hammer: { days: hammerDays, cost: hammerCost },
    total: sumRanges([cost, trip, hammerCost]),
    source: [...new Set(sources)].join("; "),
  };
}
