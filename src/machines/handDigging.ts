/** Digging by hand beside what is buried: how much, and how long. */
import type { CutBeside, WorkQuantities } from "../dig/index.js";
import { isBuriedLine, NATIVE, type Limit, type Material, type Quantity } from "../site/index.js";
import { diggingTables, type DiggingTables } from "./catalogue.js";
import { hoursAt, sumRanges } from "./range.js";
import type { Range } from "./types.js";

/** The part of one work that is dug by hand beside one buried line. */
export interface HandDug {
  work: string;
  name: string;
  /** Id and name of the limit. */
  limit: string;
  limitName: string;
  /** m² of the work's opening in plan within the tolerance of the line. */
  area: number;
  /** m³ in the bank that the work cuts there. */
  volume: number;
  hours: Range;
  /** The likely hours, opened. */
  working: Quantity;
}

/** Whether a limit is a line in the ground that must not be struck. */
export function isBuried({ kind, path }: Limit): boolean {
  return path !== undefined && isBuriedLine(kind);
}

/**
 * Hours by hand of what each work cuts within the tolerance of a buried line, as `cutsBeside` found
 * it in the dig. Throws on a limit or work that is not given.
 */
export function handDigging(
  cuts: readonly CutBeside[],
  works: readonly WorkQuantities[],
  limits: readonly Limit[],
  materials: ReadonlyMap<string, Material>,
): HandDug[] {
  return cuts.map((cut) => {
    const work = works.find(({ id }) => id === cut.work);
    const limit = limits.find(({ id }) => id === cut.limit);
    if (work === undefined || limit === undefined) {
      throw new Error(`by hand: got "${cut.work}" by "${cut.limit}", expected a work and a limit`);
    }
    return handDug(cut, work.name, limit, materials);
  });
}

function handDug(
  { work, area, cut }: CutBeside,
  name: string,
  limit: Limit,
  materials: ReadonlyMap<string, Material>,
): HandDug {
  const { byHand } = diggingTables();
  const lines = Object.entries(cut).map(([id, volume]) => {
    const rate = byHand.rates[wayByHand(id, materials)];
    return { name: materials.get(id)?.name ?? id, volume, rate };
  });
  const hours = sumRanges(lines.map(({ volume, rate }) => hoursAt(volume, rate)));
  return {
    ...{ work, name, limit: limit.id, limitName: limit.name ?? limit.kind },
    area,
    volume: lines.reduce((sum, { volume }) => sum + volume, 0),
    hours,
    working: {
      value: hours.likely,
      unit: "h",
      formula:
        "sum over the materials: what the hole cuts within the tolerance of the line ÷ dug per hour by hand; the cut is sampled at 2,000 places there, to 1 in 100 or better",
      inputs: [
        { name: "opening within the tolerance", value: area, unit: "m²" },
        ...lines.flatMap(({ name: material, volume, rate }) => [
          { name: `${material} by hand`, value: volume, unit: "m³" },
          { name: `${material} in an hour`, value: rate.likely, unit: "m³/h" },
        ]),
      ],
      source: byHand.source,
    },
  };
}

/** Which row of the table by hand a material takes. */
function wayByHand(
  id: string,
  materials: ReadonlyMap<string, Material>,
): keyof DiggingTables["byHand"]["rates"] {
  const material = materials.get(id);
  if (id === NATIVE || material === undefined) return "loose";
  if (/clay/.test(id)) return "clay";
  if (material.kind === "rippable" || material.kind === "rock") return "boulderClay";
  return material.kind === "soil" ? "firm" : "loose";
}
