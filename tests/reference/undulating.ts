/**
 * Seeded sites on undulating ground, and the midpoint rule on them: the common part of the brute
 * force oracles. Heights come from `columns.ts`, which is written apart from the engine.
 */
import { earth as ownEarth, siteOf, type Spot } from "../fixtures/site.js";
import { seeded, type Seeded } from "../fixtures/seeded.js";
import type { Site, Work } from "../../src/site/index.js";
import { cutOf, facets, heightOn, thicknessRule, type Probe } from "./columns.js";

export type Place = readonly [x: number, y: number];

/** Ground of random hills of a few tenths of a metre on a slope, with two or three layers. */
export interface Undulating {
  random: Seeded;
  /** Material ids from the top down. */
  layers: readonly string[];
  /** Steepest wall of each layer, run per rise. */
  runs: readonly number[];
  /** Tops of the layers at a place on the survey, from the surface down, m. */
  topsAt: (x: number, y: number) => number[];
  site: (works: readonly Work[]) => Site;
}

/** m from the middle of the survey to its sides. */
const HALF = 24;

/** The ground of a seed; walls by layers have runs picked from `choice`. */
export function undulating(seed: number, choice: readonly number[] = [0.5]): Undulating {
  const random = seeded(seed);
  const { between, whole, pick } = random;
  const [a, b] = [between(-0.15, 0.15), between(-0.15, 0.15)];
  const points: Spot[] = [];
  const side = 9;
  for (let i = 0; i < side; i++) {
    for (let j = 0; j < side; j++) {
      const rim = i === 0 || j === 0 || i === side - 1 || j === side - 1;
      const step = (2 * HALF) / (side - 1);
      const off = (): number => (rim ? 0 : between(-0.25, 0.25) * step);
      const [x, y] = [-HALF + i * step + off(), -HALF + j * step + off()];
      points.push([x, y, a * x + b * y + 0.5 * Math.sin(x / 5 + seed) + between(-0.3, 0.3)]);
    }
  }
  const count = whole(2, 3);
  const layers = Array.from({ length: count }, (_, i) => `e${i}`);
  const runs = layers.map(() => pick(choice));
  const probes = Array.from({ length: pick([1, 3, 4]) }, (): Probe => {
    const thickness = layers.slice(1).map((_, i) => between(0.15, 0.45 + 0.6 * i));
    return [between(-16, 16), between(-16, 16), ...thickness];
  });
  const surfaceAt = surfaceOf(points);
  const thickness = thicknessRule(probes, count);
  return {
    random,
    layers,
    runs,
    topsAt: (x, y) => {
      const tops = [surfaceAt(x, y)];
      for (const thick of thickness(x, y)) tops.push(tops[tops.length - 1]! - thick);
      return tops;
    },
    site: (works) =>
      siteOf({
        points,
        layers,
        probes,
        works,
        materials: layers.map((id, i) => ownEarth(id, runs[i]!)),
      }),
  };
}

/** Side of the squares by which triangles are looked up, m. */
const SQUARE = 2;

/** The surface by triangles; only those about a square are asked for a place in it. */
function surfaceOf(points: readonly Spot[]): (x: number, y: number) => number {
  const all = facets(points);
  const known = new Map<string, typeof all>();
  return (x, y) => {
    const [i, j] = [Math.floor(x / SQUARE), Math.floor(y / SQUARE)];
    const key = `${i},${j}`;
    let near = known.get(key);
    if (!near) {
      const [w, s] = [i * SQUARE, j * SQUARE];
      near = all.filter(({ corners, west, east }) => {
        const ys = corners.map((corner) => corner[1]);
        return (
          east >= w && west <= w + SQUARE && Math.max(...ys) >= s && Math.min(...ys) <= s + SQUARE
        );
      });
      known.set(key, near);
    }
    const height = heightOn(near, x, y);
    if (height === null) throw new Error(`got ${x}, ${y} off the survey, expected a place on it`);
    return height;
  };
}

/** Sums over a square of half side `half` about a place, by the midpoint rule on squares of side h. */
export function midpoints(
  [cx, cy]: Place,
  half: number,
  h: number,
  amounts: (x: number, y: number) => readonly number[],
): number[] {
  const count = Math.ceil((2 * half) / h);
  const sums: number[] = [];
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      const found = amounts(cx - half + (i + 0.5) * h, cy - half + (j + 0.5) * h);
      found.forEach((amount, k) => (sums[k] = (sums[k] ?? 0) + amount * h * h));
    }
  }
  return sums;
}

/** Depth of each layer above a surface. */
export function depthsAbove(tops: readonly number[], surface: number): number[] {
  return cutOf(tops, surface);
}

/** m beyond each side of a convex outline, counter-clockwise; negative inside. */
export function beyondSides(outline: readonly Place[], x: number, y: number): number[] {
  return outline.map(([px, py], i) => {
    const [qx, qy] = outline[(i + 1) % outline.length]!;
    return ((qy - py) * (x - px) - (qx - px) * (y - py)) / Math.hypot(qx - px, qy - py);
  });
}

/** Whether a convex outline, counter-clockwise, holds a place. */
export function holds(outline: readonly Place[], x: number, y: number): boolean {
  return beyondSides(outline, x, y).every((far) => far <= 0);
}

/** A rectangle's corners, counter-clockwise, its middle moved by (u, v) along its own axes. */
export function turnedBox(
  [cx, cy]: Place,
  angle: number,
  [west, south, east, north]: readonly [number, number, number, number],
): [number, number][] {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const at = (u: number, v: number): [number, number] => [cx + c * u - s * v, cy + s * u + c * v];
  return [at(west, south), at(east, south), at(east, north), at(west, north)];
}

/** What is compared: got from the engine, wanted by the oracle, and the size to measure by. */
export interface Compared {
  what: string;
  got: number;
  wanted: number;
  size: number;
}

/** The largest gap as a share of its size, and what is farther apart than allowed. */
export function compare(
  all: readonly Compared[],
  share: number,
  least: number,
): { worst: number; faults: string[] } {
  let worst = 0;
  const faults: string[] = [];
  for (const { what, got, wanted, size } of all) {
    const gap = Math.abs(got - wanted);
    worst = Math.max(worst, gap / Math.max(size, 1));
    if (!(gap <= share * size + least)) {
      faults.push(`${what}: got ${got.toFixed(4)}, expected ${wanted.toFixed(4)}`);
    }
  }
  return { worst, faults };
}
