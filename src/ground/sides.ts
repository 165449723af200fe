/**
 * Triangles by their sides. Side s = 3t + k of triangle t goes from its corner k to its corner
 * k + 1 (mod 3), counter-clockwise; `twins[s]` is the same side seen from the triangle beyond, or
 * -1 where there is none.
 */
import { incircle, orient2d } from "robust-predicates";

/** The side after this one in its triangle. */
export function nextSide(side: number): number {
  return side % 3 === 2 ? side - 2 : side + 1;
}

/** The side before this one in its triangle. */
export function sideBefore(side: number): number {
  return side % 3 === 0 ? side + 2 : side - 1;
}

/** Triangles whose corners and twins may still be written. */
export interface Mesh {
  /** Places of the vertices, m, any frame with y up. */
  x: Float64Array;
  y: Float64Array;
  /** Vertex at the start of each side. */
  triangles: Uint32Array;
  twins: Int32Array;
}

/** Twice the area of a–b–c, m², with an exact sign: positive when counter-clockwise. */
export function turnOf({ x, y }: Pick<Mesh, "x" | "y">, a: number, b: number, c: number): number {
  // The library's y points downward, so its sign is the reverse of ours.
  return -orient2d(x[a]!, y[a]!, x[b]!, y[b]!, x[c]!, y[c]!);
}

/** True when d lies inside the circle of the counter-clockwise a–b–c; exact. */
export function insideCircle(
  { x, y }: Pick<Mesh, "x" | "y">,
  [a, b, c, d]: readonly [number, number, number, number],
): boolean {
  return incircle(x[a]!, y[a]!, x[b]!, y[b]!, x[c]!, y[c]!, x[d]!, y[d]!) > 0;
}
