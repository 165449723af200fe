import type { DigResult } from "../dig/index.js";
import { diggersOf, hiredThings, hirePriceIds, sumRanges } from "../machines/index.js";
import type { MachinesCosted, Range } from "../machines/index.js";
import type { Finding, Material, Quantity, Scheme } from "../site/index.js";
import type { UnitSystem } from "../units/index.js";
import { cataloguePrices } from "./catalogue.js";
import { boughtLines, haulLines, keepsSurplus } from "./earthLines.js";
import type { Pricing } from "./line.js";
import { loadsOf } from "./loads.js";
import { machineLines } from "./machineLines.js";
import { ownLines, taxLines } from "./ownLines.js";
import { pumpPriceIds } from "./pumpLines.js";
import { barrierLines, lumpLines, pipeLines, tankLines } from "./systemLines.js";
import { wearLines } from "./wearLines.js";
import type { CostLine, CostResult, Loads } from "./types.js";

/**
 * Prices a scheme: what is bought, hauled, set, laid and hired, line by line with low, likely and
 * high, in `currency` (ISO 4217). Prices are the scheme's own where it sets them, else the
 * catalogue's demo prices, whose figures are never converted. No works give no lines and zeros.
 * `barrier` is the erosion barrier, m; absent, none is priced. `units` is for names alone.
 * Throws only if the dig names a material that `materials` does not hold.
 */
export function costOf(
  scheme: Scheme,
  currency: string,
  dig: DigResult,
  machines: MachinesCosted,
  materials: ReadonlyMap<string, Material>,
  barrier?: Quantity,
  units: UnitSystem = "us",
): CostResult {
  const { waste = 0, leastLoad = 0 } = scheme.costs ?? {};
  const pricing: Pricing = { choices: scheme.prices, currency, waste, leastLoad, units };
  const loads = loadsOf(scheme, dig, materials);
  const untaxed = [
    ...boughtLines(pricing, dig, materials, loads.truckVolume),
    ...haulLines(pricing, scheme, loads),
    ...tankLines(pricing, scheme),
    ...pipeLines(pricing, dig),
    ...machineLines(pricing, machines),
    ...wearLines(pricing, dig, materials),
    ...barrierLines(pricing, barrier),
    ...lumpLines(pricing, scheme, dig),
    ...ownLines(scheme),
  ];
  const lines = [...untaxed, ...taxLines(scheme, untaxed, currency)];
  const total = sumRanges(lines.map((line) => line.amount));
  const notPriced = scheme.works
    .filter((work) => work.kind === "building" || work.kind === "bed" || work.kind === "pad")
    .map((work) => work.id);
  return {
    currency,
    lines,
    total,
    totalWorking: totalQuantity(lines, total, currency),
    loads,
    notPriced,
    findings: findingsOf(scheme, lines, loads, notPriced),
  };
}

function totalQuantity(lines: readonly CostLine[], total: Range, currency: string): Quantity {
  return {
    value: total.likely,
    unit: currency,
    formula:
      "sum of the lines; low is the sum of every low and high of every high, as if all went well " +
      "or ill together, so the true spread is likely to be narrower",
    inputs: lines.map((line) => ({ name: line.name, value: line.amount.likely, unit: currency })),
    source: "the lines, each with its own source",
  };
}

function findingsOf(
  scheme: Scheme,
  lines: readonly CostLine[],
  loads: Loads,
  notPriced: readonly string[],
): Finding[] {
  const findings: Finding[] = unknownChoices(scheme);
  const demo = lines.filter((line) => !line.own).length;
  if (demo > 0) {
    findings.push({
      // Every site begins so: a caution that is always there is soon read over.
      level: "note",
      code: "cost.demo-prices",
      where: "site",
      text: `${demo} of ${lines.length} cost lines use demo prices. Enter your suppliers' prices before you rely on the total.`,
      source: "demo price, no source",
    });
  }
  if (loads.surplus.value > 0 && keepsSurplus(scheme)) {
    findings.push({
      level: "note",
      code: "cost.surplus-kept",
      where: scheme.works.find((work) => work.kind === "pile")?.id ?? "site",
      text: `The surplus (${loads.surplus.value} truckloads) stays on the pile, so no haul is priced.`,
      source: "the scheme",
    });
  }
  const names = scheme.works.filter((w) => notPriced.includes(w.id)).map((w) => w.name);
  if (names.length > 0) {
    findings.push({
      level: "note",
      code: "cost.not-priced",
      where: "site",
      text: `Only earth, fill and filling are priced for ${names.join(", ")}; what stands on or around them is not.`,
      source: "the price list",
    });
  }
  return findings;
}

/** Price ids that a scheme may name: those of the price list, and of everything that is hired. */
function knownPrices(scheme: Scheme): ReadonlySet<string> {
  const own = scheme.machines?.diggers;
  if (known !== undefined && known.own === own) return known.ids;
  const ids = new Set([
    ...cataloguePrices().keys(),
    ...diggersOf(scheme).flatMap((digger) => [
      ...Object.values(hirePriceIds(digger.id)),
      ...hiredThings(digger, undefined).flatMap(({ priceIds }) => priceIds),
    ]),
  ]);
  known = { own, ids };
  return ids;
}

/** The last answer: many runs of a simulation ask with the same diggers. */
let known:
  { own: NonNullable<Scheme["machines"]>["diggers"]; ids: ReadonlySet<string> } | undefined;

function unknownChoices(scheme: Scheme): Finding[] {
  if (scheme.prices === undefined || scheme.prices.length === 0) return [];
  const known = knownPrices(scheme);
  const pumps = new Set(pumpPriceIds(scheme));
  return scheme.prices
    .filter((choice) => !known.has(choice.id) && !pumps.has(choice.id))
    .map((choice) => ({
      level: "caution" as const,
      code: "cost.unknown-price",
      where: "site",
      text: `The scheme prices “${choice.id}”, which the price list does not have; it changes nothing.`,
      source: "the site file",
    }));
}
