import { cellAt, surfaceOf, valueAt, type LayeredGround, type Place } from "../ground/index.js";
import type { Bed, Building, Finding } from "../site/index.js";
import { rectangle } from "./place.js";
import { nothingMoved, type Digging } from "./work.js";
import type { WorkQuantities } from "./types.js";

/** A raised bed: the box inside its walls, filled from the bottom up to at most its height. */
export function fillBed(digging: Digging, bed: Bed): WorkQuantities {
  const inside = Math.max(0, bed.length - 2 * bed.wall) * Math.max(0, bed.width - 2 * bed.wall);
  const fill: Record<string, number> = {};
  let left = bed.height;
  for (const { material, depth } of bed.filling) {
    const volume = inside * Math.min(depth, left);
    if (volume > 0) fill[material] = (fill[material] ?? 0) + volume;
    left -= Math.min(depth, left);
  }
  if (bed.filling.reduce((sum, { depth }) => sum + depth, 0) > bed.height + 1e-9) {
    digging.findings.push({
      level: "caution",
      code: "bed.overfull",
      where: bed.id,
      text: `The fillings of ${bed.name} are deeper than its height; only what fits is counted. Raise the bed or thin a filling.`,
      source: "geometry",
    });
  }
  const corners = rectangle(bed.at, bed.bearing, bed.length, bed.width);
  const buried = depthBuried(digging.ground, corners, bed.base);
  if (buried > BURIED) {
    digging.findings.push(
      buriedFinding(bed, "A raised bed digs nothing: level a pad for it first."),
    );
  }
  digging.findings.push(...hanging(digging, bed, corners));
  return { ...nothingMoved(bed, bed.base), fill };
}

/** A work that stands this far below the ground beside it is said to, m. */
const BURIED = 0.1;

/** How far the ground as it now is stands above a base at the corners of an outline, m. */
function depthBuried(ground: LayeredGround, corners: readonly Place[], base: number): number {
  const depths = corners.map(([x, y]) => {
    const cell = cellAt(ground, x, y);
    return cell ? valueAt(cell, surfaceOf(cell), x, y) - base : 0;
  });
  return Math.max(...depths);
}

/** Says that a bed's base hangs above the ground, at one corner or more. */
function hanging(digging: Digging, bed: Bed, corners: readonly Place[]): Finding[] {
  const gaps = corners.map((corner) => -depthBuried(digging.ground, [corner], bed.base));
  const most = Math.max(...gaps);
  if (most <= HANGS) return [];
  return [
    {
      level: "caution",
      code: "bed.hangs",
      where: bed.id,
      text: `${bed.name} stands above the ground at a corner of its base, with nothing under it. Level a pad for it first, or lower its base.`,
      source: "geometry",
    },
  ];
}

/** A bed that hangs more than this above the ground is said to, m. */
const HANGS = 0.1;

function buriedFinding(work: Bed | Building, mend: string): Finding {
  return {
    level: "caution",
    code: `${work.kind}.below-ground`,
    where: work.id,
    text: `${work.name} stands partly below the ground at its corners. ${mend}`,
    source: "geometry",
  };
}

/** A building moves no earth here: it is massing, and a place that pipes start from. */
export function standBuilding(digging: Digging, building: Building): WorkQuantities {
  if (depthBuried(digging.ground, building.outline, building.base) > BURIED) {
    const mend = "A building digs nothing: if its site is to be levelled, place a pad before it.";
    digging.findings.push({ ...buriedFinding(building, mend), level: "note" });
  }
  return nothingMoved(building, building.base);
}
