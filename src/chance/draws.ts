/** What every run draws anew besides the ground: how fast machines work, how earth swells, prices. */
import {
  chosenPrice,
  diggingTables,
  hirePriceIds,
  type Digger,
  type DiggingTables,
  type Range,
} from "../machines/index.js";
import { cataloguePrices, ownPumpPrices } from "../cost/index.js";
import { catalogueName } from "../site/index.js";
import type { Material, PriceChoice, Scheme } from "../site/index.js";
import type { UnitSystem } from "../units/index.js";
import { looseRange } from "./bulkingRange.js";
import { triangular } from "./random.js";
import type { Drawn } from "./types.js";

/** Everything that is drawn, in the order of its shares; and how shares become inputs. */
export interface Draws {
  drawn: readonly Drawn[];
  /** Turns one share, 0 to 1, for each of `drawn` into what the estimate works with. */
  inputs: (shares: Float64Array) => DrawnInputs;
}

export interface DrawnInputs {
  tables: DiggingTables;
  digger: Digger;
  materials: ReadonlyMap<string, Material>;
  prices: PriceChoice[];
}

const HIRE_WORDS = {
  day: "a day",
  week: "a week",
  fourWeeks: "four weeks",
  delivery: "bringing it",
  hammerDay: "the hammer",
} as const;

/**
 * What is drawn for a scheme with this digger. `dugIds` are the materials that are dug or come in;
 * `units` is for names alone.
 */
export function drawsOf(
  scheme: Scheme,
  digger: Digger,
  materials: ReadonlyMap<string, Material>,
  dugIds: ReadonlySet<string>,
  units: UnitSystem = "us",
): Draws {
  const output = outputDraws(digger);
  const swell = [...materials.values()]
    .filter(({ id }) => dugIds.has(id))
    .map((material) => swellDraw(material));
  const hire = hireDraws(scheme, digger);
  const listed = listedPrices(scheme, units);
  const drawn = [...output, ...swell, hire.drawn, ...listed];
  const inputs = (shares: Float64Array): DrawnInputs => {
    const value = (i: number): number => triangular(shares[i]!, drawn[i]!.range);
    const firstPrice = output.length + swell.length;
    const changed = new Map(materials);
    swell.forEach(({ id }, i) => {
      const materialId = id.slice("swell:".length);
      changed.set(materialId, { ...materials.get(materialId)!, loose: value(output.length + i) });
    });
    return {
      ...drawnOutput(digger, value),
      materials: changed,
      prices: [
        ...hire.prices(shares[firstPrice]!),
        ...listed.map(({ id }, i) => ({
          id: id.slice("price:".length),
          price: value(firstPrice + 1 + i),
        })),
      ],
    };
  };
  return { drawn, inputs };
}

/** In the order that `drawnOutput` reads them. */
function outputDraws(digger: Digger): Drawn[] {
  const { closeWork, setUp, compacting, byKind } = diggingTables();
  const line = (
    id: string,
    name: string,
    range: Range & { source: string },
    unit: string,
  ): Drawn => ({
    id: `output:${id}`,
    kind: "output",
    name,
    range: { low: range.low, likely: range.likely, high: range.high },
    unit,
    source: range.source,
  });
  return [
    line("close-work", "How fast the machine digs to line and level", closeWork, ""),
    line("set-up", "Setting up", setUp, "h"),
    line("compacting", "How fast fill is compacted", compacting, "m³/h"),
    line(
      "ripping",
      "How fast soft rock rips",
      { ...byKind.rippable.ripped, source: byKind.rippable.source },
      "",
    ),
    line("hammer", "How fast the hammer breaks hard rock", digger.hammer, "m³/h"),
    line("fill", "How full the bucket comes up", FILL_SHARE, ""),
  ];
}

/** Where between its ends every material's bucket fill lies: one figure for all, as one hand digs. */
const FILL_SHARE = {
  low: 0,
  likely: 0.5,
  high: 1,
  source: "between the ends of Nunnally, Construction Methods and Management, Table 3-2",
};

function drawnOutput(
  digger: Digger,
  value: (i: number) => number,
): { tables: DiggingTables; digger: Digger } {
  const tables = diggingTables();
  const fixed = <T extends Range>(range: T, at: number): T => ({
    ...range,
    low: at,
    likely: at,
    high: at,
  });
  const fill = value(5);
  const ripped = value(3);
  const way = (from: DiggingTables["native"]): DiggingTables["native"] => ({
    ...from,
    fill: fixed(from.fill, between(from.fill, fill)),
    ripped: from.ripped.low < from.ripped.high ? fixed(from.ripped, ripped) : from.ripped,
  });
  const { topsoil, soil, fill: filled, aggregate, rippable, rock } = tables.byKind;
  return {
    tables: {
      ...tables,
      closeWork: fixed(tables.closeWork, value(0)),
      setUp: fixed(tables.setUp, value(1)),
      compacting: fixed(tables.compacting, value(2)),
      byKind: {
        topsoil: way(topsoil),
        soil: way(soil),
        fill: way(filled),
        aggregate: way(aggregate),
        rippable: way(rippable),
        rock: way(rock),
      },
      byMaterial: Object.fromEntries(
        Object.entries(tables.byMaterial).map(([id, row]) => [id, way(row)]),
      ),
      native: way(tables.native),
    },
    digger: { ...digger, hammer: fixed(digger.hammer, value(4)) },
  };
}

/** 0 gives the low end, 0.5 the likely figure, 1 the high end. */
function between({ low, likely, high }: Range, share: number): number {
  return share < 0.5
    ? low + 2 * share * (likely - low)
    : likely + 2 * (share - 0.5) * (high - likely);
}

function swellDraw(material: Material): Drawn {
  return {
    id: `swell:${material.id}`,
    kind: "swell",
    name: `How ${material.name.toLowerCase()} swells`,
    range: looseRange(material),
    unit: "",
    source: material.source,
  };
}

/** All rates of one machine come from one yard, so one share draws them together. */
function hireDraws(
  scheme: Scheme,
  digger: Digger,
): { drawn: Drawn; prices: (share: number) => PriceChoice[] } {
  const ids = hirePriceIds(digger.id);
  const rates = (Object.keys(HIRE_WORDS) as (keyof typeof HIRE_WORDS)[]).map((period) => ({
    id: ids[period],
    price: chosenPrice(ids[period], digger.rates[period], digger.rates.source, scheme.prices).price,
  }));
  return {
    drawn: {
      id: "price:hire",
      kind: "price",
      name: `Hire rates of ${digger.name}`,
      range: rates[0]!.price,
      unit: "",
      source: digger.rates.source,
    },
    prices: (share) => rates.map(({ id, price }) => ({ id, price: triangular(share, price) })),
  };
}

function listedPrices(scheme: Scheme, units: UnitSystem): Drawn[] {
  return [...cataloguePrices().values(), ...ownPumpPrices(scheme)].map((row) => {
    const { price, source } = chosenPrice(row.id, row, row.source, scheme.prices);
    const name = catalogueName(row.name, units);
    return { id: `price:${row.id}`, kind: "price", name, range: price, unit: "", source };
  });
}
