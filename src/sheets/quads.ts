/** Four-cornered pieces of paper: whether two share any, and those about lines and boxes. mm. */
import type { Quad } from "./box.js";
import type { Spot } from "./paper.js";

/** mm: pieces that share less than this along an axis only touch. */
const TOUCH = 1e-9;

/** Whether two convex quads share more than an edge (separating axes). */
export function overlap(a: Quad, b: Quad): boolean {
  return !separatedAlong(a, a, b) && !separatedAlong(b, a, b);
}

/**
 * Whether a side of `sides` has all of a on one side and all of b on the other. Written out without
 * arrays of its own: placing the labels of one plan asks this some million times.
 */
function separatedAlong(sides: Quad, a: Quad, b: Quad): boolean {
  for (let i = 0; i < 4; i++) {
    const [from, to] = [sides[i]!, sides[(i + 1) & 3]!];
    const nx = to[1] - from[1];
    const ny = from[0] - to[0];
    const length = Math.sqrt(nx * nx + ny * ny);
    if (length === 0) continue;
    let [lowA, highA, lowB, highB] = [Infinity, -Infinity, Infinity, -Infinity];
    for (let k = 0; k < 4; k++) {
      const inA = a[k]![0] * nx + a[k]![1] * ny;
      const inB = b[k]![0] * nx + b[k]![1] * ny;
      if (inA < lowA) lowA = inA;
      if (inA > highA) highA = inA;
      if (inB < lowB) lowB = inB;
      if (inB > highB) highB = inB;
    }
    const touch = TOUCH * length;
    if (highA <= lowB + touch || highB <= lowA + touch) return true;
  }
  return false;
}

/** A box as a quad. */
export function boxQuad(left: number, top: number, width: number, height: number): Quad {
  return [
    [left, top],
    [left + width, top],
    [left + width, top + height],
    [left, top + height],
  ];
}

/** The quad around a leg of a line, `width` mm wide and as much longer. */
export function stripQuad(from: Spot, to: Spot, width: number): Quad {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const half = width / 2;
  const [ux, uy] = length === 0 ? [1, 0] : [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const corner = ([x, y]: Spot, along: number, across: number): Spot => [
    x + half * (along * ux - across * uy),
    y + half * (along * uy + across * ux),
  ];
  return [corner(from, -1, -1), corner(to, 1, -1), corner(to, 1, 1), corner(from, -1, 1)];
}
