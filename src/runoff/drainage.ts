/**
 * Where the water of a whole survey runs: ways from places spread evenly over it, made once for a
 * survey, and what of it comes through an outline.
 */
import { BoxIndex, type Tin } from "../ground/index.js";
import { floodFrom, type Flood } from "./pits.js";
import { Tracer, type Way, type WayPoint } from "./trace.js";

/** m local. */
type Place = readonly [number, number];

export interface Drainage {
  flood: Flood;
  tracer: Tracer;
  /** Ways from places spread evenly over the survey. */
  ways: readonly SampledWay[];
  /** Area that each way stands for, m². */
  each: number;
}

/** A way and the box that it stays in. */
export interface SampledWay extends Way {
  box: readonly [west: number, south: number, east: number, north: number];
}

/** Ways that are followed on a survey. */
const WAYS = 2500;

const made = new WeakMap<Tin, Drainage>();

/** Where water runs on this ground; remembered by its triangles. */
export function drainageOf(tin: Tin): Drainage {
  const known = made.get(tin);
  if (known !== undefined) return known;
  const fresh = drainageWith(tin, WAYS);
  made.set(tin, fresh);
  return fresh;
}

/** Lets `drainageOf` use a flood that was made of equal ground in another thread. */
export function adoptFlood(tin: Tin, flood: Flood): void {
  made.set(tin, drainageWith(tin, WAYS, flood));
}

/**
 * Steps of the additive sequence whose points fill a square most evenly, 1/g and 1/g² with
 * g³ = g + 1 (the plastic number). A grid would take a slope square to it for a whole number of rows.
 */
const EVENLY = [0.7548776662466927, 0.5698402909980532] as const;

/** Where water runs, from so many places spread evenly over the box around the survey. */
export function drainageWith(tin: Tin, count: number, flood = floodFrom(tin)): Drainage {
  let tracer: Tracer | null = null;
  const [west, east] = rangeOf(tin.x);
  const [south, north] = rangeOf(tin.y);
  const box = [west, south, east, north] as const;
  let ways: SampledWay[] | null = null;
  return {
    flood,
    get tracer() {
      return (tracer ??= new Tracer(tin, flood));
    },
    // Whoever asks for one way alone does not wait for these.
    get ways() {
      return (ways ??= sampledWays(this.tracer, box, count));
    },
    each: ((east - west) * (north - south)) / count,
  };
}

/**
 * Share of the distance between ways within which their own places are left out. A dense survey's
 * way has a place on every triangle, finer than what lies between two ways can tell.
 */
const THIN = 0.2;

/** A way without places nearer than `least` m to the last one kept; both ends stay. */
function thinned(path: readonly WayPoint[], least: number): WayPoint[] {
  let last: WayPoint | null = null;
  return path.filter((at, i) => {
    const near = last !== null && Math.hypot(at[0] - last[0], at[1] - last[1]) < least;
    if (near && i < path.length - 1) return false;
    last = at;
    return true;
  });
}

function sampledWays(
  tracer: Tracer,
  [west, south, east, north]: SampledWay["box"],
  count: number,
): SampledWay[] {
  const ways: SampledWay[] = [];
  const least = THIN * Math.sqrt(((east - west) * (north - south)) / count);
  for (let i = 1; i <= count; i++) {
    const way = tracer.from(
      west + ((EVENLY[0] * i) % 1) * (east - west),
      south + ((EVENLY[1] * i) % 1) * (north - south),
    );
    if (way === null) continue;
    const path = thinned(way.path, least);
    ways.push({ ...way, path, box: boxOf(path) });
  }
  return ways;
}

/** What comes through an outline from outside it. */
export interface Inflow {
  /** m² of ground outside the outline whose water comes to it. */
  area: number;
  /** Where each of these ways begins: [x, y], m local. */
  starts: readonly Place[];
  /** Where each comes in. */
  entries: readonly Place[];
  /** The longest way that comes in, from its start to the outline. */
  longest: readonly WayPoint[];
}

/** The ground outside an outline whose water runs through it. */
export function inflowOf({ ways, each }: Drainage, outline: readonly Place[]): Inflow {
  const [starts, entries]: [Place[], Place[]] = [[], []];
  let longest: { length: number; path: WayPoint[] } = { length: 0, path: [] };
  const { index, wayOf, firstLeg } = legsOf(ways);
  const near = Uint32Array.from(index.search(boxOf(outline))).sort();
  let done = -1;
  for (const leg of near) {
    const number = wayOf[leg]!;
    if (number === done) continue;
    const { path } = ways[number]!;
    const entry = crossingOn(path, leg - firstLeg[number]!, outline);
    if (entry === null) continue;
    done = number;
    if (inside(path[0]!, outline)) continue;
    starts.push([path[0]![0], path[0]![1]]);
    entries.push([entry.at[0], entry.at[1]]);
    const upTo = path.slice(0, entry.leg + 1);
    const length = lengthOf(upTo);
    if (length > longest.length) longest = { length, path: [...upTo, entry.at] };
  }
  return { area: entries.length * each, starts, entries, longest: longest.path };
}

/** The legs of all ways, one way after the other, to be found by place. */
interface Legs {
  index: BoxIndex;
  /** For each leg its way, and for each way its first leg. */
  wayOf: Uint32Array;
  firstLeg: Uint32Array;
}

const legsMade = new WeakMap<readonly SampledWay[], Legs>();

function legsOf(ways: readonly SampledWay[]): Legs {
  const known = legsMade.get(ways);
  if (known !== undefined) return known;
  const firstLeg = new Uint32Array(ways.length);
  let count = 0;
  ways.forEach(({ path }, number) => {
    firstLeg[number] = count;
    count += path.length - 1;
  });
  const wayOf = new Uint32Array(count);
  const [west, south] = [new Float64Array(count), new Float64Array(count)];
  const [east, north] = [new Float64Array(count), new Float64Array(count)];
  ways.forEach(({ path }, number) => {
    for (let leg = 0; leg + 1 < path.length; leg++) {
      const at = firstLeg[number]! + leg;
      const [[ax, ay], [bx, by]] = [path[leg]!, path[leg + 1]!];
      wayOf[at] = number;
      [west[at], east[at]] = [Math.min(ax, bx), Math.max(ax, bx)];
      [south[at], north[at]] = [Math.min(ay, by), Math.max(ay, by)];
    }
  });
  const legs = { index: BoxIndex.over(west, south, east, north), wayOf, firstLeg };
  legsMade.set(ways, legs);
  return legs;
}

/** Whether a way begins in an outline or crosses its edge. */
export function meetsOutline(path: readonly WayPoint[], outline: readonly Place[]): boolean {
  return inside(path[0]!, outline) || entryOf(path, outline, boxOf(outline)) !== null;
}

/** A place on a way, and the leg that it lies on. */
interface Crossing {
  at: WayPoint;
  leg: number;
}

/** Where a way first crosses an outline, and on which of its legs; null when it never does. */
function entryOf(
  path: readonly WayPoint[],
  outline: readonly Place[],
  [west, south, east, north]: readonly [number, number, number, number],
): Crossing | null {
  for (let leg = 0; leg + 1 < path.length; leg++) {
    const [[ax, ay], [bx, by]] = [path[leg]!, path[leg + 1]!];
    if (Math.max(ax, bx) < west || Math.min(ax, bx) > east) continue;
    if (Math.max(ay, by) < south || Math.min(ay, by) > north) continue;
    const crossing = crossingOn(path, leg, outline);
    if (crossing !== null) return crossing;
  }
  return null;
}

/** Where a leg of a way first meets a side of an outline; null when it does not. */
function crossingOn(
  path: readonly WayPoint[],
  leg: number,
  outline: readonly Place[],
): Crossing | null {
  const [a, b] = [path[leg]!, path[leg + 1]!];
  const share = firstCrossing(a, b, outline);
  if (share === null) return null;
  const between = (k: 0 | 1 | 2): number => a[k] + share * (b[k] - a[k]);
  return { at: [between(0), between(1), between(2)], leg };
}

/** Share of a leg at which it first meets a side of an outline. */
function firstCrossing(a: WayPoint, b: WayPoint, outline: readonly Place[]): number | null {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  let least: number | null = null;
  for (let i = 0; i < outline.length; i++) {
    const c = outline[i]!;
    const d = outline[i + 1 === outline.length ? 0 : i + 1]!;
    const [ex, ey] = [d[0] - c[0], d[1] - c[1]];
    const across = dx * ey - dy * ex;
    if (across === 0) continue;
    const far = ((c[0] - a[0]) * ey - (c[1] - a[1]) * ex) / across;
    const along = ((c[0] - a[0]) * dy - (c[1] - a[1]) * dx) / across;
    if (far < 0 || far > 1 || along < 0 || along > 1) continue;
    if (least === null || far < least) least = far;
  }
  return least;
}

function inside(at: readonly number[], outline: readonly Place[]): boolean {
  let odd = false;
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    if (a[1] > at[1]! === b[1] > at[1]!) return;
    if (a[0] + ((at[1]! - a[1]) / (b[1] - a[1])) * (b[0] - a[0]) > at[0]!) odd = !odd;
  });
  return odd;
}

function lengthOf(path: readonly WayPoint[]): number {
  let length = 0;
  for (let i = 1; i < path.length; i++) {
    length += Math.hypot(path[i]![0] - path[i - 1]![0], path[i]![1] - path[i - 1]![1]);
  }
  return length;
}

export function boxOf(
  places: readonly (readonly [number, number, ...number[]])[],
): [number, number, number, number] {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of places) {
    west = Math.min(west, x);
    south = Math.min(south, y);
    east = Math.max(east, x);
    north = Math.max(north, y);
  }
  return [west, south, east, north];
}

function rangeOf(values: Float64Array): [number, number] {
  let [least, most] = [Infinity, -Infinity];
  for (const value of values) {
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return [least, most];
}
