/**
 * Cells in flat arrays. A cell is a record of rows, one number for each corner in every row:
 *
 *     x | y | before | tops, bottom layer first | carried
 *
 * and a short head (where the rows start, how many corners, which stack of layers …). Cutting a
 * cell in two mixes every row along the same edges, so all that is linear on a cell stays so.
 * Records are only ever added; a whole edit's records are dropped at once. Nothing is left to
 * collect, and cells made one after the other lie side by side in memory.
 *
 * The carried rows are a stack used while a surface is being worked out. They come last, so that
 * one that is to become the cell's surface is already in its place.
 */
import type { Cell, CellLayer } from "./cell.js";
import { mixRow, Parting, type Mix } from "./parting.js";
import { Stacks } from "./stacks.js";

/** What the surface of a cell is. */
export const FOUND = 0;
export const DUG = 1;
export const FILLED = 2;
const FACES = ["found", "dug", "filled"] as const;
/** Flag: the surface is a floor (and not a wall) of the work that dug it. */
export const FLOOR = 4;
const FACE_BITS = 3;
const SURFACE_BITS = FACE_BITS | FLOOR;

/** Fields of a head. */
const AT = 0;
const CORNERS = 1;
const CARRIED = 2;
const STACK = 3;
const FLAGS = 4;
const PART = 5;
const NEXT = 6;
/** The work that last cut the cell, and for which the row `before` holds the surface before it. */
const CUT_BY = 7;
const HEAD = 8;

/** No work has cut the cell. */
const NOBODY = -1;

/** Rows ahead of the layers' tops. */
const BEFORE = 2;
const TOPS = 3;

export class CellStore {
  /** All rows. Replaced when it grows: read it again after making a record. */
  values = new Float64Array(1 << 14);
  private heads = new Int32Array(1 << 12);
  private used = 0;
  private count = 0;
  /** First cells of the chains of each touched block's triangles, a block after another. */
  chains = new Int32Array(1 << 10);
  private slots = 0;
  /** Number of the present work: cells that it has cut bear it. */
  present = 0;
  readonly stacks = new Stacks();

  /** The parts that `split` made: at most zero, at least zero; −1 where there is none. */
  below = -1;
  above = -1;
  private readonly parting = new Parting();
  /** One number per corner, for whoever prepares a split. */
  scratch = new Float64Array(64);
  spare = new Float64Array(64);

  /** `rounding`: corner values within this of zero lie on the cut, m. */
  constructor(readonly rounding: number) {}

  /** Forgets every record, keeping the memory. */
  clear(): void {
    this.used = 0;
    this.count = 0;
    this.slots = 0;
    this.present = 0;
  }

  /** Room in `chains` for so many triangles, all of them without cells of their own. */
  takeChains(triangles: number): number {
    const slot = this.slots;
    this.slots += triangles;
    if (this.slots > this.chains.length) {
      const grown = new Int32Array(2 * this.slots);
      grown.set(this.chains);
      this.chains = grown;
    }
    this.chains.fill(-1, slot, this.slots);
    return slot;
  }

  /** A mark to go back to when records turn out not to be wanted. */
  mark(): readonly [number, number] {
    return [this.used, this.count];
  }

  /** Forgets the records made since a mark. */
  release([used, count]: readonly [number, number]): void {
    this.used = used;
    this.count = count;
  }

  /** A new record, its rows unset. */
  make(corners: number, stack: number, carried: number, flags: number, part: number): number {
    const size = corners * (TOPS + this.stacks.depth[stack]! + carried);
    this.reserve(size, corners);
    const cell = this.count++;
    const { heads } = this;
    const h = cell * HEAD;
    heads[h + AT] = this.used;
    heads[h + CORNERS] = corners;
    heads[h + CARRIED] = carried;
    heads[h + STACK] = stack;
    heads[h + FLAGS] = flags;
    heads[h + PART] = part;
    heads[h + NEXT] = -1;
    heads[h + CUT_BY] = NOBODY;
    this.used += size;
    return cell;
  }

  /** A new record like another, with other corners, its rows unset. */
  private makeLike(cell: number, corners: number, carried: number): number {
    const h = cell * HEAD;
    const { heads } = this;
    const stack = heads[h + STACK]!;
    const made = this.make(corners, stack, carried, heads[h + FLAGS]!, heads[h + PART]!);
    // `make` may have replaced the heads by a larger array.
    this.heads[made * HEAD + CUT_BY] = this.heads[h + CUT_BY]!;
    return made;
  }

  private reserve(size: number, corners: number): void {
    if (this.used + size > this.values.length) {
      const grown = new Float64Array(Math.max(2 * this.values.length, this.used + size));
      grown.set(this.values);
      this.values = grown;
    }
    if ((this.count + 1) * HEAD > this.heads.length) {
      const grown = new Int32Array(2 * this.heads.length);
      grown.set(this.heads);
      this.heads = grown;
    }
    if (2 * corners + 4 > this.scratch.length) this.widen(4 * corners + 8);
  }

  private widen(room: number): void {
    const scratch = new Float64Array(room);
    scratch.set(this.scratch);
    this.scratch = scratch;
    const spare = new Float64Array(room);
    spare.set(this.spare);
    this.spare = spare;
  }

  cornersOf(cell: number): number {
    return this.heads[cell * HEAD + CORNERS]!;
  }

  stackOf(cell: number): number {
    return this.heads[cell * HEAD + STACK]!;
  }

  depthOf(cell: number): number {
    return this.stacks.depth[this.stackOf(cell)]!;
  }

  partOf(cell: number): number {
    return this.heads[cell * HEAD + PART]!;
  }

  nextOf(cell: number): number {
    return this.heads[cell * HEAD + NEXT]!;
  }

  setNext(cell: number, next: number): void {
    this.heads[cell * HEAD + NEXT] = next;
  }

  isFloor(cell: number): boolean {
    return (this.heads[cell * HEAD + FLAGS]! & FLOOR) !== 0;
  }

  /** True for a cell that the present work has cut: it knows the surface before. */
  isCut(cell: number): boolean {
    return this.heads[cell * HEAD + CUT_BY] === this.present;
  }

  faceOf(cell: number): number {
    return this.heads[cell * HEAD + FLAGS]! & FACE_BITS;
  }

  /** Where a row starts in `values`: 0 is x, 1 is y. */
  row(cell: number, row: number): number {
    const h = cell * HEAD;
    return this.heads[h + AT]! + row * this.heads[h + CORNERS]!;
  }

  /** Where the row of the surface before the present work starts; only where `isCut`. */
  beforeRow(cell: number): number {
    return this.row(cell, BEFORE);
  }

  /** Where the row of a layer's top starts, layer 0 at the bottom. */
  topRow(cell: number, layer: number): number {
    return this.row(cell, TOPS + layer);
  }

  /** Where the row of the surface starts. */
  surfaceRow(cell: number): number {
    const h = cell * HEAD;
    const { heads } = this;
    const rows = TOPS - 1 + this.stacks.depth[heads[h + STACK]!]!;
    return heads[h + AT]! + rows * heads[h + CORNERS]!;
  }

  /** Where the last carried row starts, or the one `back` before it. */
  carriedRow(cell: number, back = 0): number {
    const h = cell * HEAD;
    const rows = TOPS + this.depthOf(cell) + this.heads[h + CARRIED]!;
    return this.heads[h + AT]! + (rows - 1 - back) * this.heads[h + CORNERS]!;
  }

  /** A copy of a cell with the scratch row carried on top. */
  carrying(cell: number): number {
    const h = cell * HEAD;
    const { heads } = this;
    const corners = heads[h + CORNERS]!;
    const carried = heads[h + CARRIED]!;
    const stack = heads[h + STACK]!;
    const from = heads[h + AT]!;
    const made = this.makeLike(cell, corners, carried + 1);
    const to = this.row(made, 0);
    const { values, scratch } = this;
    const size = corners * (TOPS + this.stacks.depth[stack]! + carried);
    for (let i = 0; i < size; i++) values[to + i] = values[from + i]!;
    for (let i = 0; i < corners; i++) values[to + size + i] = scratch[i]!;
    return made;
  }

  /** Puts `row` (one number per corner) in place of the last carried row. */
  layLast(cell: number, row: Float64Array): void {
    const corners = this.cornersOf(cell);
    const last = this.carriedRow(cell);
    const { values } = this;
    for (let i = 0; i < corners; i++) values[last + i] = row[i]!;
  }

  /** Drops the last carried row, or the one under it, which the last then replaces. */
  drop(cell: number, which: "last" | "under"): void {
    if (which === "under") {
      const corners = this.cornersOf(cell);
      const last = this.carriedRow(cell);
      const { values } = this;
      for (let i = 0; i < corners; i++) values[last - corners + i] = values[last + i]!;
    }
    this.heads[cell * HEAD + CARRIED] = this.heads[cell * HEAD + CARRIED]! - 1;
  }

  /** The one carried row becomes the surface of a layer put on top. */
  raise(cell: number, layer: number): void {
    const h = cell * HEAD;
    if (this.heads[h + CARRIED] !== 1) {
      throw new Error(`cell carries ${this.heads[h + CARRIED]} rows, expected 1`);
    }
    const flags = this.heads[h + FLAGS]!;
    this.heads[h + CARRIED] = 0;
    this.heads[h + STACK] = this.stacks.put(this.heads[h + STACK]!, layer, flags & SURFACE_BITS);
    this.heads[h + FLAGS] = (flags & ~SURFACE_BITS) | FILLED;
  }

  /** Takes the top layer off; the carried rows move down by one. */
  takeTop(cell: number): void {
    const h = cell * HEAD;
    const corners = this.heads[h + CORNERS]!;
    const top = this.surfaceRow(cell);
    const size = corners * this.heads[h + CARRIED]!;
    const { values } = this;
    for (let i = 0; i < size; i++) values[top + i] = values[top + corners + i]!;
    this.heads[h + STACK] = this.stacks.under[this.heads[h + STACK]!]!;
  }

  /** The one carried row becomes the top of the layer that is the surface. */
  lower(cell: number): void {
    const h = cell * HEAD;
    const corners = this.heads[h + CORNERS]!;
    const top = this.surfaceRow(cell);
    const { values } = this;
    for (let i = 0; i < corners; i++) values[top + i] = values[top + corners + i]!;
    this.heads[h + CARRIED] = 0;
  }

  /** Says that the present work has cut a cell; the row `before` is the caller's to set. */
  setCutNow(cell: number): void {
    this.heads[cell * HEAD + CUT_BY] = this.present;
  }

  /** Marks a cell as cut by the present work. True when it had not been cut by it before. */
  markCut(cell: number, part: number, floor: boolean): boolean {
    const h = cell * HEAD;
    const flags = this.heads[h + FLAGS]!;
    this.heads[h + PART] = part;
    this.heads[h + FLAGS] = (flags & ~SURFACE_BITS) | DUG | (floor ? FLOOR : 0);
    if (this.heads[h + CUT_BY] === this.present) return false;
    this.heads[h + CUT_BY] = this.present;
    const corners = this.heads[h + CORNERS]!;
    const before = this.beforeRow(cell);
    const top = this.surfaceRow(cell);
    const { values } = this;
    for (let i = 0; i < corners; i++) values[before + i] = values[top + i]!;
    return true;
  }

  /**
   * Cuts a cell along the line where `value` (linear, one number per corner) is zero, into `below`
   * and `above`. A cell wholly on one side is that part itself; one that lies on zero is below.
   */
  split(cell: number, value: Float64Array): void {
    const corners = this.cornersOf(cell);
    const { rounding } = this;
    let anyBelow = false;
    let anyAbove = false;
    for (let i = 0; i < corners; i++) {
      const at = value[i]!;
      if (at > rounding) anyAbove = true;
      else if (at < -rounding) anyBelow = true;
    }
    if (!anyAbove) {
      this.below = cell;
      this.above = -1;
      return;
    }
    if (!anyBelow) {
      this.below = -1;
      this.above = cell;
      return;
    }
    this.parting.plan(corners, value, rounding);
    this.below = this.mixed(cell, this.parting.underside);
    this.above = this.mixed(cell, this.parting.upperside);
  }

  /**
   * Cuts a cell that `value` is known to cross, as `split` does. The part `on` one side carries `row`
   * (one number per corner): in place of its last carried row, or on top of what it carries.
   */
  splitLaying(
    cell: number,
    value: Float64Array,
    row: Float64Array,
    on: "below" | "above",
    how: "in place" | "on top",
  ): void {
    const { parting } = this;
    parting.plan(this.cornersOf(cell), value, this.rounding);
    const kept = how === "in place" ? 1 : 0;
    const { underside, upperside } = parting;
    this.below =
      on === "below" ? this.mixedLaying(cell, underside, row, kept) : this.mixed(cell, underside);
    this.above =
      on === "above" ? this.mixedLaying(cell, upperside, row, kept) : this.mixed(cell, upperside);
  }

  /** A part of a cell with the last `dropped` of its carried rows left out and `row` laid on top. */
  private mixedLaying(cell: number, mix: Mix, row: Float64Array, dropped: number): number {
    const carried = this.heads[cell * HEAD + CARRIED]! - dropped;
    const made = this.makeLike(cell, mix.count, carried + 1);
    this.mixRows(cell, made, mix, TOPS + this.depthOf(cell) + carried);
    mixRow(row, 0, this.values, this.carriedRow(made), mix);
    return made;
  }

  private mixed(cell: number, mix: Mix): number {
    const carried = this.heads[cell * HEAD + CARRIED]!;
    const made = this.makeLike(cell, mix.count, carried);
    this.mixRows(cell, made, mix, TOPS + this.depthOf(cell) + carried);
    return made;
  }

  private mixRows(cell: number, made: number, mix: Mix, rows: number): void {
    const { values } = this;
    const corners = this.cornersOf(cell);
    let source = this.row(cell, 0);
    let target = this.row(made, 0);
    for (let r = 0; r < rows; r++) {
      mixRow(values, source, values, target, mix);
      source += corners;
      target += mix.count;
    }
  }

  /** Area of a cell in plan, m². */
  area(cell: number): number {
    const corners = this.cornersOf(cell);
    const x = this.row(cell, 0);
    const y = x + corners;
    const { values } = this;
    const x0 = values[x]!;
    const y0 = values[y]!;
    let twice = 0;
    for (let i = 1; i + 1 < corners; i++) {
      twice +=
        (values[x + i]! - x0) * (values[y + i + 1]! - y0) -
        (values[x + i + 1]! - x0) * (values[y + i]! - y0);
    }
    return twice / 2;
  }

  /** A cell as an object of its own, for readers. */
  read(cell: number): Cell {
    const layers: readonly CellLayer[] = this.stacks.list(this.stackOf(cell));
    const tops: number[][] = [];
    for (let i = 0; i < layers.length; i++) tops.push(this.readRow(cell, this.topRow(cell, i)));
    return {
      x: this.readRow(cell, this.row(cell, 0)),
      y: this.readRow(cell, this.row(cell, 1)),
      layers,
      tops,
      before: this.isCut(cell) ? this.readRow(cell, this.beforeRow(cell)) : null,
      part: this.partOf(cell),
      face: FACES[this.faceOf(cell)]!,
      floor: this.isFloor(cell),
    };
  }

  private readRow(cell: number, start: number): number[] {
    const corners = this.cornersOf(cell);
    const row = new Array<number>(corners);
    for (let i = 0; i < corners; i++) row[i] = this.values[start + i]!;
    return row;
  }
}
