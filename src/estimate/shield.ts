/** What a shield or shoring in one hole would change: its walls upright, for the price of a hire. */
import { priceRow } from "../cost/index.js";
import { chosenPrice, type Range } from "../machines/index.js";
import { changeWork, materialsOf, type Site } from "../site/index.js";
import { estimate, schemeOf } from "./estimate.js";
import type { Estimate } from "./types.js";

/** The same site with the walls of one hole of a scheme upright. */
export function withShield(site: Site, schemeId: string, workId: string): Site {
  return changeWork(site, schemeId, workId, (work) =>
    "walls" in work ? { ...work, walls: { by: "run", run: 0 } } : work,
  );
}

/** With a shield less without, m³, days and money; negative where a shield saves. */
export interface ShieldChange {
  /** m³ in the bank, and of it soft and hard rock. */
  cut: number;
  rock: number;
  /** m³ loose that is left over. */
  spoil: number;
  /** Working days of the digger, and money without the hire; `low` is the least of the three. */
  days: Range;
  cost: Range;
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
  const cost = between(now.cost.total, shielded.cost.total);
  const rock = (of: Estimate): number => rockOf(of, site);
  return {
    cut: sum(shielded.cut) - sum(now.cut),
    rock: rock(shielded) - rock(now),
    spoil: shielded.earth.surplusLoose - now.earth.surplusLoose,
    days: between(now.machines.days, shielded.machines.days),
    cost,
    hire: { days, price, amount, source, own },
    total: {
      low: cost.low + amount.low,
      likely: cost.likely + amount.likely,
      high: cost.high + amount.high,
    },
  };
}

/** The changes of a range's three figures, the least and the greatest of them at its ends. */
function between(before: Range, after: Range): Range {
  const likely = after.likely - before.likely;
  const all = [after.low - before.low, likely, after.high - before.high];
  return { low: Math.min(...all), likely, high: Math.max(...all) };
}

function sum(volumes: Readonly<Record<string, number>>): number {
  return Object.values(volumes).reduce((total, volume) => total + volume, 0);
}

function rockOf({ cut }: Estimate, site: Site): number {
  const materials = materialsOf(site);
  return Object.entries(cut).reduce((total, [id, volume]) => {
    const kind = materials.get(id)?.kind;
    return kind === "rock" || kind === "rippable" ? total + volume : total;
  }, 0);
}
