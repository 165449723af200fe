/**
 * A cell: a convex polygon in plan on which the surface and every layer top is a plane.
 *
 * Heights are kept at the polygon's corners rather than as plane coefficients: cutting a cell in
 * two then only mixes corner values along edges, which stays accurate on slivers and steep
 * triangles where plane coefficients blow up, and the corners are what a mesh needs anyway.
 * All coordinates are local metres. Cells are never changed once made.
 */
export interface CellLayer {
  /** Material id; "native" for the site's own earth put back. */
  material: string;
  /** Index of the work that placed it; -1 for natural ground. */
  by: number;
  /** A tank or other built thing: it is never dug. */
  structure: boolean;
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
}

/** A cell that the present work has cut: it knows the surface before. */
export type CutCell = Cell & { before: readonly number[] };

/** True for a cell that the present work has cut. */
export function isCut(cell: Cell): cell is CutCell {
  return cell.before !== null;
}

/**
 * A copy of a cell with some fields changed. Written out field by field: every cell then has the
 * same hidden class, which the engine's hottest loops depend on (spreading was four times slower).
 */
export function changedCell(cell: Cell, change: Partial<Cell>): Cell {
  return {
    x: change.x ?? cell.x,
    y: change.y ?? cell.y,
    layers: change.layers ?? cell.layers,
    tops: change.tops ?? cell.tops,
    before: change.before === undefined ? cell.before : change.before,
    part: change.part ?? cell.part,
    face: change.face ?? cell.face,
  };
}

/** A cell with further values at its corners, mixed along with it when it is cut in two. */
export interface CarriedCell {
  cell: Cell;
  carry: readonly (readonly number[])[];
}

/** Corners whose value is within this of zero count as lying on the cut, m. */
export const ROUNDING = 1e-10;

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

/** Corners of a part: corner `from`, mixed towards corner `to` by `share`, one after the other. */
interface Corners {
  from: number[];
  to: number[];
  share: number[];
}

/**
 * Cuts a cell along the line where `value` (linear, given at the corners) is zero.
 * Returns the part where it is at most zero and the part where it is at least zero; one of them is
 * null when the whole cell lies on one side (a cell that lies on zero counts as below).
 */
export function splitCell(
  part: CarriedCell,
  value: readonly number[],
): { below: CarriedCell | null; above: CarriedCell | null } {
  let anyBelow = false;
  let anyAbove = false;
  for (const at of value) {
    if (at > ROUNDING) anyAbove = true;
    else if (at < -ROUNDING) anyBelow = true;
  }
  if (!anyAbove) return { below: part, above: null };
  if (!anyBelow) return { below: null, above: part };
  const below: Corners = { from: [], to: [], share: [] };
  const above: Corners = { from: [], to: [], share: [] };
  const count = value.length;
  for (let i = 0; i < count; i++) {
    const j = i + 1 === count ? 0 : i + 1;
    const here = Math.abs(value[i]!) <= ROUNDING ? 0 : value[i]!;
    const next = Math.abs(value[j]!) <= ROUNDING ? 0 : value[j]!;
    if (here <= 0) addCorner(below, i, i, 0);
    if (here >= 0) addCorner(above, i, i, 0);
    if (here * next < 0) {
      const share = here / (here - next);
      addCorner(below, i, j, share);
      addCorner(above, i, j, share);
    }
  }
  return { below: partOf(part, below), above: partOf(part, above) };
}

/** As `splitCell`, for values that are known to lie on both sides of zero. */
export function splitAcross(
  part: CarriedCell,
  value: readonly number[],
): { below: CarriedCell; above: CarriedCell } {
  const { below, above } = splitCell(part, value);
  if (!below || !above)
    throw new Error(`got values on one side of zero, expected both: ${value.join()}`);
  return { below, above };
}

function addCorner(corners: Corners, from: number, to: number, share: number): void {
  corners.from.push(from);
  corners.to.push(to);
  corners.share.push(share);
}

function partOf({ cell, carry }: CarriedCell, corners: Corners): CarriedCell {
  const tops: number[][] = [];
  for (const top of cell.tops) tops.push(mixed(top, corners));
  const carried: number[][] = [];
  for (const values of carry) carried.push(mixed(values, corners));
  return {
    cell: {
      x: mixed(cell.x, corners),
      y: mixed(cell.y, corners),
      layers: cell.layers,
      tops,
      before: cell.before && mixed(cell.before, corners),
      part: cell.part,
      face: cell.face,
    },
    carry: carried,
  };
}

function mixed(values: readonly number[], { from, to, share }: Corners): number[] {
  const out: number[] = new Array<number>(from.length);
  for (let k = 0; k < from.length; k++) {
    const start = values[from[k]!]!;
    const by = share[k]!;
    out[k] = by === 0 ? start : start + by * (values[to[k]!]! - start);
  }
  return out;
}
