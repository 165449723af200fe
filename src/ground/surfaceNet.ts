/**
 * A surface in plan as a net of cells that meet side to side, for walking over it from cell to
 * cell. Flat arrays; a side is seen twice, once from each of the cells that it parts.
 */
import type { Tin } from "./tin.js";

/** Cells, side by side. All coordinates are local m. Never written after construction. */
export interface SurfaceNet {
  /** Corners in plan. */
  x: Float64Array;
  y: Float64Array;
  /** Per side: the corner where it starts; each cell lies to the left of its own sides. */
  corner: Uint32Array;
  /** Per side: height of its own cell at that corner. Cells may differ there: a vertical wall. */
  height: Float64Array;
  /** Per side: the side of the same cell that follows it, and the one before it. */
  next: Uint32Array;
  previous: Uint32Array;
  /** Per side: the same side seen from the cell beyond, or -1 at the edge of the survey. */
  twin: Int32Array;
  /** True where neighbouring cells may differ in height; false when the surface has no steps. */
  stepped: boolean;
}

/** The net of the ground as found: one cell for each triangle, side k of triangle t is 3t + k. */
export function netOfTin(tin: Tin): SurfaceNet {
  const count = tin.triangles.length;
  const height = new Float64Array(count);
  const next = new Uint32Array(count);
  const previous = new Uint32Array(count);
  const { x, y, z, triangles, twins } = tin;
  for (let side = 0; side < count; side++) height[side] = z[triangles[side]!]!;
  for (let side = 0; side < count; side += 3) {
    next[side] = previous[side + 2] = side + 1;
    next[side + 1] = previous[side] = side + 2;
    next[side + 2] = previous[side + 1] = side;
  }
  return { x, y, corner: triangles, height, next, previous, twin: twins, stepped: false };
}
