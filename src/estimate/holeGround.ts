import { thicknessAt, waterTable, type BaseGround } from "../ground/index.js";
import type { HoleGround } from "../safety/index.js";
import type { PlanPoint, Site } from "../site/index.js";

/** What the holes' checks ask of the ground as found, in site coordinates. */
export function holeGround(
  site: Site,
  { regions, tin: { origin } }: BaseGround,
  groundAt: (at: PlanPoint) => number,
): HoleGround {
  const [ox, oy] = origin;
  const water = waterTable(site.ground, origin);
  return {
    groundAt,
    thicknessAt: ([x, y]) => thicknessAt(regions, x - ox, y - oy),
    waterAt: water === null ? null : ([x, y]) => water(x - ox, y - oy),
  };
}
