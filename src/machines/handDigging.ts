/** Digging by hand beside what is buried: how much, and how long. */
import type { WorkQuantities } from "../dig/index.js";
import { isBuriedLine, NATIVE, type Limit, type Material, type Quantity } from "../site/index.js";
import { diggingTables, type DiggingTables } from "./catalogue.js";
import { hoursAt, sumRanges } from "./range.js";
import { distanceToLimit, insideRings } from "./standing.js";
import type { Range } from "./types.js";

/** The part of one work that is dug by hand beside one buried line. */
export interface HandDug {
  work: string;
  name: string;
  /** Id and name of the limit. */
  limit: string;
  limitName: string;
  /** Share of the work's opening in plan within the tolerance of the line. */
  share: number;
  /** m³ in the bank, as that share of the work's cut. */
  volume: number;
  hours: Range;
  /** The likely hours, opened. */
  working: Quantity;
}

/** Whether a limit is a line in the ground that must not be struck. */
export function isBuried({ kind, path }: Limit): boolean {
  return path !== undefined && isBuriedLine(kind);
}

/** Places sampled in a work's opening. */
const PLACES = 400;
/** Tries for them. */
const TRIES = 40 * PLACES;

/**
 * What each work cuts within the tolerance of a buried line, and its hours by hand. The share of
 * the opening is sampled evenly in plan (400 places: to about one in a hundred), and the volume is
 * that share of the cut, as if it were equally deep all over. Empty without buried lines.
 */
export function handDigging(
  works: readonly WorkQuantities[],
  limits: readonly Limit[],
  materials: ReadonlyMap<string, Material>,
): HandDug[] {
  const buried = limits.filter(isBuried);
  if (buried.length === 0) return [];
  const { byHand } = diggingTables();
  return works.flatMap((work) =>
    buried.flatMap((limit) => {
      const share = shareNear(work, limit, byHand.tolerance);
      return share > 0 ? [handDug(work, limit, share, materials)] : [];
    }),
  );
}

// Fractions that fill a rectangle evenly whatever their count (additive recurrence).
const STEP_X = 0.7548776662466927;
const STEP_Y = 0.5698402909980532;

function shareNear({ outlines }: WorkQuantities, limit: Limit, tolerance: number): number {
  const rings = outlines?.daylight ?? [];
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of rings.flat()) {
    [west, east] = [Math.min(west, x), Math.max(east, x)];
    [south, north] = [Math.min(south, y), Math.max(north, y)];
  }
  let [inside, near] = [0, 0];
  for (let i = 1; i <= TRIES && inside < PLACES && east > west; i++) {
    const x = west + (east - west) * ((0.5 + i * STEP_X) % 1);
    const y = south + (north - south) * ((0.5 + i * STEP_Y) % 1);
    if (!insideRings([x, y], rings)) continue;
    inside += 1;
    if (distanceToLimit([x, y], limit) <= tolerance) near += 1;
  }
  return inside === 0 ? 0 : near / inside;
}

function handDug(
  work: WorkQuantities,
  limit: Limit,
  share: number,
  materials: ReadonlyMap<string, Material>,
): HandDug {
  const { byHand } = diggingTables();
  const lines = Object.entries(work.cut).map(([id, bank]) => {
    const rate = byHand.rates[wayByHand(id, materials)];
    return { name: materials.get(id)?.name ?? id, volume: share * bank, rate };
  });
  const hours = sumRanges(lines.map(({ volume, rate }) => hoursAt(volume, rate)));
  return {
    ...{ work: work.id, name: work.name, limit: limit.id, limitName: limit.name ?? limit.kind },
    share,
    volume: lines.reduce((sum, { volume }) => sum + volume, 0),
    hours,
    working: {
      value: hours.likely,
      unit: "h",
      formula:
        "sum over the materials: cut × share of the opening near the line ÷ dug per hour by hand",
      inputs: [
        { name: "share of the opening near the line", value: share, unit: "" },
        ...lines.flatMap(({ name, volume, rate }) => [
          { name: `${name} by hand`, value: volume, unit: "m³" },
          { name: `${name} in an hour`, value: rate.likely, unit: "m³/h" },
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
