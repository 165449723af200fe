/** Topsoil taken off an area before what follows, kept apart, and put back at the very end. */
import {
  higherOf,
  outlineSurface,
  tidyOutline,
  type Box,
  type Place,
  type Surface,
} from "../ground/index.js";
import { areaOutline, type Finding, type Material, type Strip, type Work } from "../site/index.js";
import { length, type UnitSystem } from "../units/index.js";
import { quantitiesOf, quantitiesPut } from "./hole.js";
import { reachFindings } from "./reachCheck.js";
import type { WorkQuantities } from "./types.js";
import { sideWall } from "./sideWall.js";
import { grownBox } from "./walls.js";
import { Filling, nothingMoved, placedLayer, type Digging } from "./work.js";

const LEVEL = { a: 0, b: 0, c: 0 };

/** Takes the top off a strip's area. `works` are all of the scheme's, in the local frame. */
export function digStrip(digging: Digging, strip: Strip, works: readonly Work[]): WorkQuantities {
  const { ground } = digging;
  const area = areaOf(strip, works);
  if (!area) return nothingMoved(strip, 0);
  const taken = ground.tally();
  ground.shave(area.region, area.box, strip.depth ?? "top layer", taken);
  digging.findings.push(...reachFindings(digging, strip));
  const quantities = quantitiesOf(digging, taken);
  if (Object.keys(quantities.cut).length === 0) digging.findings.push(nothingToStrip(strip));
  return { ...nothingMoved(strip, 0), ...quantities, floor: floorOf(digging) };
}

/** Lowest and highest of what the strip has laid bare, m local. */
function floorOf({ ground }: Digging): WorkQuantities["floor"] {
  let [lowest, highest] = [Infinity, -Infinity];
  for (const { cell } of ground.markedCells()) {
    for (const z of cell.tops[cell.tops.length - 1]!) {
      lowest = Math.min(lowest, z);
      highest = Math.max(highest, z);
    }
  }
  return lowest <= highest ? { lowest, highest } : { lowest: 0, highest: 0 };
}

interface Area {
  /** −∞ on the area and +∞ off it. */
  region: Surface;
  box: Box;
}

function areaOf({ area }: Strip, works: readonly Work[]): Area | null {
  if (area.by === "outline") return areaWithin(area.outline, 0);
  const over = works.find((work) => work.id === area.work);
  const outline = over ? areaOutline(over) : null;
  return outline && areaWithin(outline, area.beyond);
}

/** The area within an outline, and `beyond` it by so many m. */
function areaWithin(written: readonly Place[], beyond: number): Area {
  const outline = tidyOutline(written);
  const region = outlineSurface(
    outline,
    (i) => sideWall(outline[i]!, outline[(i + 1) % outline.length]!, LEVEL, 0, beyond),
    "low",
  );
  return { region, box: grownBox(outline, beyond) };
}

/**
 * Spreads a strip's earth on what is bare within its area once everything else is built: not on
 * pads, buildings, beds or tanks. There may be too little for the depth asked for: then what there
 * is goes on evenly, and a finding says so. Returns the strip's quantities with what was put back.
 */
export function putBackStrip(
  digging: Digging,
  strip: Strip,
  works: readonly Work[],
  dug: WorkQuantities,
  materials: ReadonlyMap<string, Material>,
): WorkQuantities {
  const area = areaOf(strip, works);
  const material = mostOf(dug.cut);
  if (!area || !strip.putBack || material === null) return dug;
  const { ground } = digging;
  const bare = bareWithin(area, works);
  const spread = ground.bareArea(bare, area.box);
  const there = Object.entries(dug.cut).reduce(
    (sum, [id, bank]) => sum + bank * (materials.get(id)?.compacted ?? 1),
    0,
  );
  const depth = spread > 0 ? Math.min(strip.putBack.depth, there / spread) : 0;
  if (depth < strip.putBack.depth) digging.findings.push(tooThin(strip, depth, digging.units));
  if (depth <= 0) return dug;
  const filling = new Filling();
  const layer = placedLayer(digging, material, "backfilled");
  filling.add(material, ground.cover(bare, area.box, depth, layer));
  return { ...dug, ...quantitiesPut(digging, filling, dug) };
}

/** The area less the footprints of what is built on it. */
function bareWithin({ region }: Area, works: readonly Work[]): Surface {
  const built = works.flatMap((work): (readonly Place[])[] => {
    if (work.kind === "pad") {
      return [work.outline, ...(work.levels ?? []).map((each) => each.outline)];
    }
    const outline = work.kind === "building" || work.kind === "bed" ? areaOutline(work) : null;
    return outline ? [outline] : [];
  });
  return higherOf([region, ...built.map(keptOff)]);
}

/** +∞ within an outline, −∞ beyond it. */
function keptOff(written: readonly Place[]): Surface {
  const outline = tidyOutline(written);
  return outlineSurface(
    outline,
    (i) => {
      const wall = sideWall(outline[i]!, outline[(i + 1) % outline.length]!, LEVEL, 0);
      if (wall.is !== "wall") throw new Error(`side is a ${wall.is}, expected a wall`);
      return { ...wall, reversed: true };
    },
    "high",
  );
}

function mostOf(cut: WorkQuantities["cut"]): string | null {
  const [most] = Object.entries(cut).sort(([, a], [, b]) => b - a);
  return most ? most[0] : null;
}

function nothingToStrip(strip: Strip): Finding {
  return {
    level: "caution",
    code: "strip.nothing",
    where: strip.id,
    text: `${strip.name} takes nothing off: the site's top layer has no thickness there, or has gone already. Give the strip a depth, or put it first in the building order.`,
    source: "geometry",
  };
}

function tooThin(strip: Strip, depth: number, units: UnitSystem): Finding {
  return {
    level: "note",
    code: "strip.thin",
    where: strip.id,
    text: `${strip.name} has too little earth for the depth that is to be put back: it goes on ${length.print(depth, units)} deep. More must come in, or a thinner cover do.`,
    source: "geometry",
  };
}
