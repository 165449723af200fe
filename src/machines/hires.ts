/** What each hired thing costs over the days that the schedule keeps it. */
import type { Scheme } from "../site/index.js";
import type { Digger } from "./catalogue.js";
import type { Resource, Schedule, TimedJob } from "./dayTypes.js";
import { hirePriceIds } from "./hire.js";
import { hireCatalogue } from "./hireCatalogue.js";
import { hireStays } from "./hireCover.js";
import type { HirePlan, HireTerms } from "./hireCover.js";
import { chosenPrice } from "./prices.js";
import { exactly, mapRange } from "./range.js";
import type { Range } from "./types.js";

/** One thing that can be hired, with its rates as ranges of money. */
export interface HiredThing {
  id: string;
  name: string;
  resource: Resource;
  rates: { day: Range; week: Range; fourWeeks: Range };
  firstDelivery: Range;
  delivery: Range;
  /** Price ids that `scheme.prices` may set. */
  priceIds: readonly string[];
  /** Line of the price list whose price already holds this hire: do not add both. */
  within?: string;
  source: string;
}

/** One hired thing over the job. */
export interface Hire {
  id: string;
  name: string;
  resource: Resource;
  /** Quick job at low rates, likely, slow job at high rates. */
  plans: { low: HirePlan; likely: HirePlan; high: HirePlan };
  /** Money, trips included; the least and most of the three plans at the ends. */
  price: Range;
  within?: string;
  priceIds: readonly string[];
  source: string;
}

/** What can be hired for a scheme: its digger, the hammer, and the catalogue's hires. */
export function hiredThings(digger: Digger, prices: Scheme["prices"]): HiredThing[] {
  const { hires, hammer } = hireCatalogue();
  const { rates } = digger;
  const ids = hirePriceIds(digger.id);
  const at = (id: string, listed: Range): Range => chosenPrice(id, listed, "", prices).price;
  const diggerDelivery = at(ids.delivery, rates.delivery);
  const hammerIds = [ids.hammerDay, `${digger.id}-hammer-week`, `${digger.id}-hammer-four-weeks`];
  const hammerDay = at(ids.hammerDay, rates.hammerDay);
  const hammerWeek = at(
    hammerIds[1]!,
    mapRange(hammerDay, (day) => day * hammer.weekInDays),
  );
  const hammerFour = mapRange(hammerWeek, (week) => week * hammer.fourWeeksInWeeks);
  const others = hires.map((row): HiredThing => {
    const priceIds = ["day", "week", "four-weeks", "delivery"].map((end) => `${row.id}-${end}`);
    const delivery = at(priceIds[3]!, row.delivery);
    return {
      ...{ id: row.id, name: row.name, resource: row.resource, priceIds, source: row.source },
      rates: {
        day: at(priceIds[0]!, row.day),
        week: at(priceIds[1]!, row.week),
        fourWeeks: at(priceIds[2]!, row.fourWeeks),
      },
      ...{ firstDelivery: delivery, delivery },
      ...(row.within !== undefined && { within: row.within }),
    };
  });
  return [
    {
      ...{ id: digger.id, name: digger.name, resource: "digger" },
      rates: {
        day: at(ids.day, rates.day),
        week: at(ids.week, rates.week),
        fourWeeks: at(ids.fourWeeks, rates.fourWeeks),
      },
      ...{ firstDelivery: diggerDelivery, delivery: diggerDelivery },
      ...{ priceIds: [ids.day, ids.week, ids.fourWeeks, ids.delivery], source: rates.source },
    },
    {
      ...{ id: `${digger.id}-hammer`, name: `${digger.name}: hammer`, resource: "hammer" },
      rates: { day: hammerDay, week: hammerWeek, fourWeeks: at(hammerIds[2]!, hammerFour) },
      // The first time it comes with the digger.
      ...{ firstDelivery: exactly(0), delivery: at(`${digger.id}-hammer-delivery`, hammer.back) },
      priceIds: [...hammerIds, `${digger.id}-hammer-delivery`],
      source: `${rates.source}; ${hammer.source}`,
    },
    ...others,
  ];
}

/** A thing's terms at one end of its prices. */
export function termsAt(thing: HiredThing, end: keyof Range): HireTerms {
  const { day, week, fourWeeks } = thing.rates;
  return {
    rates: { day: day[end], week: week[end], fourWeeks: fourWeeks[end] },
    firstDelivery: thing.firstDelivery[end],
    delivery: thing.delivery[end],
  };
}

/** The cheapest stays of one thing over a scheduled job, as in one draw of a simulation. */
export function hireOnce(thing: HiredThing, job: TimedJob, terms: HireTerms): HirePlan {
  return hireStays(job.uses[thing.resource], terms);
}

/** Every hired thing that the schedule uses, in the order given. */
export function hiresOf(things: readonly HiredThing[], schedule: Schedule): Hire[] {
  return things
    .filter(({ resource }) => schedule.high.uses[resource].length > 0)
    .map((thing): Hire => {
      const planAt = (end: keyof Range): HirePlan =>
        hireOnce(thing, schedule[end], termsAt(thing, end));
      const likely = planAt("likely");
      const isOne = schedule.low === schedule.likely && schedule.high === schedule.likely;
      const plans = isOne
        ? { low: likely, likely, high: likely }
        : { low: planAt("low"), likely, high: planAt("high") };
      const prices = [plans.low.price, plans.likely.price, plans.high.price];
      return {
        ...{ id: thing.id, name: thing.name, resource: thing.resource, plans },
        price: {
          low: Math.min(...prices),
          likely: plans.likely.price,
          high: Math.max(...prices),
        },
        ...(thing.within !== undefined && { within: thing.within }),
        ...{ priceIds: thing.priceIds, source: thing.source },
      };
    });
}
