import { groundAt } from "../estimate/index.js";
import { areaOutline } from "../site/index.js";
import type { PlanPoint, Site, Work } from "../site/index.js";
import { sizesToPlace } from "./sizes.js";

/** m between a work and its copy. Common practice, no source: room to walk between. */
const GAP = 1;
/** m: half the width that a heap is taken to have, which goes by its volume. */
const HEAP = 2;

/** The corners in plan of what a work takes up. */
function extent(work: Work): readonly PlanPoint[] {
  switch (work.kind) {
    case "trench":
      return work.path;
    case "pile": {
      const [x, y] = work.at;
      return [
        [x - HEAP, y - HEAP],
        [x + HEAP, y + HEAP],
      ];
    }
    case "strip":
      return work.area.by === "outline" ? work.area.outline : [];
    default:
      return areaOutline(work) ?? [];
  }
}

/**
 * How far (m east and north) copies of these works go to lie beside them: east by their width and a
 * gap, or another way where the survey does not reach that far; east when it reaches nowhere.
 */
export function besideOffset(site: Site, works: readonly Work[]): PlanPoint {
  const corners = works.flatMap(extent);
  if (corners.length === 0) return [0, 0];
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  const { step } = sizesToPlace(site);
  const over = (all: readonly number[]): number =>
    Math.ceil((Math.max(...all) - Math.min(...all) + GAP) / step) * step;
  const [wide, deep] = [over(xs), over(ys)];
  const ways: PlanPoint[] = [
    [wide, 0],
    [0, -deep],
    [-wide, 0],
    [0, deep],
  ];
  const fits = ([dx, dy]: PlanPoint): boolean =>
    corners.every(([x, y]) => groundAt(site, [x + dx, y + dy]) !== null);
  return ways.find(fits) ?? [wide, 0];
}
