import { exactly, hirePriceIds, mapRange } from "../machines/index.js";
import type { MachinesResult, Range } from "../machines/index.js";
import type { Quantity } from "../site/index.js";
import { priceRow } from "./catalogue.js";
import { costLine, countOf, priceSource } from "./line.js";
import type { Pricing } from "./line.js";
import type { CostLine } from "./types.js";

/** Hire, delivery, hammer, fuel and compactor; none when there is nothing to dig or place. */
export function machineLines(pricing: Pricing, machines: MachinesResult): CostLine[] {
  if (!(machines.hours.high > 0)) return [];
  const { digger, rental, fuel, working } = machines;
  const ids = hirePriceIds(digger.id);
  const lines = [
    hireLine(pricing, machines, {
      id: `${digger.id}-hire`,
      name: `${digger.name}: hire`,
      quantity: coverQuantity(machines),
      priceIds: [ids.day, ids.week, ids.fourWeeks],
      amount: rental.cost,
    }),
    hireLine(pricing, machines, {
      id: ids.delivery,
      name: `${digger.name}: bring and take away`,
      quantity: countOf(1, "one for the hire", "lump"),
      priceIds: [ids.delivery],
      amount: rental.delivery,
    }),
  ];
  if (rental.hammer.days.high > 0) lines.push(hammerLine(pricing, machines, ids.hammerDay));
  lines.push(costLine(pricing, priceRow("fuel"), { quantity: working.fuel, spread: fuel }));
  if (machines.works.some((work) => work.place.likely > 0)) {
    lines.push(
      costLine(pricing, priceRow("plate-compactor"), {
        quantity: { ...working.days, formula: `as long as the digger: ${working.days.formula}` },
        spread: machines.days,
      }),
    );
  }
  return lines;
}

/** A line whose price has been worked out with the hire: the amount is the price of all of it. */
function hireLine(
  pricing: Pricing,
  machines: MachinesResult,
  item: {
    id: string;
    name: string;
    quantity: Quantity;
    priceIds: readonly string[];
    amount: Range;
  },
): CostLine {
  const own = pricing.choices?.some((choice) => item.priceIds.includes(choice.id)) ?? false;
  return {
    ...item,
    per: "lump",
    price: item.amount,
    source: priceSource(machines.rental.source, own, pricing.currency),
    own,
  };
}

function coverQuantity(machines: MachinesResult): Quantity {
  const { cover } = machines.rental;
  return {
    value: 1,
    unit: "lump",
    formula:
      "cheapest mix of days (8 h), weeks (7 days, 40 h) and four weeks (28 days, 160 h) that " +
      "covers the working days and the hours on the meter; low and high are the quick job at low " +
      "rates and the slow job at high rates, each with its own mix",
    inputs: [
      { name: "hours", value: machines.hours.likely, unit: "h" },
      { name: "working days", value: machines.days.likely, unit: "d" },
      { name: "day hires", value: cover.days, unit: "each" },
      { name: "week hires", value: cover.weeks, unit: "each" },
      { name: "four-week hires", value: cover.fourWeeks, unit: "each" },
    ],
    source: "published rental terms: 8 h a day, 40 h a week, 160 to 176 h a month on the meter",
  };
}

function hammerLine(pricing: Pricing, machines: MachinesResult, priceId: string): CostLine {
  const { days, cost } = machines.rental.hammer;
  return {
    ...hireLine(pricing, machines, {
      id: priceId,
      name: `${machines.digger.name}: hydraulic hammer`,
      quantity: {
        value: days.likely,
        unit: "d",
        formula: "hammer hours ÷ hours per day, rounded up to whole days",
        inputs: [
          { name: "hammer hours", value: machines.hammerHours.likely, unit: "h" },
          { name: "hours per day", value: machines.hoursPerDay, unit: "h" },
        ],
        source: "see the hours of the works in rock",
      },
      priceIds: [priceId],
      amount: cost,
    }),
    per: "d",
    price: perDay(cost, days),
  };
}

function perDay(cost: Range, days: Range): Range {
  const safe = mapRange(days, (d) => Math.max(d, 1));
  return days.low > 0
    ? {
        low: cost.low / safe.low,
        likely: cost.likely / safe.likely,
        high: cost.high / safe.high,
      }
    : exactly(cost.likely / safe.likely);
}
