import { hirePriceIds, sumRanges } from "../machines/index.js";
import type { Hire, MachinesCosted, Range } from "../machines/index.js";
import type { Quantity } from "../site/index.js";
import { priceRow } from "./catalogue.js";
import { costLine, countOf, priceSource } from "./line.js";
import type { Pricing } from "./line.js";
import type { CostLine } from "./types.js";

/** Hire, delivery, hammer, fuel and what else is hired; none when there is nothing to dig or place. */
export function machineLines(pricing: Pricing, machines: MachinesCosted): CostLine[] {
  if (!(machines.hours.high > 0)) return [];
  const { digger, rental, fuel, working } = machines;
  const ids = hirePriceIds(digger.id);
  const lines = [
    hireLine(pricing, machines, {
      id: `${digger.id}-hire`,
      name: `${digger.name}: hire`,
      quantity: hireQuantity(diggerHire(machines)),
      priceIds: [ids.day, ids.week, ids.fourWeeks],
      amount: rental.cost,
    }),
    deliveryLine(pricing, machines),
  ];
  if (rental.hammer.cost.high > 0) lines.push(hammerLine(pricing, machines));
  lines.push(costLine(pricing, priceRow("fuel"), { quantity: working.fuel, spread: fuel }));
  return [...lines, ...otherHires(pricing, machines), ...handLines(pricing, machines)];
}

/** What is dug by hand; none without buried lines near the works. */
function handLines(pricing: Pricing, { byHand }: MachinesCosted): CostLine[] {
  if (byHand.length === 0) return [];
  const spread = sumRanges(byHand.map(({ hours }) => hours));
  const [first, ...others] = byHand.map(({ working }) => working);
  if (first === undefined) return [];
  const quantity =
    others.length === 0
      ? first
      : {
          ...first,
          value: spread.likely,
          formula: "hours by hand of every work and line",
          inputs: byHand.map(({ name, limitName, hours }) => ({
            name: `${name}, ${limitName}`,
            value: hours.likely,
            unit: "h",
          })),
        };
  return [costLine(pricing, priceRow("hand-digging"), { quantity, spread })];
}

/** What else is hired, but for what a line of the price list holds already. */
function otherHires(pricing: Pricing, { job }: MachinesCosted): CostLine[] {
  return job.hires
    .filter(({ resource, within }) => !["digger", "hammer"].includes(resource) && !within)
    .map((hire) => {
      const own = pricing.choices?.some(({ id }) => hire.priceIds.includes(id)) ?? false;
      return {
        id: `${hire.id}-hire`,
        name: `${hire.name}: hire, brought and taken away`,
        quantity: hireQuantity(hire),
        priceIds: hire.priceIds,
        per: "lump" as const,
        price: hire.price,
        amount: hire.price,
        source: priceSource(hire.source, own, pricing.currency),
        own,
      };
    });
}

/** One hire with what the schedule asks of it: its stays, each with its periods. */
function hireQuantity({ plans }: Hire): Quantity {
  const { stays } = plans.likely;
  return {
    value: 1,
    unit: "lump",
    formula:
      "cheapest mix of days (8 h), weeks (7 days, 40 h) and four weeks (28 days, 160 h) over the " +
      "calendar days from its first use to its last, idle ones included, hours beyond pro rata; " +
      "taken back and brought again where that costs less; low and high are the quick job at low " +
      "rates and the slow one at high rates",
    inputs: stays.flatMap((stay, i) => {
      const of = stays.length > 1 ? `, stay ${i + 1}` : "";
      const { cover } = stay;
      return [
        { name: `calendar days on site${of}`, value: stay.need.days, unit: "d" },
        { name: `of them idle${of}`, value: stay.idleDays, unit: "d" },
        { name: `hours on the meter${of}`, value: stay.need.hours, unit: "h" },
        { name: `day hires${of}`, value: cover.days, unit: "each" },
        { name: `week hires${of}`, value: cover.weeks, unit: "each" },
        { name: `four-week hires${of}`, value: cover.fourWeeks, unit: "each" },
        ...(stay.overageHours > 0
          ? [{ name: `hours beyond${of}`, value: stay.overageHours, unit: "h" }]
          : []),
      ];
    }),
    source: "published rental terms: 8 h a day, 40 h a week, 160 to 176 h a month on the meter",
  };
}

/** Bringing the digger and taking it away, once for each of its stays. */
function deliveryLine(pricing: Pricing, machines: MachinesCosted): CostLine {
  const { digger, rental } = machines;
  const { delivery: id } = hirePriceIds(digger.id);
  const { low, likely, high } = diggerHire(machines).plans;
  const stays = likely.stays.length;
  const trip = ({ delivery, stays: all }: typeof likely): number => delivery / (all.length || 1);
  const trips = [trip(low), trip(likely), trip(high)];
  return {
    ...hireLine(pricing, machines, {
      id,
      name: `${digger.name}: bring and take away`,
      quantity: countOf(stays, "one for each stay on the site, by the likely schedule"),
      priceIds: [id],
      amount: rental.delivery,
    }),
    per: "each",
    price: { low: Math.min(...trips), likely: trip(likely), high: Math.max(...trips) },
  };
}

/** A line whose price has been worked out with the hire: the amount is the price of all of it. */
function hireLine(
  pricing: Pricing,
  machines: MachinesCosted,
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

function diggerHire({ job, digger }: MachinesCosted): Hire {
  const hire = job.hires.find(({ id }) => id === digger.id);
  if (hire === undefined) throw new Error(`hire: got none of ${digger.id}, expected one`);
  return hire;
}

function hammerLine(pricing: Pricing, machines: MachinesCosted): CostLine {
  const hammer = machines.job.hires.find(({ resource }) => resource === "hammer");
  if (hammer === undefined)
    throw new Error("hire: got no hammer, expected one where rock is broken");
  return hireLine(pricing, machines, {
    id: hirePriceIds(machines.digger.id).hammerDay,
    name: `${machines.digger.name}: hydraulic hammer`,
    quantity: hireQuantity(hammer),
    priceIds: hammer.priceIds,
    amount: machines.rental.hammer.cost,
  });
}
