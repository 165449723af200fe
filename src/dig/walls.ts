/** Walls of holes and sides of fills as surfaces. All local metres; slopes are run per rise. */
import {
  higherOf,
  lowerOf,
  outlineSurface,
  plane,
  type Box,
  type CellLayer,
  type LayeredGround,
  type Place,
  type Surface,
} from "../ground/index.js";
import type { Finding, Walls } from "../site/index.js";
import { layerWall } from "./layerWalls.js";
import { heightOn, raisedBy, sideWall, type PlaneOf } from "./sideWall.js";

/** Benches above this many are not dug: the rise is then too small for the depth. */
const MOST_BENCHES = 100;

/** What decides how walls stand. */
export interface WallTerms {
  ground: LayeredGround;
  walls: Walls;
  /** Run that a layer's material asks for; null for a built thing. */
  runOf: (layer: CellLayer) => number | null;
  /** Greatest run that any of the site's own layers asks for. */
  flattestRun: number;
}

/** Walls for ground that rises at most so far above the floor. */
export interface WallPlan {
  terms: WallTerms;
  /** m that the ground rises at most above the lowest of the floor. */
  height: number;
  /** How far the walls may reach beyond the floor in plan, m. */
  reach: number;
  /** Height above the floor, and distance out from it, of each bench; the first is the floor. */
  shelves: readonly { rise: number; out: number }[];
  /** True when the depth asks for more benches than are dug. */
  tooMany: boolean;
}

/** How the walls stand in ground that rises at most `height` (m) above the floor. */
export function wallPlan(terms: WallTerms, height: number): WallPlan {
  const { walls } = terms;
  const plan = { terms, height, shelves: [{ rise: 0, out: 0 }], tooMany: false };
  if (walls.by === "run") {
    const flattest = Math.max(walls.run, ...(walls.sides ?? []));
    return { ...plan, reach: flattest * height };
  }
  if (walls.by === "layers") {
    // Every layer may start a ledge of its own, and earlier fills are layers too.
    const ledges = (walls.ledge ?? 0) * (terms.ground.base.layers.length + 1);
    return { ...plan, reach: terms.flattestRun * height + ledges };
  }
  const first = walls.first ?? walls.rise;
  const wanted = Math.max(0, Math.ceil((height - first) / walls.rise));
  const benches = Math.min(MOST_BENCHES, wanted);
  const shelves = [{ rise: 0, out: 0 }];
  for (let k = 1; k <= benches; k++) {
    shelves.push({ rise: first + (k - 1) * walls.rise, out: k * walls.tread });
  }
  return {
    ...plan,
    shelves,
    reach: benches * walls.tread,
    tooMany: wanted > MOST_BENCHES,
  };
}

/**
 * The wall of a floor edge p–q, outwards to the right, of one shelf of a plan; `side` is the
 * edge's place in the walls' own order of sides, where it has one.
 */
export function plannedWall(
  p: Place,
  q: Place,
  floor: PlaneOf,
  plan: WallPlan,
  shelf: number,
  side?: number,
): Surface {
  const { walls, ground, runOf } = plan.terms;
  const { rise, out } = plan.shelves[shelf]!;
  if (walls.by === "layers") {
    const terms = { ground, runOf, ledge: walls.ledge ?? 0, reach: plan.reach };
    return layerWall(p, q, floor, terms);
  }
  if (walls.by === "benches") return sideWall(p, q, raisedBy(floor, rise), 0, out);
  const own = side === undefined ? undefined : walls.sides?.[side];
  return sideWall(p, q, floor, own ?? walls.run);
}

/** A hole's outline, its floor and which of the walls' own sides each edge is. */
export interface HoleShape {
  /** Counter-clockwise. */
  outline: readonly Place[];
  floor: PlaneOf;
  sideOf?: (edge: number) => number;
}

/** A hole as surfaces to cut down to, one after the other, within a box. */
export interface Hole {
  shelves: readonly Surface[];
  box: Box;
  tooMany: boolean;
}

/** The hole with a plane floor and the walls asked for, shelf by shelf from the floor up. */
export function holeOf(terms: WallTerms, shape: HoleShape): Hole {
  const plan = holePlan(terms, shape);
  const { outline, floor, sideOf } = shape;
  const shelves = plan.shelves.map(({ rise }, shelf) => {
    const sides = outlineSurface(
      outline,
      (i) => {
        const [p, q] = [outline[i]!, outline[(i + 1) % outline.length]!];
        return plannedWall(p, q, floor, plan, shelf, sideOf?.(i));
      },
      "low",
    );
    const { a, b, c } = raisedBy(floor, rise);
    return higherOf([sides, plane(a, b, c, shelf === 0)]);
  });
  return { shelves, box: grownBox(outline, plan.reach), tooMany: plan.tooMany };
}

/** How the walls of a hole stand, by the most that the ground within reach rises above it. */
function holePlan(terms: WallTerms, { outline, floor }: HoleShape): WallPlan {
  const lowest = Math.min(...outline.map((place) => heightOn(floor, place)));
  return settledPlan(terms, lowest, (reach) => grownBox(outline, reach));
}

/** Plans walls by the ground within their own reach: each pass can only draw the box in. */
export function settledPlan(
  terms: WallTerms,
  lowest: number,
  boxFor: (reach: number) => Box,
): WallPlan {
  let height = Math.max(0, terms.ground.highestIn() - lowest);
  for (let pass = 0; ; pass++) {
    const plan = wallPlan(terms, height);
    const seen = Math.max(0, terms.ground.highestIn(boxFor(plan.reach)) - lowest);
    // Three passes are enough to stop at the hole's own hillside.
    if (seen >= height || pass === 3) return plan;
    height = seen;
  }
}

/** The surface of a fill with a plane top whose sides fall outwards at 1 per `run`. */
export function fillSurface(outline: readonly Place[], top: PlaneOf, run: number): Surface {
  const sides = outlineSurface(
    outline,
    (i) => fillSide(outline[i]!, outline[(i + 1) % outline.length]!, top, run),
    "high",
  );
  return lowerOf([sides, plane(top.a, top.b, top.c)]);
}

function fillSide(p: Place, q: Place, top: PlaneOf, run: number): Surface {
  if (run === 0) {
    const wall = sideWall(p, q, top, 0);
    if (wall.is !== "wall") throw new Error(`side is a ${wall.is}, expected a wall`);
    return { ...wall, reversed: true };
  }
  // A side that rises from the top turned upside down falls from it.
  const rising = sideWall(p, q, { a: -top.a, b: -top.b, c: -top.c }, run);
  if (rising.is !== "plane") throw new Error(`side is a ${rising.is}, expected a plane`);
  return plane(-rising.a, -rising.b, -rising.c);
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
  const size = Math.max(east - west, north - south);
  const grow = reach * mitre(outline) + 1e-7 * size;
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
