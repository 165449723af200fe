import { elevationAt, type LayeredGround } from "../ground/index.js";
import type { Bed, Building, Pile } from "../site/index.js";
import { nothingMoved, reached, Filling, type Digging } from "./work.js";
import type { WorkQuantities } from "./types.js";

/** A raised bed: the box inside its walls, filled from the bottom up to at most its height. */
export function fillBed(digging: Digging, bed: Bed): WorkQuantities {
  const inside = Math.max(0, bed.length - 2 * bed.wall) * Math.max(0, bed.width - 2 * bed.wall);
  const fill = new Filling();
  let left = bed.height;
  if (reached(digging, "backfilled")) {
    for (const { material, depth } of bed.filling) {
      fill.add(material, inside * Math.min(depth, left));
      left -= Math.min(depth, left);
    }
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
  return { ...nothingMoved(bed, bed.base), fill: fill.record() };
}

/** A building moves no earth here: it is massing, and a place that pipes start from. */
export function standBuilding(building: Building): WorkQuantities {
  return nothingMoved(building, building.base);
}

/** A pile stands on the ground as found; its size follows from the surplus. */
export function standPile(ground: LayeredGround, pile: Pile): WorkQuantities {
  const elevation = elevationAt(ground.base.tin, pile.at[0], pile.at[1]);
  return nothingMoved(pile, elevation ?? 0);
}
