/**
 * A cell: a convex polygon in plan on which the surface and every layer top is a plane.
 *
 * Heights are kept at the polygon's corners rather than as plane coefficients: cutting a cell in
 * two then only mixes corner values along edges, which stays accurate on slivers and steep
 * triangles where plane coefficients blow up, and the corners are what a mesh needs anyway.
 * All coordinates are local metres. This is the form that readers get; the engine works on the
 * flat records of `CellStore`.
 */
export interface CellLayer {
  /** Material id; "native" for the site's own earth put back. */
  material: string;
  /** Index of the work that placed it; -1 for natural ground. */
  by: number;
  /** A tank or other built thing: it is never dug. */
  structure: boolean;
  /** How late in the job it is put in (`LayeredGround.upTo`); 0 for natural ground. */
  step: number;
}

export interface Cell {
  /** Corners in plan, counter-clockwise. */
  x: readonly number[];
  y: readonly number[];
  /** From the bottom up. The first has no bottom. */
  layers: readonly CellLayer[];
  /** Height of each layer's top at each corner: `tops[layer][corner]`. */
  tops: readonly (readonly number[])[];
  /** Surface at each corner just before the present work, where that work has cut; else null. */
  before: readonly number[] | null;
  /** Which part of the present work's surface cut here (a trench's leg, for one). */
  part: number;
  /** What the surface is: as found, dug by a work, or filled. */
  face: "found" | "dug" | "filled";
  /** True where the surface is a floor, and not a wall, of the work that dug it. */
  floor: boolean;
}

/** A cell that the present work has cut: it knows the surface before. */
export type CutCell = Cell & { before: readonly number[] };

/** True for a cell that the present work has cut. */
export function isCut(cell: Cell): cell is CutCell {
  return cell.before !== null;
}

/** Surface heights at the corners. */
export function surfaceOf(cell: Cell): readonly number[] {
  return cell.tops[cell.tops.length - 1]!;
}

/** Exact integral over the cell of a value that is linear on it, given at the corners. */
export function integrate(cell: Cell, values: readonly number[]): number {
  const { x, y } = cell;
  const x0 = x[0]!;
  const y0 = y[0]!;
  let total = 0;
  for (let i = 1; i + 1 < x.length; i++) {
    const twice = (x[i]! - x0) * (y[i + 1]! - y0) - (x[i + 1]! - x0) * (y[i]! - y0);
    total += twice * (values[0]! + values[i]! + values[i + 1]!);
  }
  return total / 6;
}

/** Area of the cell in plan, m². */
export function areaOf(cell: Cell): number {
  const { x, y } = cell;
  let twice = 0;
  for (let i = 1; i + 1 < x.length; i++) {
    twice += (x[i]! - x[0]!) * (y[i + 1]! - y[0]!) - (x[i + 1]! - x[0]!) * (y[i]! - y[0]!);
  }
  return twice / 2;
}

/** Difference of two corner arrays, a − b. */
export function minus(a: readonly number[], b: readonly number[]): number[] {
  const out = new Array<number>(a.length);
  for (let i = 0; i < a.length; i++) out[i] = a[i]! - b[i]!;
  return out;
}
