/** Simple polygons in plan as surfaces: one wall for each edge, mitred at the corners. */
import { higherOf, lowerOf, type Surface } from "./surface.js";

/** A place in plan, local m. */
export type Place = readonly [number, number];

/** Signed area of a simple polygon, m²; positive when counter-clockwise. */
export function signedArea(outline: readonly Place[]): number {
  let twice = 0;
  outline.forEach(([x, y], i) => {
    const [nx, ny] = outline[(i + 1) % outline.length]!;
    twice += x * ny - nx * y;
  });
  return twice / 2;
}

/** The same outline counter-clockwise, without repeated or straight-through corners. */
export function tidyOutline(outline: readonly Place[]): Place[] {
  const turned = signedArea(outline) < 0 ? [...outline].reverse() : [...outline];
  const distinct = turned.filter((place, i) => {
    const [px, py] = turned[(i + turned.length - 1) % turned.length]!;
    return Math.hypot(place[0] - px, place[1] - py) > 1e-9;
  });
  return distinct.filter((place, i) => {
    const before = distinct[(i + distinct.length - 1) % distinct.length]!;
    const after = distinct[(i + 1) % distinct.length]!;
    return Math.abs(turn(before, place, after)) > 1e-12;
  });
}

/**
 * Joins one surface per edge of a counter-clockwise simple polygon into one surface for the whole
 * outline: the higher of two at an outward corner, the lower of two at an inward one.
 *
 * The joining order is the formula of Dobkin, Guibas, Hershberger and Snoeyink, "An efficient
 * algorithm for finding the CSG representation of a simple polygon" (Algorithmica 10, 1993), here
 * in its plain quadratic form: a chain is parted at the corner farthest out against the directions
 * in which its ends run off, so that neither extended end can cross the chain again. With
 * edge surfaces that rise outwards, each from its own floor edge, this is the mitred wall of any
 * outline, concave ones included, and every edge is used exactly once.
 *
 * `edge(i)` is the surface of the edge from corner i to corner i + 1. With `inside: "low"` the
 * surfaces rise outwards (a hole); with "high" they fall outwards (an embankment).
 */
export function outlineSurface(
  outline: readonly Place[],
  edge: (i: number) => Surface,
  inside: "low" | "high",
): Surface {
  const count = outline.length;
  const corner = (i: number): Place => outline[i % count]!;
  const outward = inside === "low" ? higherOf : lowerOf;
  const inward = inside === "low" ? lowerOf : higherOf;

  /** The chain of edges from corner `first` to corner `last` (`last` may pass the end). */
  const chain = (first: number, last: number): Surface => {
    if (last - first === 1) return edge(first % count);
    const start = unit(corner(first + 1), corner(first));
    const end = unit(corner(last - 1), corner(last));
    const split = farthest(first, last, -(start[0] + end[0]), -(start[1] + end[1]), start);
    const left = turn(corner(split - 1), corner(split), corner(split + 1)) >= 0;
    return (left ? outward : inward)([chain(first, split), chain(split, last)]);
  };

  const farthest = (first: number, last: number, dx: number, dy: number, start: Place): number => {
    // Ends that run off in opposite directions leave no preferred side: look across them.
    const [ux, uy] = Math.hypot(dx, dy) < 1e-12 ? [-start[1], start[0]] : [dx, dy];
    let best = first + 1;
    let reach = -Infinity;
    for (let i = first + 1; i < last; i++) {
      const [x, y] = corner(i);
      if (ux * x + uy * y > reach) [best, reach] = [i, ux * x + uy * y];
    }
    return best;
  };

  const low = extreme(outline, -1);
  const high = extreme(outline, 1);
  return outward([
    chain(low, high > low ? high : high + count),
    chain(high, low > high ? low : low + count),
  ]);
}

/** Index of the corner that lies farthest west (sign −1) or east (sign 1), ties by y. */
function extreme(outline: readonly Place[], sign: number): number {
  let best = 0;
  outline.forEach(([x, y], i) => {
    const [bx, by] = outline[best]!;
    if (sign * x > sign * bx || (x === bx && sign * y > sign * by)) best = i;
  });
  return best;
}

function unit(from: Place, to: Place): Place {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
}

/** Twice the area of the triangle a, b, c; positive for a left turn. */
export function turn(a: Place, b: Place, c: Place): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

/** True when a place lies in a simple polygon (edges count as either). */
export function insideOutline(outline: readonly Place[], x: number, y: number): boolean {
  let inside = false;
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const [xi, yi] = outline[i]!;
    const [xj, yj] = outline[j]!;
    if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) inside = !inside;
  }
  return inside;
}
