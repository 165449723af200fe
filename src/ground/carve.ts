/** One cell cut, raised or refilled: the innermost work of the layered ground. */
import type { Bands } from "./bands.js";
import { outOfReach, resolve, type Piece } from "./resolve.js";
import type { CellStore } from "./store.js";
import type { Sum } from "./sum.js";
import type { Surface } from "./surface.js";
import type { Tally } from "./tally.js";

/** A chain of cells under construction. */
export class Chain {
  first = -1;

  constructor(private readonly store: CellStore) {}

  /** Begins a new chain. */
  start(): void {
    this.first = -1;
  }

  add(cell: number): void {
    this.store.setNext(cell, this.first);
    this.first = cell;
  }
}

/** What a cut yields besides the cells left: kept for a whole work. */
export interface Carving {
  /** Volumes taken out. */
  tally: Tally;
  /** Plan area over which a built thing was in the way, m². */
  hit: Sum;
  /** Plan area first cut by the present work, m². */
  area: Sum;
  /** Lowest surface left, and the greatest depth cut below the surface before the work, m. */
  lowest: number;
  deepest: number;
  /** The most that the ground before the work stands above the plane of the floor, m. */
  tallest: number;
  /** Part of the work that cuts, and the plane of its floor: z = a·x + b·y + c. */
  part: number;
  floor: { a: number; b: number; c: number };
}

/** Cuts one cell down to a surface. Returns whether anything was taken. */
export function cutCell(
  store: CellStore,
  cell: number,
  surface: Surface,
  carving: Carving,
  into: Chain,
): boolean {
  if (outOfReach(store, cell, surface, "cut")) {
    into.add(cell);
    return false;
  }
  return cutReached(store, cell, surface, carving, into);
}

/** Cuts a cell that the surface is thought to reach. Returns whether anything was taken. */
export function cutReached(
  store: CellStore,
  cell: number,
  surface: Surface,
  carving: Carving,
  into: Chain,
): boolean {
  const pieces: Piece[] = [];
  resolve(store, cell, surface, "cut", pieces);
  if (pieces.every((piece) => piece.level !== "plane")) {
    into.add(cell);
    return false;
  }
  for (const piece of pieces) {
    if (piece.level === "plane") carve(store, piece.cell, piece.floor, carving, into);
    else into.add(piece.cell);
  }
  return true;
}

/** Takes everything above the row that a cell carries off it. */
export function carve(
  store: CellStore,
  cell: number,
  floor: boolean,
  carving: Carving,
  into: Chain,
): void {
  if (store.markCut(cell, carving.part, floor)) carving.area.add(store.area(cell));
  carveLayers(store, cell, carving, into);
}

function carveLayers(store: CellStore, cell: number, carving: Carving, into: Chain): void {
  for (;;) {
    const stack = store.stackOf(cell);
    const top = store.surfaceRow(cell);
    const corners = store.cornersOf(cell);
    const level = top + corners;
    if (store.stacks.top(stack).structure) {
      carving.hit.add(store.area(cell));
      store.drop(cell, "last");
      into.add(cell);
      return;
    }
    const layer = store.stacks.topOf[stack]!;
    if (store.stacks.depth[stack]! > 1) {
      const bottom = top - corners;
      const { values, scratch } = store;
      for (let i = 0; i < corners; i++) scratch[i] = values[bottom + i]! - values[level + i]!;
      store.split(cell, scratch);
      const { below, above } = store;
      if (below >= 0 && above >= 0) {
        carveLayers(store, above, carving, into);
        carveLayers(store, below, carving, into);
        return;
      }
      if (above >= 0) {
        // The whole layer goes, and more below it.
        carving.tally.addPrism(layer, cell, bottom, top);
        store.takeTop(cell);
        continue;
      }
    }
    carving.tally.addPrism(layer, cell, level, top);
    noteDepth(store, cell, level, carving);
    store.lower(cell);
    into.add(cell);
    return;
  }
}

function noteDepth(store: CellStore, cell: number, level: number, carving: Carving): void {
  const { values } = store;
  const corners = store.cornersOf(cell);
  const x = store.row(cell, 0);
  const before = store.beforeRow(cell);
  const { a, b, c } = carving.floor;
  for (let i = 0; i < corners; i++) {
    const z = values[level + i]!;
    const ground = values[before + i]!;
    if (z < carving.lowest) carving.lowest = z;
    if (ground - z > carving.deepest) carving.deepest = ground - z;
    const above = ground - (a * values[x + i]! + b * values[x + corners + i]! + c);
    if (above > carving.tallest) carving.tallest = above;
  }
}

/** What is put in, and where. */
export interface Filling {
  tally: Tally;
  /** Layer number that goes in. */
  layer: number;
  /** Share of the depth of what goes in that it is heaped above the ground before the work. */
  crown: number;
  /** Highest surface made, m. */
  highest: number;
  /** Collects what goes in by height, or null. */
  bands: Bands | null;
}

/**
 * Raises a cell that the present work has cut up to a surface, but never above the ground before
 * the work; null means that ground itself, crowned.
 */
export function refillCell(
  store: CellStore,
  cell: number,
  surface: Surface | null,
  filling: Filling,
  into: Chain,
): void {
  if (surface === null) {
    raiseToBefore(store, cell, filling, into);
    return;
  }
  const pieces: Piece[] = [];
  resolve(store, cell, surface, "fill", pieces);
  if (pieces.every((piece) => piece.level === "below")) {
    into.add(cell);
    return;
  }
  for (const piece of pieces) {
    if (piece.level === "below") into.add(piece.cell);
    else if (piece.level === "above") raiseToBefore(store, piece.cell, filling, into);
    else raiseToLower(store, piece.cell, filling, into);
  }
}

/** Raises a cell to the row that it carries or the ground before the work, whichever is lower. */
function raiseToLower(store: CellStore, cell: number, filling: Filling, into: Chain): void {
  const corners = store.cornersOf(cell);
  const { values, scratch } = store;
  const level = store.carriedRow(cell);
  const before = store.beforeRow(cell);
  for (let i = 0; i < corners; i++) scratch[i] = values[level + i]! - values[before + i]!;
  store.split(cell, scratch);
  const { below, above } = store;
  if (below >= 0) raise(store, below, filling, into);
  if (above < 0) return;
  store.drop(above, "last");
  raiseToBefore(store, above, filling, into);
}

function raiseToBefore(store: CellStore, cell: number, filling: Filling, into: Chain): void {
  let corners = store.cornersOf(cell);
  let { values, scratch } = store;
  let before = store.beforeRow(cell);
  let top = store.surfaceRow(cell);
  for (let i = 0; i < corners; i++) scratch[i] = values[before + i]! - values[top + i]!;
  store.split(cell, scratch);
  const { below, above } = store;
  if (below >= 0) into.add(below);
  if (above < 0) return;
  corners = store.cornersOf(above);
  ({ values, scratch } = store);
  before = store.beforeRow(above);
  top = store.surfaceRow(above);
  for (let i = 0; i < corners; i++) {
    const z = values[before + i]!;
    scratch[i] = z + filling.crown * (z - values[top + i]!);
  }
  raise(store, store.carrying(above), filling, into);
}

/** The row that a cell carries becomes its surface. */
export function raise(store: CellStore, cell: number, filling: Filling, into: Chain): void {
  const level = store.carriedRow(cell);
  filling.tally.addPrism(filling.layer, cell, store.surfaceRow(cell), level);
  filling.bands?.add(store, cell, store.surfaceRow(cell), level);
  const { values } = store;
  for (let i = 0; i < store.cornersOf(cell); i++) {
    if (values[level + i]! > filling.highest) filling.highest = values[level + i]!;
  }
  store.raise(cell, filling.layer);
  into.add(cell);
}

/**
 * Adds the part of a prism between the surface and the carried row that lies below the ground
 * before the present work; nothing where the work has not cut.
 */
export function tallyBelowBefore(
  store: CellStore,
  cell: number,
  layer: number,
  tally: Tally,
): void {
  if (!store.isCut(cell)) return;
  const corners = store.cornersOf(cell);
  const { values, scratch } = store;
  const level = store.carriedRow(cell);
  const before = store.beforeRow(cell);
  for (let i = 0; i < corners; i++) scratch[i] = values[level + i]! - values[before + i]!;
  const mark = store.mark();
  store.split(cell, scratch);
  const { below, above } = store;
  if (below >= 0) tally.addPrism(layer, below, store.surfaceRow(below), store.carriedRow(below));
  if (above >= 0) tally.addPrism(layer, above, store.surfaceRow(above), store.beforeRow(above));
  store.release(mark);
}
