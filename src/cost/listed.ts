import { diggersOf, hiredThings } from "../machines/index.js";
import type { Range } from "../machines/index.js";
import type { Scheme } from "../site/index.js";
import { cataloguePrices } from "./catalogue.js";

/**
 * What the catalogue has for a price id that a scheme may set, money for one of its unit; null for
 * one that it does not have.
 */
export function listedPrice(scheme: Scheme, id: string): { price: Range; source: string } | null {
  const row = cataloguePrices().get(id);
  if (row !== undefined) {
    const { low, likely, high, source } = row;
    return { price: { low, likely, high }, source };
  }
  for (const digger of diggersOf(scheme)) {
    for (const { rates, delivery, priceIds, source } of hiredThings(digger, undefined)) {
      const place = priceIds.indexOf(id);
      if (place < 0) continue;
      const price = [rates.day, rates.week, rates.fourWeeks, delivery][place];
      if (price !== undefined) return { price, source };
    }
  }
  return null;
}
