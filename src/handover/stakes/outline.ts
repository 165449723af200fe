/** Outlines with fewer corners: what is worth a stake. */
import type { PlanPoint } from "../../site/index.js";

/** m: a corner nearer than this to the line between its neighbours gets no stake. */
export const STAKE_TOLERANCE = 0.1;

/** m²: rings smaller than this are slivers at the edge of a dig, not holes to set out. */
const LEAST_AREA = 0.05;

export type Ring = readonly (readonly [number, number])[];

/**
 * Corners of a closed ring that lie at least `tolerance` off what the others draw (Douglas and
 * Peucker 1973, from the two corners that lie farthest apart). Empty for a sliver.
 */
export function stakedCorners(ring: Ring, tolerance = STAKE_TOLERANCE): PlanPoint[] {
  if (Math.abs(ringArea(ring)) < LEAST_AREA) return [];
  const [first, second] = farthestPair(ring);
  const turned = [...ring.slice(first), ...ring.slice(0, first)];
  const half = second - first;
  const there = thinned(turned.slice(0, half + 1), tolerance);
  const back = thinned([...turned.slice(half), turned[0]!], tolerance);
  return [...there.slice(0, -1), ...back.slice(0, -1)].map(([x, y]): PlanPoint => [x, y]);
}

function ringArea(ring: Ring): number {
  return ring.reduce((sum, [x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length]!;
    return sum + (x * ny - nx * y) / 2;
  }, 0);
}

/** The two corners that lie farthest apart, the earlier first. */
function farthestPair(ring: Ring): [number, number] {
  let pair: [number, number] = [0, 0];
  let most = -1;
  for (let i = 0; i < ring.length; i += 1) {
    for (let j = i + 1; j < ring.length; j += 1) {
      const far = Math.hypot(ring[j]![0] - ring[i]![0], ring[j]![1] - ring[i]![1]);
      if (far > most) [most, pair] = [far, [i, j]];
    }
  }
  return pair;
}

/** A line with both ends kept. */
function thinned(line: Ring, tolerance: number): Ring {
  const [start, end] = [line[0]!, line[line.length - 1]!];
  let farthest = 0;
  let most = tolerance;
  for (let i = 1; i < line.length - 1; i += 1) {
    const off = distanceToLeg(line[i]!, start, end);
    if (off >= most) [most, farthest] = [off, i];
  }
  if (farthest === 0) return [start, end];
  const head = thinned(line.slice(0, farthest + 1), tolerance);
  return [...head.slice(0, -1), ...thinned(line.slice(farthest), tolerance)];
}

function distanceToLeg(
  [x, y]: readonly [number, number],
  [ax, ay]: readonly [number, number],
  [bx, by]: readonly [number, number],
): number {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : ((x - ax) * dx + (y - ay) * dy) / square;
  const share = Math.min(1, Math.max(0, along));
  return Math.hypot(x - ax - share * dx, y - ay - share * dy);
}
