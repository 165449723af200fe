import { chosenPrice, exactly, mapRange, multiplyRanges } from "../machines/index.js";
import type { Range } from "../machines/index.js";
import { catalogueName } from "../site/index.js";
import type { PriceChoice, Quantity } from "../site/index.js";
import type { UnitSystem } from "../units/index.js";
import type { PriceRow } from "./catalogue.js";
import type { CostLine, PriceUnit } from "./types.js";

/** What every line of one scheme needs to know. */
export interface Pricing {
  choices: readonly PriceChoice[] | undefined;
  /** Share ordered beyond what is needed, and kg that a delivery is charged for at least. */
  waste: number;
  leastLoad: number;
  /** ISO 4217. */
  currency: string;
  /** Of the names of what is bought. */
  units: UnitSystem;
}

/** Size of one price unit in the SI unit of the quantity that it prices. */
export const SIZE_OF: Readonly<Record<PriceUnit, number>> = {
  t: 1000, // kg
  L: 0.001, // m³
  m3: 1,
  load: 1,
  h: 1,
  m: 1,
  each: 1,
  d: 1,
  lump: 1,
};

/** The demo prices are in US-dollar figures, which no other currency converts. */
export function priceSource(source: string, own: boolean, currency: string): string {
  return own || currency === "USD"
    ? source
    : `demo price made up for USD, not converted to ${currency}; enter yours`;
}

/**
 * One line: quantity ÷ size of the price's unit × price. `spread` is the quantity's own range where
 * it has one; otherwise the amount's range is the price's alone.
 */
export function costLine(
  pricing: Pricing,
  row: PriceRow,
  item: {
    quantity: Quantity;
    id?: string;
    name?: string;
    where?: readonly string[];
    spread?: Range;
  },
): CostLine {
  const chosen = chosenPrice(row.id, row, row.source, pricing.choices);
  const units = mapRange(item.spread ?? exactly(item.quantity.value), (q) => q / SIZE_OF[row.per]);
  return {
    id: item.id ?? row.id,
    name: item.name ?? catalogueName(row.name, pricing.units),
    ...(item.where ? { where: item.where } : {}),
    quantity: item.quantity,
    priceIds: [row.id],
    per: row.per,
    price: chosen.price,
    amount: multiplyRanges(units, chosen.price),
    source: priceSource(chosen.source, chosen.own, pricing.currency),
    own: chosen.own,
  };
}

/** A plain count as a quantity. */
export function countOf(value: number, formula: string, unit = "each"): Quantity {
  return { value, unit, formula, inputs: [], source: "the scheme" };
}
