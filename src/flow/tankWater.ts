import type { PlanPoint, Tank } from "../site/index.js";
import { rectangleInPlan } from "./planDistance.js";

/** Groundwater at a tank where it comes highest: its elevation and its depth below the ground there, m. */
export interface TankWater {
  elevation: number;
  depth: number;
}

/** m between the places looked at along the edge of the hole's floor. */
const STEP = 0.25;

/**
 * The highest groundwater over the floor of a tank's hole: at the middle and along the floor's edge,
 * where on a slope the uphill side decides. Water gathers in the loose backfill to that height, so the
 * whole tank is weighed against it. Null where neither ground nor depth is known at any of the places.
 */
export function tankWater(
  tank: Tank,
  groundAt: (at: PlanPoint) => number,
  depthAt: (at: PlanPoint) => number,
): TankWater | null {
  let highest: TankWater | null = null;
  for (const at of [...floorEdge(tank), tank.at]) {
    const depth = depthAt(at);
    const elevation = groundAt(at) - depth;
    if (Number.isFinite(elevation) && elevation > (highest?.elevation ?? -Infinity)) {
      highest = { elevation, depth };
    }
  }
  return highest;
}

/** Places along the edge of the floor of a tank's hole, its corners with them. */
function floorEdge({ at, bearing, body, overdig }: Tank): PlanPoint[] {
  const [length, width] = [body.length + 2 * overdig, body.width + 2 * overdig];
  const { points } = rectangleInPlan({ at, bearing, length, width });
  return points.flatMap((a, i) => {
    const b = points[(i + 1) % points.length]!;
    const steps = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / STEP));
    return Array.from({ length: steps }, (_, k): PlanPoint => {
      const share = k / steps;
      return [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
    });
  });
}
