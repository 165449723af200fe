/** What an edit of a scheme would change, by the estimate as it is and the estimate as it would be. */
import type { Range } from "../machines/index.js";
import { materialsOf, type Finding, type Site } from "../site/index.js";
import type { Estimate } from "./types.js";

/** After less before: m³, days and money; negative where the edit saves. */
export interface SchemeChange {
  /** m³ in the bank, and of it soft and hard rock. */
  cut: number;
  rock: number;
  /** m³ loose that is left over. */
  spoil: number;
  /** Working days of the digger, and money; `low` is the least of the three. */
  days: Range;
  cost: Range;
  /** Names of the diggers, where another would be chosen; the difference is then not the earth's alone. */
  digger: { before: string; after: string } | null;
  /** Stops and cautions that are said after and not before, and the other way round. */
  said: readonly Finding[];
  unsaid: readonly Finding[];
}

/** The change between two estimates of one scheme of a site with these materials. */
export function changeBetween(
  before: Estimate,
  after: Estimate,
  site: Pick<Site, "materials">,
): SchemeChange {
  const rock = ({ cut }: Estimate): number => rockOf(cut, site);
  const [was, is] = [before.machines.digger, after.machines.digger];
  return {
    cut: sum(after.cut) - sum(before.cut),
    rock: rock(after) - rock(before),
    spoil: after.earth.surplusLoose - before.earth.surplusLoose,
    days: between(before.machines.days, after.machines.days),
    cost: between(before.cost.total, after.cost.total),
    digger: was.id === is.id ? null : { before: was.name, after: is.name },
    said: onlyIn(after.findings, before.findings),
    unsaid: onlyIn(before.findings, after.findings),
  };
}

/** The changes of a range's three figures, the least and the greatest of them at its ends. */
function between(before: Range, after: Range): Range {
  const likely = after.likely - before.likely;
  const all = [after.low - before.low, likely, after.high - before.high];
  return { low: Math.min(...all), likely, high: Math.max(...all) };
}

/**
 * Stops and cautions of some findings that others do not say at that level, of that code, at that
 * place: a changed figure in the text makes no new one. What was taken on is no news either.
 */
function onlyIn(some: readonly Finding[], others: readonly Finding[]): Finding[] {
  const keyOf = ({ level, code, where }: Finding): string => `${level} ${code} ${where}`;
  const known = new Set(others.map(keyOf));
  return some.filter(
    (one) => one.level !== "note" && one.accepted === undefined && !known.has(keyOf(one)),
  );
}

function sum(volumes: Readonly<Record<string, number>>): number {
  return Object.values(volumes).reduce((total, volume) => total + volume, 0);
}

function rockOf(cut: Estimate["cut"], site: Pick<Site, "materials">): number {
  const materials = materialsOf(site);
  return Object.entries(cut).reduce((total, [id, volume]) => {
    const kind = materials.get(id)?.kind;
    return kind === "rock" || kind === "rippable" ? total + volume : total;
  }, 0);
}
