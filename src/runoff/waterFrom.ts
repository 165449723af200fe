/** Water on the ground as found, asked for place by place; in site coordinates, m. */
import { elevationAt, type BaseGround } from "../ground/index.js";
import type { PlanPoint } from "../site/index.js";
import { drainageOf } from "./drainage.js";
import { poolAt, poolsOf, type Pool } from "./pools.js";

/** [x, y, z], m. */
type Place = readonly [number, number, number];

/** Where the water from one place runs. */
export interface WaterWay {
  /** From the place to the survey's outer edge. */
  path: readonly Place[];
  /** m in plan. */
  length: number;
  /** m from the place down to where it leaves the survey. */
  fall: number;
  /** The hollows that it has to fill on its way. */
  hollows: readonly Pool[];
}

/** The way of water from a place on the ground as found; null off the survey. */
export function waterFrom({ tin }: BaseGround, [x, y]: PlanPoint): WaterWay | null {
  const { origin } = tin;
  const way = drainageOf(tin).tracer.from(x - origin[0], y - origin[1]);
  const [first, last] = [way?.path[0], way?.path.at(-1)];
  if (way === null || first === undefined || last === undefined) return null;
  const hollows = way.hollows.flatMap(
    ({ at, depth }) => poolAt(tin, [at[0], at[1]], at[2] + depth) ?? [],
  );
  return {
    path: way.path.map((at) => back(at, origin)),
    length: planLength(way.path),
    fall: first[2] - last[2],
    hollows: hollows.map((pool) => placed(pool, origin)),
  };
}

/** Every hollow of the survey in which water stands `least` m deep or more, the deepest first. */
export function hollowsOf({ tin }: BaseGround, least: number): Pool[] {
  return poolsOf(tin, drainageOf(tin).flood, least).map((pool) => placed(pool, tin.origin));
}

/** A line over the ground as found: its length in plan and its ends; null where one is off the survey. */
export interface LineOnGround {
  length: number;
  /** Elevation of its higher and its lower end, m. */
  high: number;
  low: number;
}

/** How a line lies on the ground as found; null where an end of it is off the survey. */
export function lineOnGround(
  { tin }: BaseGround,
  path: readonly (readonly [number, number, ...unknown[]])[],
): LineOnGround | null {
  const [ox, oy, oz] = tin.origin;
  const ends = [path[0], path.at(-1)].map((at) =>
    at === undefined ? null : elevationAt(tin, at[0] - ox, at[1] - oy),
  );
  const [a, b] = [ends[0] ?? null, ends[1] ?? null];
  if (a === null || b === null) return null;
  return { length: planLength(path), high: Math.max(a, b) + oz, low: Math.min(a, b) + oz };
}

function placed({ level, lowest, surface, ...rest }: Pool, origin: Place): Pool {
  return {
    ...rest,
    level: level + origin[2],
    lowest: back(lowest, origin),
    surface: surface.map((value, i) => value + origin[i % 2 === 0 ? 0 : 1]),
  };
}

function back([x, y, z]: Place, [ox, oy, oz]: Place): Place {
  return [x + ox, y + oy, z + oz];
}

function planLength(path: readonly (readonly [number, number, ...unknown[]])[]): number {
  return path.reduce((sum, a, i) => {
    const b = path[i + 1];
    return b === undefined ? sum : sum + Math.hypot(a[0] - b[0], a[1] - b[1]);
  }, 0);
}
