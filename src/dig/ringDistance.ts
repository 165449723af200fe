/** Distances in plan between outlines. */
import { insideOutline, type Place } from "../ground/index.js";

type Rings = readonly (readonly Place[])[];

/** Least distance between two sets of rings, m: 0 where they overlap, Infinity if one is empty. */
export function distanceBetweenRings(one: Rings, two: Rings): number {
  let least = Infinity;
  for (const a of one) {
    for (const b of two) {
      if (boxesApart(boxOf(a), boxOf(b)) >= least) continue;
      if (overlap(a, b)) return 0;
      least = Math.min(least, distanceBetween(a, b));
    }
  }
  return least;
}

/** True when rings that do not cross lie one in the other. */
function overlap(a: readonly Place[], b: readonly Place[]): boolean {
  return insideOutline(a, b[0]![0], b[0]![1]) || insideOutline(b, a[0]![0], a[0]![1]);
}

function distanceBetween(a: readonly Place[], b: readonly Place[]): number {
  const box = boxOf(b);
  const boxes = b.map((r, j) => boxOf([r, b[(j + 1) % b.length]!]));
  let least = Infinity;
  a.forEach((p, i) => {
    const q = a[(i + 1) % a.length]!;
    const own = boxOf([p, q]);
    if (boxesApart(own, box) >= least) return;
    b.forEach((r, j) => {
      if (!mayBeNearer(own, boxes[j]!, least)) return;
      const s = b[(j + 1) % b.length]!;
      least = Math.min(least, segmentsApart(p, q, r, s));
    });
  });
  return least;
}

type Box = readonly [number, number, number, number];

function boxOf(places: readonly Place[]): Box {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const place of places) {
    west = Math.min(west, place[0]);
    south = Math.min(south, place[1]);
    east = Math.max(east, place[0]);
    north = Math.max(north, place[1]);
  }
  return [west, south, east, north];
}

function boxesApart(a: Box, b: Box): number {
  const across = Math.max(0, a[0] - b[2], b[0] - a[2]);
  const along = Math.max(0, a[1] - b[3], b[1] - a[3]);
  return Math.hypot(across, along);
}

/** False when no two places in the boxes are nearer than `least`. Asked for every pair of sides. */
function mayBeNearer(a: Box, b: Box, least: number): boolean {
  return a[0] - b[2] < least && b[0] - a[2] < least && a[1] - b[3] < least && b[1] - a[3] < least;
}

function segmentsApart(p: Place, q: Place, r: Place, s: Place): number {
  if (cross(p, q, r, s)) return 0;
  return Math.min(
    placeToSegment(p, r, s),
    placeToSegment(q, r, s),
    placeToSegment(r, p, q),
    placeToSegment(s, p, q),
  );
}

function cross(p: Place, q: Place, r: Place, s: Place): boolean {
  return side(p, q, r) * side(p, q, s) < 0 && side(r, s, p) * side(r, s, q) < 0;
}

function side(a: Place, b: Place, c: Place): number {
  return Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
}

function placeToSegment([x, y]: Place, [ax, ay]: Place, [bx, by]: Place): number {
  const [dx, dy] = [bx - ax, by - ay];
  const squared = dx * dx + dy * dy;
  const share = squared > 0 ? ((x - ax) * dx + (y - ay) * dy) / squared : 0;
  const on = Math.max(0, Math.min(1, share));
  return Math.hypot(x - ax - on * dx, y - ay - on * dy);
}
