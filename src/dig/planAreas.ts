/** Areas in plan put together: unions and overlaps of rings, and the ground beside a line. */
import clipping from "polygon-clipping";
import type { PlanPoint } from "../site/index.js";
import type { Rings } from "./types.js";

/** Polygons, each an outer ring and its holes; a ring's first place is repeated at its end. */
export type Areas = readonly (readonly (readonly [number, number])[])[][];

/** m: corners are set on a grid as fine as this, which keeps the clipping free of slivers. */
const GRID = 1e-4;

/** Corners of the many-sided figure that stands for a circle. */
const CIRCLE = 64;

const snap = (value: number): number => Math.round(value / GRID) * GRID;

function snapped(ring: readonly (readonly [number, number])[]): [number, number][] {
  return ring.map(([x, y]): [number, number] => [snap(x), snap(y)]);
}

/** The areas that rings bound, even–odd: outer ones less their holes. */
export function areasOf(rings: Rings): Areas {
  const kept = rings.filter((ring) => ring.length >= 3).map((ring) => [snapped(ring)]);
  const [first, ...others] = kept;
  return first === undefined ? [] : clipping.xor(first, ...others);
}

/** All of some areas together, each place counted once. */
export function unionOf(all: readonly Areas[]): Areas {
  const [first, ...others] = all.filter((areas) => areas.length > 0).map(writable);
  return first === undefined ? [] : clipping.union(first, ...others);
}

/** What two areas have in common. */
export function overlapOf(one: Areas, other: Areas): Areas {
  if (one.length === 0 || other.length === 0) return [];
  return clipping.intersection(writable(one), writable(other));
}

function writable(areas: Areas): [number, number][][][] {
  return areas.map((polygon) => polygon.map((ring) => snapped(ring)));
}

/** m² of some areas that do not overlap. */
export function sizeOfAreas(areas: Areas): number {
  let twice = 0;
  for (const polygon of areas) {
    polygon.forEach((ring, i) => {
      const size = Math.abs(twiceArea(ring));
      twice += i === 0 ? size : -size;
    });
  }
  return twice / 2;
}

function twiceArea(ring: readonly (readonly [number, number])[]): number {
  // About a corner of the ring, so that far-off coordinates cost no digits.
  const [ox, oy] = ring[0] ?? [0, 0];
  return ring.reduce((sum, [x, y], i) => {
    const [u, v] = ring[(i + 1) % ring.length]!;
    return sum + (x - ox) * (v - oy) - (u - ox) * (y - oy);
  }, 0);
}

/** Whether a place lies in some areas. */
export function inAreas([x, y]: PlanPoint, areas: Areas): boolean {
  let inside = false;
  for (const ring of areas.flat()) {
    for (let i = 1; i < ring.length; i++) {
      const [a, b] = [ring[i - 1]!, ring[i]!];
      if (a[1] > y === b[1] > y) continue;
      if (x < a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0])) inside = !inside;
    }
  }
  return inside;
}

/** All places within `distance` m of a line; round at its bends and ends. */
export function besideLine(path: readonly PlanPoint[], distance: number): Areas {
  const parts: Areas[] = path.map((at) => [[circle(at, distance)]]);
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1]!, path[i]!];
    const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (long < GRID) continue;
    const [nx, ny] = [((a[1] - b[1]) / long) * distance, ((b[0] - a[0]) / long) * distance];
    const ring: PlanPoint[] = [
      [a[0] + nx, a[1] + ny],
      [a[0] - nx, a[1] - ny],
      [b[0] - nx, b[1] - ny],
      [b[0] + nx, b[1] + ny],
    ];
    parts.push([[[...ring, ring[0]!]]]);
  }
  return unionOf(parts);
}

function circle([x, y]: PlanPoint, radius: number): PlanPoint[] {
  const ring = Array.from({ length: CIRCLE }, (_, k): PlanPoint => {
    const turn = (2 * Math.PI * k) / CIRCLE;
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)];
  });
  return [...ring, ring[0]!];
}
