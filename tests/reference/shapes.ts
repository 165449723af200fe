/**
 * The cut surfaces of works in plain words, written apart from the engine: a tank hole by the
 * distance beyond its sides, a concave pad as the union of rectangles, a trench as the union of
 * its legs and of a corner piece at each bend.
 */
import { cutOf, lineThrough, type Change, type Flat, type PlanLine } from "./columns.js";

type Place = readonly [number, number];

/** A side of a floor: distance beyond it (m, positive outside) is nx·x + ny·y − d. */
interface Side {
  nx: number;
  ny: number;
  d: number;
}

/** A floor plane with walls beyond some of its sides, and sides that bound it for good. */
export interface Hollow {
  floor: Flat;
  sides: readonly Side[];
  /** Ends that nothing passes, whatever the walls' run. */
  ends: readonly Side[];
  /** Corners of the floor. */
  corners: readonly Place[];
}

function beyond({ nx, ny, d }: Side, x: number, y: number): number {
  return nx * x + ny * y - d;
}

/** Height of a hollow's surface; +∞ where it does not dig. */
export function hollowAt(hollow: Hollow, run: number, x: number, y: number): number {
  const { a, b, c } = hollow.floor;
  const floor = a * x + b * y + c;
  for (const end of hollow.ends) if (beyond(end, x, y) > 0) return Infinity;
  const out = Math.max(0, ...hollow.sides.map((side) => beyond(side, x, y)));
  if (out === 0) return floor;
  return run === 0 ? Infinity : floor + out / run;
}

/** The planes of a hollow's floor and walls. */
export function planesOf(hollow: Hollow, run: number): Flat[] {
  const { floor, sides } = hollow;
  if (run === 0) return [floor];
  const walls = sides.map(({ nx, ny, d }) => ({
    a: floor.a + nx / run,
    b: floor.b + ny / run,
    c: floor.c - d / run,
  }));
  return [floor, ...walls];
}

export function linesOf(hollow: Hollow): PlanLine[] {
  return [...hollow.sides, ...hollow.ends].map(({ nx, ny, d }) => ({ a: nx, b: ny, c: d }));
}

/** Corners of a rectangle, counter-clockwise: centre, bearing of its length (degrees from north), sizes. */
export function boxCorners(at: Place, bearing: number, length: number, width: number): Place[] {
  const angle = (bearing * Math.PI) / 180;
  const [ux, uy] = [Math.sin(angle), Math.cos(angle)];
  const signs: Place[] = [
    [-1, 1],
    [1, 1],
    [1, -1],
    [-1, -1],
  ];
  return signs.map(([s, t]): Place => {
    const [l, w] = [(s * length) / 2, (t * width) / 2];
    return [at[0] + l * ux + w * uy, at[1] + l * uy - w * ux];
  });
}

/** A level hollow over a convex outline. */
export function hollowOver(outline: readonly Place[], floor: number): Hollow {
  const cx = outline.reduce((sum, [x]) => sum + x, 0) / outline.length;
  const cy = outline.reduce((sum, [, y]) => sum + y, 0) / outline.length;
  const sides = outline.map((p, i) => {
    const q = outline[(i + 1) % outline.length]!;
    const { a, b, c } = lineThrough(p, q);
    const length = Math.hypot(a, b) * (a * cx + b * cy > c ? -1 : 1);
    return { nx: a / length, ny: b / length, d: c / length };
  });
  return { floor: { a: 0, b: 0, c: floor }, sides, ends: [], corners: outline };
}

/** Inverts of the lowest pipe's underside, and of the highest pipe's top, along a trench. */
export interface TrenchHeights {
  /** Floor of the trench (bedding's underside) at a station. */
  floor: (station: number) => number;
  bedding: number;
  /** Top of the pipe zone at a station. */
  zone: (station: number) => number;
}

/** One leg or corner of a trench with the planes that bedding and pipe zone reach to. */
export interface TrenchPart {
  hollow: Hollow;
  bedding: Flat;
  zone: Flat;
}

/** Legs and corner pieces of a trench whose floor and zone are straight along each leg. */
export function trenchParts(
  path: readonly Place[],
  width: number,
  heights: TrenchHeights,
): TrenchPart[] {
  const parts: TrenchPart[] = [];
  let station = 0;
  for (let i = 1; i < path.length; i++) {
    const [p, q] = [path[i - 1]!, path[i]!];
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
    const u: Place = [(q[0] - p[0]) / length, (q[1] - p[1]) / length];
    parts.push(legPart(p, u, length, width, heights, station));
    station += length;
    const next = path[i + 1];
    if (next) parts.push(bendPart(p, q, next, width, heights, station));
  }
  return parts;
}

function legPart(
  p: Place,
  u: Place,
  length: number,
  width: number,
  heights: TrenchHeights,
  station: number,
): TrenchPart {
  const n: Place = [-u[1], u[0]];
  const straight = (height: (s: number) => number): Flat => {
    const [start, end] = [height(station), height(station + length)];
    const rate = (end - start) / length;
    const [a, b] = [rate * u[0], rate * u[1]];
    return { a, b, c: start - a * p[0] - b * p[1] };
  };
  const off = n[0] * p[0] + n[1] * p[1];
  const at = u[0] * p[0] + u[1] * p[1];
  const floor = straight(heights.floor);
  const corners = [0, length].flatMap((s) =>
    [1, -1].map((side): Place => {
      const t = (side * width) / 2;
      return [p[0] + s * u[0] + t * n[0], p[1] + s * u[1] + t * n[1]];
    }),
  );
  return {
    hollow: {
      floor,
      sides: [
        { nx: n[0], ny: n[1], d: off + width / 2 },
        { nx: -n[0], ny: -n[1], d: -off + width / 2 },
      ],
      ends: [
        { nx: -u[0], ny: -u[1], d: -at },
        { nx: u[0], ny: u[1], d: at + length },
      ],
      corners,
    },
    bedding: { ...floor, c: floor.c + heights.bedding },
    zone: straight(heights.zone),
  };
}

/** Outside of a bend: level, past the end of one leg and before the start of the next. */
function bendPart(
  p: Place,
  q: Place,
  r: Place,
  width: number,
  heights: TrenchHeights,
  station: number,
): TrenchPart {
  const [l1, l2] = [Math.hypot(q[0] - p[0], q[1] - p[1]), Math.hypot(r[0] - q[0], r[1] - q[1])];
  const u: Place = [(q[0] - p[0]) / l1, (q[1] - p[1]) / l1];
  const v: Place = [(r[0] - q[0]) / l2, (r[1] - q[1]) / l2];
  const outer = u[0] * v[1] - u[1] * v[0] > 0 ? 1 : -1;
  const side = (w: Place): Side => {
    const [nx, ny] = [outer * w[1], -outer * w[0]];
    return { nx, ny, d: nx * q[0] + ny * q[1] + width / 2 };
  };
  const height = heights.floor(station);
  return {
    hollow: {
      floor: { a: 0, b: 0, c: height },
      sides: [side(u), side(v)],
      ends: [
        { nx: -u[0], ny: -u[1], d: -(u[0] * q[0] + u[1] * q[1]) },
        { nx: v[0], ny: v[1], d: v[0] * q[0] + v[1] * q[1] },
      ],
      corners: [q],
    },
    bedding: { a: 0, b: 0, c: height + heights.bedding },
    zone: { a: 0, b: 0, c: heights.zone(station) },
  };
}

/**
 * Cut by layer, then bedding, zone (pipes included), backfill and plan area of a trench, as
 * columns. No wall reaches farther in plan than `reach`, m.
 */
export function trenchChange(parts: readonly TrenchPart[], run: number, reach: number): Change {
  const planes = parts.map(({ hollow, bedding, zone }) => {
    const xs = hollow.corners.map(([x]) => x);
    const [west, east] = [Math.min(...xs) - reach, Math.max(...xs) + reach];
    return { west, east, all: [...planesOf(hollow, run), bedding, zone] };
  });
  const at = ({ a, b, c }: Flat, x: number, y: number): number => a * x + b * y + c;
  return {
    lines: parts.flatMap(({ hollow }) => linesOf(hollow)),
    planesOn: (x) => planes.flatMap(({ west, east, all }) => (x < west || x > east ? [] : all)),
    corners: parts.flatMap(({ hollow }) => hollow.corners),
    amounts: (x, y, tops) => {
      let [floor, deepest] = [Infinity, parts[0]!];
      for (const part of parts) {
        const height = hollowAt(part.hollow, run, x, y);
        if (height < floor) [floor, deepest] = [height, part];
      }
      const surface = tops[0]!;
      if (floor >= surface) return [...tops.map(() => 0), 0, 0, 0, 0];
      const bedding = Math.min(surface, Math.max(floor, at(deepest.bedding, x, y)));
      const zone = Math.min(surface, Math.max(bedding, at(deepest.zone, x, y)));
      return [...cutOf(tops, floor), bedding - floor, zone - bedding, surface - zone, 1];
    },
  };
}

/** Cut by layer, then plan area, of a level hole that is the union of convex hollows. */
export function holeChange(hollows: readonly Hollow[], run: number): Change {
  const planes = hollows.flatMap((hollow) => planesOf(hollow, run));
  return {
    lines: hollows.flatMap(linesOf),
    planesOn: () => planes,
    corners: hollows.flatMap(({ corners }) => corners),
    amounts: (x, y, tops) => {
      const floor = Math.min(...hollows.map((hollow) => hollowAt(hollow, run, x, y)));
      return [...cutOf(tops, floor), floor < tops[0]! ? 1 : 0];
    },
  };
}

/** Volume of an embankment whose top is the union of convex outlines, as columns. */
export function embankmentChange(hollows: readonly Hollow[], run: number): Change {
  const mirrored = (hollow: Hollow): Flat[] =>
    planesOf(hollow, run).map(({ a, b, c }) => ({ a: -a, b: -b, c: 2 * hollow.floor.c - c }));
  const planes = hollows.flatMap(mirrored);
  return {
    lines: hollows.flatMap(linesOf),
    planesOn: () => planes,
    corners: hollows.flatMap(({ corners }) => corners),
    amounts: (x, y, tops) => {
      const heights = hollows.map((h) => 2 * h.floor.c - hollowAt(h, run, x, y));
      return [Math.max(0, Math.max(...heights) - tops[0]!)];
    },
  };
}
