/** The ground along a straight line in plan, and at a place. */
import { trianglesIn } from "./blocks.js";
import { surfaceOf, type Cell } from "./cell.js";
import type { LayeredGround } from "./layered.js";
import type { Place } from "./outline.js";
import { triangleAt } from "./tin.js";

/** A stretch of a line on which the surface is straight. Distances are m from the line's start. */
export interface Stretch {
  from: number;
  to: number;
  /** Surface at the two ends, local m. */
  start: number;
  end: number;
  /** True where the surface is the top of a built thing. */
  structure: boolean;
}

/** A stretch of a line within one cell, and how its ends are mixed from the cell's corners. */
export interface CellStretch {
  from: number;
  to: number;
  cell: Cell;
  /** Any value that is linear on the cell, given at its corners, at the two ends. */
  at: (values: readonly number[]) => { start: number; end: number };
}

/**
 * The surface along p–q, in order, as stretches on which it is straight. Where the line leaves the
 * survey there is a gap. At a step (a vertical wall) two stretches meet at different heights; along
 * one, the lower side is taken, whatever rounding makes of the line.
 */
export function profileAlong(ground: LayeredGround, p: Place, q: Place): Stretch[] {
  return lowestOf(cellsMet(ground, p, q)).map(({ from, to, cell, at }) => ({
    from,
    to,
    ...at(surfaceOf(cell)),
    structure: cell.layers[cell.layers.length - 1]!.structure,
  }));
}

/** The cells that a line p–q crosses, in order, each stretch once even along cells' edges. */
export function cellsAlong(ground: LayeredGround, p: Place, q: Place): CellStretch[] {
  return inOrder(cellsMet(ground, p, q), Math.hypot(q[0] - p[0], q[1] - p[1]));
}

/** The cells that a line meets, in no order; along cells' edges both sides. */
function cellsMet(ground: LayeredGround, p: Place, q: Place): CellStretch[] {
  const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
  if (length === 0) return [];
  const found: CellStretch[] = [];
  const triangles = trianglesIn(ground.base.tin, [
    Math.min(p[0], q[0]),
    Math.min(p[1], q[1]),
    Math.max(p[0], q[0]),
    Math.max(p[1], q[1]),
  ]);
  for (const triangle of triangles) {
    for (const cell of ground.cellsOf(triangle)) {
      const crossing = crossingOf(cell, p, q, length);
      if (crossing) found.push(stretch(cell, crossing.low, crossing.high, 0, length));
    }
  }
  return found.filter((each) => each.to - each.from > 1e-9);
}

/**
 * The cell that holds a place (local m), or null beyond the survey. `near` names a triangle to look
 * in first.
 */
export function cellAt(ground: LayeredGround, x: number, y: number, near = -1): Cell | null {
  const here = near < 0 ? null : cellIn(ground.cellsOf(near), x, y);
  if (here) return here;
  const triangle = triangleAt(ground.base.tin, x, y);
  return triangle < 0 ? null : cellIn(ground.cellsOf(triangle), x, y);
}

function cellIn(cells: readonly Cell[], x: number, y: number): Cell | null {
  for (const cell of cells) if (holds(cell, x, y)) return cell;
  return null;
}

/** A value that is linear on a cell, given at its corners, at a place on it. */
export function valueAt(cell: Cell, values: readonly number[], x: number, y: number): number {
  const { x: xs, y: ys } = cell;
  let [best, corner] = [0, 1];
  for (let i = 1; i + 1 < xs.length; i++) {
    const twice = cross(xs, ys, 0, i, xs[i + 1]!, ys[i + 1]!);
    if (Math.abs(twice) > Math.abs(best)) [best, corner] = [twice, i];
  }
  if (best === 0) return values[0]!;
  const a = cross(xs, ys, corner, corner + 1, x, y) / best;
  const b = -cross(xs, ys, 0, corner + 1, x, y) / best;
  return a * values[0]! + b * values[corner]! + (1 - a - b) * values[corner + 1]!;
}

function cross(
  xs: readonly number[],
  ys: readonly number[],
  i: number,
  j: number,
  x: number,
  y: number,
): number {
  return (xs[j]! - xs[i]!) * (y - ys[i]!) - (ys[j]! - ys[i]!) * (x - xs[i]!);
}

function holds(cell: Cell, x: number, y: number): boolean {
  const count = cell.x.length;
  for (let i = 0; i < count; i++) {
    const j = i + 1 === count ? 0 : i + 1;
    const [ax, ay] = [cell.x[i]!, cell.y[i]!];
    if ((cell.x[j]! - ax) * (y - ay) - (cell.y[j]! - ay) * (x - ax) < -1e-12) return false;
  }
  return true;
}

/** A point of a cell's outline on the line: corner i mixed towards corner j by share. */
interface Mix {
  along: number;
  i: number;
  j: number;
  share: number;
}

function crossingOf(
  cell: Cell,
  p: Place,
  q: Place,
  length: number,
): { low: Mix; high: Mix } | null {
  const ux = (q[0] - p[0]) / length;
  const uy = (q[1] - p[1]) / length;
  if (misses(cell, p, ux, uy, length)) return null;
  const mixes: Mix[] = [];
  const count = cell.x.length;
  const along = cell.x.map((x, i) => (x - p[0]) * ux + (cell.y[i]! - p[1]) * uy);
  const off = cell.x.map((x, i) => (cell.y[i]! - p[1]) * ux - (x - p[0]) * uy);
  for (let i = 0; i < count; i++) {
    const j = (i + 1) % count;
    const here = Math.abs(off[i]!) < 1e-11 ? 0 : off[i]!;
    const next = Math.abs(off[j]!) < 1e-11 ? 0 : off[j]!;
    if (here === 0) mixes.push({ along: along[i]!, i, j: i, share: 0 });
    if (here * next >= 0) continue;
    const share = here / (here - next);
    mixes.push({ along: along[i]! + share * (along[j]! - along[i]!), i, j, share });
  }
  mixes.sort((a, b) => a.along - b.along);
  const [low, high] = [mixes[0], mixes[mixes.length - 1]];
  return low && high ? { low, high } : null;
}

/** A quick test, without allocating: true when the cell lies wholly to one side of the line. */
function misses(cell: Cell, p: Place, ux: number, uy: number, length: number): boolean {
  let [left, right, before, after] = [true, true, true, true];
  for (let i = 0; i < cell.x.length; i++) {
    const [dx, dy] = [cell.x[i]! - p[0], cell.y[i]! - p[1]];
    const off = dy * ux - dx * uy;
    const along = dx * ux + dy * uy;
    if (off <= 1e-11) left = false;
    if (off >= -1e-11) right = false;
    if (along >= 0) before = false;
    if (along <= length) after = false;
  }
  return left || right || before || after;
}

/** The part of a crossing between two distances along the line. */
function stretch(cell: Cell, low: Mix, high: Mix, least: number, most: number): CellStretch {
  const from = Math.max(least, low.along);
  const to = Math.min(most, high.along);
  const span = high.along - low.along;
  const mixed = (values: readonly number[], mix: Mix): number =>
    values[mix.i]! + mix.share * (values[mix.j]! - values[mix.i]!);
  return {
    from,
    to,
    cell,
    at: (values) => {
      const [a, b] = [mixed(values, low), mixed(values, high)];
      const rate = span > 0 ? (b - a) / span : 0;
      return { start: a + rate * (from - low.along), end: a + rate * (to - low.along) };
    },
  };
}

/** Sorts stretches and drops what a line along cell edges meets twice. */
function inOrder(found: CellStretch[], length: number): CellStretch[] {
  found.sort((a, b) => a.from - b.from || b.to - a.to);
  const kept: CellStretch[] = [];
  let reached = 0;
  for (const each of found) {
    if (each.to <= reached + 1e-9 || reached >= length) continue;
    kept.push(each.from >= reached - 1e-9 ? each : startingAt(each, reached));
    reached = each.to;
  }
  return kept;
}

/** In order, and where stretches overlap (along cells' edges) the one with the lowest surface. */
function lowestOf(found: CellStretch[]): CellStretch[] {
  found.sort((a, b) => a.from - b.from || b.to - a.to);
  const overlap = found.some((each, i) => i > 0 && each.from < found[i - 1]!.to - 1e-6);
  if (!overlap) return inOrder(found, Infinity);
  const marks = found.flatMap(({ from, to }) => [from, to]).sort((a, b) => a - b);
  const kept: CellStretch[] = [];
  for (let i = 1; i < marks.length; i++) {
    const [from, to] = [marks[i - 1]!, marks[i]!];
    if (to - from <= 1e-9) continue;
    const over = found.filter((each) => each.from <= from + 1e-9 && each.to >= to - 1e-9);
    const parts = over.map((each) => endingAt(startingAt(each, from), to));
    const middle = (each: CellStretch): number => {
      const { start, end } = each.at(surfaceOf(each.cell));
      return start + end;
    };
    const [first, ...others] = parts;
    if (!first) continue;
    kept.push(others.reduce((low, each) => (middle(each) < middle(low) ? each : low), first));
  }
  return kept;
}

function endingAt(each: CellStretch, to: number): CellStretch {
  const share = (to - each.from) / (each.to - each.from);
  return {
    ...each,
    to,
    at: (values) => {
      const { start, end } = each.at(values);
      return { start, end: start + share * (end - start) };
    },
  };
}

function startingAt(each: CellStretch, from: number): CellStretch {
  const share = (from - each.from) / (each.to - each.from);
  return {
    ...each,
    from,
    at: (values) => {
      const { start, end } = each.at(values);
      return { start: start + share * (end - start), end };
    },
  };
}
