/** A single wall of a hole, and the plane of its floor. All local metres. */
import { plane, type Place, type Surface } from "../ground/index.js";

/** A plane in plan: z = a·x + b·y + c. */
export interface PlaneOf {
  a: number;
  b: number;
  c: number;
}

/** Height of a plane at a place. */
export function heightOn({ a, b, c }: PlaneOf, [x, y]: Place): number {
  return a * x + b * y + c;
}

/** The plane moved up by a height, m. */
export function raisedBy(floor: PlaneOf, by: number): PlaneOf {
  return { ...floor, c: floor.c + by };
}

/**
 * One wall of a hole: the plane through the floor edge p–q that rises outwards at 1 per `run`,
 * measured square to the edge; vertical when `run` is 0. Outwards is to the right of the way from
 * p to q. `setBack` (m) moves the edge outwards.
 */
export function sideWall(p: Place, q: Place, floor: PlaneOf, run: number, setBack = 0): Surface {
  const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
  const [ux, uy] = [(q[0] - p[0]) / length, (q[1] - p[1]) / length];
  const [nx, ny] = [uy, -ux];
  const d = nx * p[0] + ny * p[1] + setBack;
  if (run === 0) return { is: "wall", nx, ny, d, reversed: false };
  // Along the edge the wall follows the floor; across it, it forgets which way the floor tilts.
  const along = floor.a * ux + floor.b * uy;
  const across = 1 / run;
  const [a, b] = [along * ux + across * nx, along * uy + across * ny];
  const start = heightOn(floor, p) - along * (ux * p[0] + uy * p[1]);
  return plane(a, b, start - d * across);
}
