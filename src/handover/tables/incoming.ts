import type { CostLine } from "../../estimate/index.js";
import { schemeOf } from "../../estimate/index.js";
import { words } from "../../words/index.js";
import type { Sheet } from "../sheet.js";
import { formula, FORMAT, head, input, Rows } from "./frame.js";
import type { Making } from "./frame.js";
import type { Quantities } from "./quantities.js";

/** The sheet of what comes in by the truck, and where the cost finds its quantities. */
export interface Incoming {
  sheet: Sheet;
  /** Address of the weight and of the loads of a cost line that is bought by the truck. */
  weightAt: ReadonlyMap<string, string>;
  loadsAt: ReadonlyMap<string, string>;
  /** Address of the least weight that is charged, and of the loads of surplus. */
  leastAt: string;
  surplusLoadsAt: string;
}

/** Loads within this part of a whole number are that number, as the estimate counts them. */
const SLACK = "1E-9";

const roundedUp = (loose: string, truck: string): string =>
  `MAX(0,ROUNDUP(${loose}/${truck}-${SLACK},0))`;

/** One cost line of material by the truck. */
interface Bought {
  line: CostLine;
  material: string;
  isShortfall: boolean;
}

/** The material that a cost line buys by the truck; null for any other line. */
export function boughtBy(making: Making, line: CostLine): Bought | null {
  const found = /^(material|shortfall)-(.+)$/.exec(line.id);
  const material = found?.[2];
  if (material === undefined) return null;
  const known = making.estimate.cost.loads.imports.some((one) => one.material === material);
  return known ? { line, material, isShortfall: found?.[1] === "shortfall" } : null;
}

/** Needed, with waste, by weight, loose and in loads: each from the one before. */
export function incomingSheet(making: Making, quantities: Quantities): Incoming {
  const said = words.tables;
  const { estimate, volume, mass, volumeUnit, massUnit } = making;
  const scheme = schemeOf(making.site, estimate.scheme);
  const { waste = 0, leastLoad = 0 } = scheme.costs ?? {};
  const { loads } = estimate.cost;
  const rows = new Rows(said.sheets.incoming);
  rows.add(said.waste, input(waste, FORMAT.factor));
  rows.add(said.leastLoad(massUnit), input(mass(leastLoad), FORMAT.volume));
  rows.add(said.truckload(volumeUnit), input(volume(loads.truckVolume), FORMAT.volume));
  rows.add();
  rows.add(
    ...[
      said.material,
      said.needed(volumeUnit),
      said.ordered(volumeUnit),
      said.weightPer(massUnit, volumeUnit),
      said.weight(massUnit),
      said.loosePer,
      said.loose(volumeUnit),
      said.loads,
    ].map(head),
  );
  const weightAt = new Map<string, string>();
  const loadsAt = new Map<string, string>();
  for (const line of estimate.cost.lines) {
    const bought = boughtBy(making, line);
    if (bought === null) continue;
    const row = boughtRow(making, quantities, rows, bought, waste);
    weightAt.set(line.id, rows.from(row, 4));
    loadsAt.set(line.id, rows.from(row, 7));
  }
  rows.add();
  const at = rows.next + 1;
  const surplus = estimate.earth.surplusLoose;
  const row = rows.add(
    ...[said.surplus, null, null, null, null, null, input(volume(surplus), FORMAT.volume)],
    formula(roundedUp(`G${at}`, "$B$3"), loads.surplus.value, FORMAT.count),
  );
  return {
    sheet: rows.done([36, 16, 16, 16, 14, 14, 14, 12], undefined, [said.surplusStays]),
    ...{ weightAt, loadsAt, leastAt: rows.from(1, 1), surplusLoadsAt: rows.from(row, 7) },
  };
}

function boughtRow(
  making: Making,
  quantities: Quantities,
  rows: Rows,
  { material, isShortfall, line }: Bought,
  waste: number,
): number {
  const { estimate, volume, mass } = making;
  const { imports, truckVolume } = estimate.cost.loads;
  const coming = imports.find((one) => one.material === material);
  if (coming === undefined) throw new Error(`${line.id}: no ${material} comes in`);
  const places = isShortfall ? [] : quantities.placedAt(material);
  const needed = isShortfall
    ? estimate.earth.importCompacted
    : estimate.works.reduce((sum, work) => sum + Math.max(0, work.fill[material] ?? 0), 0);
  const perVolume = coming.mass.value / coming.placed;
  const loosePer = coming.loose / coming.placed;
  const ordered = needed * (1 + waste);
  const at = rows.next + 1;
  const name = making.fillName(material);
  return rows.add(
    isShortfall ? words.tables.shortfall(name) : name,
    places.length === 0
      ? input(volume(needed), FORMAT.volume)
      : formula(places.join("+"), volume(needed), FORMAT.volume),
    formula(`B${at}*(1+$B$1)`, volume(ordered), FORMAT.volume),
    input(mass(perVolume) / volume(1), FORMAT.factor),
    formula(`C${at}*D${at}`, mass(ordered * perVolume), FORMAT.volume),
    input(loosePer, FORMAT.factor),
    formula(`C${at}*F${at}`, volume(ordered * loosePer), FORMAT.volume),
    formula(
      roundedUp(`G${at}`, "$B$3"),
      Math.max(0, Math.ceil((ordered * loosePer) / truckVolume - Number(SLACK))),
      FORMAT.count,
    ),
  );
}
