/** What a shield or shoring in one hole would change: its walls upright, for the price of a hire. */
import { priceRow } from "../cost/index.js";
import { chosenPrice, type Range } from "../machines/index.js";
import { changeWork, type Site } from "../site/index.js";
import { changeBetween, type SchemeChange } from "./change.js";
import { estimate, schemeOf } from "./estimate.js";
import type { Estimate } from "./types.js";

/** The same site with the walls of one hole of a scheme upright. */
export function withShield(site: Site, schemeId: string, workId: string): Site {
  return changeWork(site, schemeId, workId, (work) =>
    "walls" in work ? { ...work, walls: { by: "run", run: 0 } } : work,
  );
}

/** With a shield less without; `cost` is without the hire. Negative where a shield saves. */
export interface ShieldChange extends SchemeChange {
  /** Hire of the shield while that hole is dug and filled. */
  hire: { days: Range; price: Range; amount: Range; source: string; own: boolean };
  /** Cost with the hire. */
  total: Range;
}

/**
 * What a shield in one hole would change, by two estimates. The hire runs for the whole days in
 * which the machine digs and fills that hole with upright walls, one at least; setting and pulling the
 * shield is not in it. `now` is the estimate of the same scheme as it is drawn.
 */
export function shieldChange(
  site: Site,
  schemeId: string,
  workId: string,
  now: Estimate,
): ShieldChange {
  const shielded = estimate(withShield(site, schemeId, workId), schemeId);
  const row = priceRow("shield-hire");
  const { price, source, own } = chosenPrice(
    row.id,
    row,
    row.source,
    schemeOf(site, schemeId).prices,
  );
  const hours = shielded.machines.works.find(({ id }) => id === workId)?.hours;
  const wholeDays = (time: number): number =>
    Math.max(1, Math.ceil(time / shielded.machines.hoursPerDay - 1e-9));
  const days: Range = {
    low: wholeDays(hours?.low ?? 0),
    likely: wholeDays(hours?.likely ?? 0),
    high: wholeDays(hours?.high ?? 0),
  };
  const amount: Range = {
    low: days.low * price.low,
    likely: days.likely * price.likely,
    high: days.high * price.high,
  };
  const change = changeBetween(now, shielded, site);
  return {
    ...change,
    hire: { days, price, amount, source, own },
    total: {
      low: change.cost.low + amount.low,
      likely: change.cost.likely + amount.likely,
      high: change.cost.high + amount.high,
    },
  };
}
