/** Walls of holes and sides of fills as surfaces. All local metres; slopes are run per rise. */
import {
  higherOf,
  level,
  lowerOf,
  outlineSurface,
  plane,
  type Box,
  type LayeredGround,
  type Place,
  type Surface,
  type Tally,
} from "../ground/index.js";
import type { Finding, Walls } from "../site/index.js";

/** A plane in plan: z = a·x + b·y + c. */
export interface PlaneOf {
  a: number;
  b: number;
  c: number;
}

/** Benches above this many are not dug: the rise is then too small for the depth. */
const MOST_BENCHES = 100;

/**
 * One wall (or side) of a hole: the plane through the floor edge p–q that rises outwards at 1 per
 * `run`; vertical when `run` is 0. Outwards is to the right of the way from p to q. `setBack` (m)
 * moves the edge outwards.
 */
export function sideWall(p: Place, q: Place, floor: PlaneOf, run: number, setBack = 0): Surface {
  const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
  const nx = (q[1] - p[1]) / length;
  const ny = -(q[0] - p[0]) / length;
  const d = nx * p[0] + ny * p[1] + setBack;
  if (run === 0) return { is: "wall", nx, ny, d, reversed: false };
  return plane(floor.a + nx / run, floor.b + ny / run, floor.c - d / run);
}

/** Run that is used for the walls, and how many benches there are (0 for plain walls). */
export interface WallPlan {
  run: number;
  benches: number;
  rise: number;
  tread: number;
  /** True when the depth asks for more benches than are dug. */
  tooMany: boolean;
}

/** How the walls stand in ground that rises at most `height` (m) above the floor. */
export function wallPlan(walls: Walls, height: number, flattestRun: number): WallPlan {
  if (walls.by === "benches") {
    const wanted = Math.max(0, Math.ceil(height / walls.rise) - 1);
    const benches = Math.min(MOST_BENCHES, wanted);
    const tooMany = wanted > MOST_BENCHES;
    return { run: 0, benches, rise: walls.rise, tread: walls.tread, tooMany };
  }
  const run = walls.by === "run" ? walls.run : flattestRun;
  return { run, benches: 0, rise: 0, tread: 0, tooMany: false };
}

/** Greatest distance in plan by which the walls may reach beyond the floor, m. */
export function wallReach(plan: WallPlan, height: number): number {
  return Math.max(0, plan.benches * plan.tread + plan.run * height);
}

/** One bench of a hole with a level floor (bench 0 is the floor). Outline counter-clockwise. */
function shelfSurface(
  outline: readonly Place[],
  floor: number,
  plan: WallPlan,
  bench: number,
): Surface {
  const height = floor + bench * plan.rise;
  const sides = outlineSurface(
    outline,
    (i) => {
      const [p, q] = [outline[i]!, outline[(i + 1) % outline.length]!];
      return sideWall(p, q, { a: 0, b: 0, c: height }, plan.run, bench * plan.tread);
    },
    "low",
  );
  return higherOf([sides, level(height, bench === 0)]);
}

/**
 * Cuts a hole with a level floor (m, local) and the walls asked for, bench by bench from the floor
 * up. Returns what was taken out, the area of built things in the way, and whether benches had to be
 * left out.
 */
export function cutHole(
  ground: LayeredGround,
  outline: readonly Place[],
  floor: number,
  walls: Walls,
  flattestRun: number,
): { cut: Tally; structureHit: number; tooMany: boolean } {
  const { height, plan } = holeReach(ground, outline, floor, walls, flattestRun);
  const cut = ground.tally();
  let structureHit = 0;
  for (let bench = 0; bench <= plan.benches; bench++) {
    const reach = bench * plan.tread + plan.run * height;
    const surface = shelfSurface(outline, floor, plan, bench);
    structureHit += ground.cut(surface, grownBox(outline, reach), cut, 0, { a: 0, b: 0, c: floor });
  }
  return { cut, structureHit, tooMany: plan.tooMany };
}

/** The surface of a fill with a level top whose sides fall outwards at 1 per `run`. */
export function fillSurface(outline: readonly Place[], top: number, run: number): Surface {
  const sides = outlineSurface(
    outline,
    (i) => {
      const [p, q] = [outline[i]!, outline[(i + 1) % outline.length]!];
      const rising = sideWall(p, q, { a: 0, b: 0, c: top }, run);
      if (rising.is === "wall") return { ...rising, reversed: true };
      if (rising.is !== "plane")
        throw new Error(`side is ${rising.is}, expected a plane or a wall`);
      return plane(-rising.a, -rising.b, 2 * top - rising.c);
    },
    "high",
  );
  return lowerOf([sides, level(top)]);
}

/** The box of an outline grown by a distance, allowing for mitred corners. */
export function grownBox(outline: readonly Place[], reach: number): Box {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of outline) {
    west = Math.min(west, x);
    south = Math.min(south, y);
    east = Math.max(east, x);
    north = Math.max(north, y);
  }
  const grow = reach * mitre(outline) + 1e-6;
  return [west - grow, south - grow, east + grow, north + grow];
}

/** How far the sharpest outward corner carries a mitre: distance ÷ offset, at least 1. */
function mitre(outline: readonly Place[]): number {
  let most = Math.SQRT2;
  const count = outline.length;
  for (let i = 0; i < count; i++) {
    const [px, py] = outline[(i + count - 1) % count]!;
    const [x, y] = outline[i]!;
    const [nx, ny] = outline[(i + 1) % count]!;
    const cross = (x - px) * (ny - y) - (y - py) * (nx - x);
    const dot = (x - px) * (nx - x) + (y - py) * (ny - y);
    if (cross <= 0) continue;
    const turned = Math.atan2(cross, dot);
    most = Math.max(most, 1 / Math.max(1e-3, Math.cos(turned / 2)));
  }
  return most;
}

/** How the walls of a hole stand, and the most that the ground within reach rises above its floor. */
function holeReach(
  ground: LayeredGround,
  outline: readonly Place[],
  floor: number,
  walls: Walls,
  flattestRun: number,
): { height: number; plan: WallPlan } {
  let height = Math.max(0, ground.highestIn() - floor);
  for (let pass = 0; ; pass++) {
    const plan = wallPlan(walls, height, flattestRun);
    const box = grownBox(outline, wallReach(plan, height));
    const seen = Math.max(0, ground.highestIn(box) - floor);
    // Each pass can only shrink the box; three are enough to stop at the hole's own hillside.
    if (seen >= height || pass === 3) return { height, plan };
    height = seen;
  }
}

/** What a person is told when benches are too small for the depth. */
export function benchFinding(id: string, name: string): Finding {
  return {
    level: "stop",
    code: "walls.too-many-benches",
    where: id,
    text: `The benches of ${name} are so small that more than ${MOST_BENCHES} would be needed; only that many are dug, so its volume is short. Give a larger rise.`,
    source: "geometry",
  };
}
