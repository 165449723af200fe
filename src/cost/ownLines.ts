import { sumRanges, type Range } from "../machines/index.js";
import type { Scheme } from "../site/index.js";
import { SIZE_OF } from "./line.js";
import type { CostLine } from "./types.js";

/** The lines that the person has added: so many at a price. */
export function ownLines(scheme: Scheme): CostLine[] {
  return (scheme.costs?.lines ?? []).map((line) => {
    const price: Range = {
      low: Math.min(line.low ?? line.price, line.price),
      likely: line.price,
      high: Math.max(line.high ?? line.price, line.price),
    };
    return {
      id: `own:${line.id}`,
      name: line.name,
      quantity: {
        value: line.count * SIZE_OF[line.per],
        unit: UNIT_OF[line.per],
        formula: "as entered",
        inputs: [],
        source: "entered for this scheme",
      },
      priceIds: [],
      per: line.per,
      price,
      amount: {
        low: line.count * price.low,
        likely: line.count * price.likely,
        high: line.count * price.high,
      },
      source: "entered for this scheme",
      own: true,
      made: "own-line",
    };
  });
}

/** SI unit of the quantity that each price unit prices. */
const UNIT_OF: Readonly<Record<CostLine["per"], string>> = {
  t: "kg",
  m3: "m³",
  load: "load",
  m: "m",
  each: "each",
  h: "h",
  d: "d",
  L: "m³",
  lump: "lump",
};

/** The tax on all other lines; none where the scheme sets no share. */
export function taxLines(scheme: Scheme, lines: readonly CostLine[], currency: string): CostLine[] {
  const share = scheme.costs?.tax ?? 0;
  if (share === 0 || lines.length === 0) return [];
  const { low, likely, high } = sumRanges(lines.map((line) => line.amount));
  const amount = { low: share * low, likely: share * likely, high: share * high };
  return [
    {
      id: "tax",
      name: "Tax",
      quantity: {
        value: 1,
        unit: "lump",
        formula: "sum of the other lines × share of tax",
        inputs: [
          { name: "sum of the other lines", value: likely, unit: currency },
          { name: "share of tax", value: share, unit: "" },
        ],
        source: "entered for this scheme",
      },
      priceIds: [],
      per: "lump",
      price: amount,
      amount,
      source: "entered for this scheme",
      own: true,
      made: "tax",
    },
  ];
}
