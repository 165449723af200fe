/**
 * The layered ground while it is worked on: cut down to a surface, filled up to one, and the
 * exact volume of every material moved. See DEVELOPERS.md, "The layered ground".
 */
import type { BaseGround } from "./base.js";
import { BLOCK_SIZE, blocksIn } from "./blocks.js";
import {
  carve,
  Chain,
  cutCell,
  raise,
  refillCell,
  tallyBelowBefore,
  type Carving,
  type Filling,
} from "./carve.js";
import { isCut, type Cell, type CellLayer, type CutCell } from "./cell.js";
import { ACROSS_LAYERS, Faces, UNDECIDED, UNTOUCHED } from "./faces.js";
import { outOfReach, resolve, type Piece } from "./resolve.js";
import { startCells } from "./start.js";
import type { CellStore } from "./store.js";
import { Sum } from "./sum.js";
import { narrow, type Bounds, type Purpose, type Surface } from "./surface.js";
import { Tally } from "./tally.js";

/** A box in plan, local m: west, south, east, north. */
export type Box = readonly [number, number, number, number];

/** A block of triangles of which some have been touched. */
interface TouchedBlock {
  number: number;
  /** Where the chains of its triangles start in the store's `chains`; −1 is a triangle as found. */
  chains: number;
  /** One bit for each triangle with cells that the present work has cut. */
  marked: number;
  /** No surface in the block is lower, or higher, m. */
  lowest: number;
  highest: number;
}

/** The level plane at no height: a floor for works that have none. */
const NO_FLOOR = { a: 0, b: 0, c: 0 };

export class LayeredGround {
  /** Blocks with triangles that works have touched; all others are as found. */
  private readonly touched = new Map<number, TouchedBlock>();
  private readonly store: CellStore;
  /** The natural layers' stack. */
  private readonly natural: number;
  private readonly faces: Faces;
  private readonly chain: Chain;
  /** Blocks with cells that the present work has cut, and what it has cut so far. */
  private cutBlocks: TouchedBlock[] = [];
  private area = new Sum();
  private deepest = 0;
  private tallest = 0;

  /** No surface anywhere is higher, or lower, than these, m local. */
  private ceiling: number;
  private bottom: number;

  constructor(readonly base: BaseGround) {
    this.store = base.takeStore();
    this.natural = this.store.stacks.of(base.layers);
    this.faces = new Faces(base, this.store);
    this.chain = new Chain(this.store);
    this.ceiling = base.tin.highest;
    this.bottom = base.tin.lowest;
  }

  /**
   * Hands the memory of this ground back for the next one. For who made it, once nothing that
   * reads it is left; it must not be used afterwards.
   */
  release(): void {
    this.touched.clear();
    this.base.returnStore(this.store);
  }

  /** The cells of one triangle as they now are. */
  cellsOf(triangle: number): readonly Cell[] {
    const first = this.firstOf(triangle);
    if (first < 0) return this.base.cellsOf(triangle);
    const cells: Cell[] = [];
    for (let cell = first; cell >= 0; cell = this.store.nextOf(cell)) {
      cells.push(this.store.read(cell));
    }
    return cells;
  }

  private firstOf(triangle: number): number {
    const block = this.touched.get(Math.floor(triangle / BLOCK_SIZE));
    return block ? this.store.chains[block.chains + (triangle % BLOCK_SIZE)]! : -1;
  }

  /** Numbers of the triangles that works have touched. */
  touchedTriangles(): number[] {
    const triangles: number[] = [];
    for (const { number, chains } of this.touched.values()) {
      for (let k = 0; k < BLOCK_SIZE; k++) {
        if (this.store.chains[chains + k]! >= 0) triangles.push(number * BLOCK_SIZE + k);
      }
    }
    return triangles;
  }

  /** No surface lies lower than this, earlier holes that stand open included, m local. */
  get lowest(): number {
    return this.bottom;
  }

  /** No surface in a box is higher than this, m local; everywhere when no box is given. */
  highestIn(box?: Box): number {
    if (!box) return this.ceiling;
    let highest = -Infinity;
    for (const number of blocksIn(this.base.tin, box)) {
      highest = Math.max(
        highest,
        this.touched.get(number)?.highest ?? this.base.tin.blocks.highest[number]!,
      );
    }
    return highest;
  }

  /** An empty tally of volumes for this ground's layers. */
  tally(): Tally {
    return new Tally(this.store);
  }

  /**
   * Takes the ground in `box` down to `surface` wherever it stands above it, adding what is taken
   * to `tally`. Cut cells remember the surface as it was before the present work, and the `part`
   * of it, whose floor's plane is `floor`. Returns the plan area, m², over which a built thing was
   * in the way (it is left standing, with what lies below it).
   */
  cut(surface: Surface, box: Box, tally: Tally, part = 0, floor = NO_FLOOR): number {
    const carving: Carving = {
      tally,
      hit: new Sum(),
      area: this.area,
      lowest: this.bottom,
      deepest: this.deepest,
      tallest: this.tallest,
      part,
      floor,
    };
    const plain = this.faces.aim(surface);
    for (const number of blocksIn(this.base.tin, box)) {
      const bounds = this.boundsOf(number);
      if (plain) {
        if (this.faces.narrowTo(bounds)) this.cutBlock(number, null, carving);
        continue;
      }
      const near = narrow(surface, bounds, "cut");
      if (near.is === "boundless" && near.level === "above") continue;
      this.faces.aim(near);
      this.cutBlock(number, near, carving);
    }
    this.bottom = carving.lowest;
    this.deepest = carving.deepest;
    this.tallest = carving.tallest;
    return carving.hit.value;
  }

  /** Cuts the triangles of a block; `near` is null where `faces` knows the surface. */
  private cutBlock(number: number, near: Surface | null, carving: Carving): void {
    const { store, faces } = this;
    const start = number * BLOCK_SIZE;
    const count = Math.min(BLOCK_SIZE, this.base.tin.triangles.length / 3 - start);
    let block = this.touched.get(number);
    let surface = near;
    for (let k = 0; k < count; k++) {
      const first = block ? store.chains[block.chains + k]! : -1;
      let made = first >= 0 ? UNDECIDED : faces.cut(start + k, carving);
      if (made === UNTOUCHED) continue;
      if (made === ACROSS_LAYERS) made = this.cutAcrossLayers(carving);
      else if (made === UNDECIDED) {
        surface ??= faces.surface();
        made = this.cutChain(first, start + k, surface, carving);
        if (made === UNTOUCHED) continue;
      }
      block ??= this.touch(number);
      store.chains[block.chains + k] = made;
      if (block.marked === 0) this.cutBlocks.push(block);
      block.marked |= 1 << k;
    }
    if (block && carving.lowest < block.lowest) block.lowest = carving.lowest;
  }

  private cutAcrossLayers(carving: Carving): number {
    this.chain.start();
    carve(this.store, this.faces.carrying(), this.faces.floor, carving, this.chain);
    return this.chain.first;
  }

  /** Cuts a triangle's cells, or those that it starts with; returns the new chain or UNTOUCHED. */
  private cutChain(first: number, triangle: number, near: Surface, carving: Carving): number {
    const { store, chain } = this;
    const mark = store.mark();
    const from = first >= 0 ? first : startCells(this.base, store, this.natural, triangle);
    if (this.allOutOfReach(from, near, "cut")) {
      if (first < 0) store.release(mark);
      return UNTOUCHED;
    }
    chain.start();
    let changed = false;
    for (let cell = from; cell >= 0; ) {
      // Adding a cell to a chain sets what follows it.
      const next = store.nextOf(cell);
      if (cutCell(store, cell, near, carving, chain)) changed = true;
      cell = next;
    }
    if (changed || first >= 0) return chain.first;
    store.release(mark);
    return UNTOUCHED;
  }

  private allOutOfReach(first: number, near: Surface, purpose: Purpose): boolean {
    for (let cell = first; cell >= 0; cell = this.store.nextOf(cell)) {
      if (!outOfReach(this.store, cell, near, purpose)) return false;
    }
    return true;
  }

  private touch(number: number): TouchedBlock {
    const { lowest, highest } = this.base.tin.blocks;
    const block = {
      number,
      chains: this.store.takeChains(BLOCK_SIZE),
      marked: 0,
      lowest: lowest[number]!,
      highest: highest[number]!,
    };
    this.touched.set(number, block);
    return block;
  }

  private boundsOf(number: number): Bounds {
    const { west, south, east, north, lowest, highest } = this.base.tin.blocks;
    const block = this.touched.get(number);
    return {
      west: west[number]!,
      south: south[number]!,
      east: east[number]!,
      north: north[number]!,
      lowest: block?.lowest ?? lowest[number]!,
      highest: block?.highest ?? highest[number]!,
    };
  }

  /**
   * Raises the cells that the present work has cut up to a surface, but never above the ground as
   * it was before this work. `surfaceFor` gives the surface of each part of the work; null means
   * the earlier ground itself, heaped above it by `crown` times the depth that goes in. Returns
   * what was put in.
   */
  refill(surfaceFor: (part: number) => Surface | null, layer: CellLayer, crown = 0): Tally {
    const filling = this.filling(layer, crown);
    for (const block of this.cutBlocks) {
      filling.highest = block.highest;
      for (let k = 0; k < BLOCK_SIZE; k++) {
        if ((block.marked & (1 << k)) !== 0) this.refillChain(block.chains + k, surfaceFor, filling);
      }
      this.raiseBounds(block, filling.highest);
    }
    return filling.tally;
  }

  private refillChain(
    at: number,
    surfaceFor: (part: number) => Surface | null,
    filling: Filling,
  ): void {
    const { store, chain } = this;
    chain.start();
    for (let cell = store.chains[at]!; cell >= 0; ) {
      const next = store.nextOf(cell);
      if (!store.isCut(cell)) chain.add(cell);
      else refillCell(store, cell, surfaceFor(store.partOf(cell)), filling, chain);
      cell = next;
    }
    store.chains[at] = chain.first;
  }

  private filling(layer: CellLayer, crown: number): Filling {
    const number = this.store.stacks.layerNumber(layer);
    return { tally: this.tally(), layer: number, crown, highest: -Infinity };
  }

  private raiseBounds(block: TouchedBlock, highest: number): void {
    if (highest > block.highest) block.highest = highest;
    if (highest > this.ceiling) this.ceiling = highest;
  }

  /**
   * Raises the ground in `box` up to `surface` wherever it stands below it. Returns what was put
   * in, and how much of that lies below the ground as it was before the present work.
   */
  fill(surface: Surface, box: Box, layer: CellLayer): { put: Tally; belowBefore: Tally } {
    const filling = this.filling(layer, 0);
    const belowBefore = this.tally();
    for (const number of blocksIn(this.base.tin, box)) {
      const near = narrow(surface, this.boundsOf(number), "fill");
      if (near.is === "boundless" && near.level === "below") continue;
      this.fillBlock(number, near, filling, belowBefore);
    }
    return { put: filling.tally, belowBefore };
  }

  private fillBlock(number: number, near: Surface, filling: Filling, belowBefore: Tally): void {
    const { tin } = this.base;
    const start = number * BLOCK_SIZE;
    const count = Math.min(BLOCK_SIZE, tin.triangles.length / 3 - start);
    let block = this.touched.get(number);
    filling.highest = -Infinity;
    for (let k = 0; k < count; k++) {
      const first = block ? this.store.chains[block.chains + k]! : -1;
      const made = this.fillChain(first, start + k, near, filling, belowBefore);
      if (made === UNTOUCHED) continue;
      block ??= this.touch(number);
      this.store.chains[block.chains + k] = made;
    }
    if (block) this.raiseBounds(block, filling.highest);
  }

  /** Fills a triangle's cells, or those that it starts with; returns the new chain or UNTOUCHED. */
  private fillChain(
    first: number,
    triangle: number,
    near: Surface,
    filling: Filling,
    belowBefore: Tally,
  ): number {
    const { store, chain } = this;
    const mark = store.mark();
    const from = first >= 0 ? first : startCells(this.base, store, this.natural, triangle);
    if (this.allOutOfReach(from, near, "fill")) {
      if (first < 0) store.release(mark);
      return UNTOUCHED;
    }
    chain.start();
    for (let cell = from; cell >= 0; ) {
      const next = store.nextOf(cell);
      this.fillCell(cell, near, filling, belowBefore, chain);
      cell = next;
    }
    return chain.first;
  }

  private fillCell(
    cell: number,
    near: Surface,
    filling: Filling,
    belowBefore: Tally,
    into: Chain,
  ): void {
    const { store } = this;
    const pieces: Piece[] = [];
    if (!outOfReach(store, cell, near, "fill")) resolve(store, cell, near, "fill", pieces);
    if (pieces.every((piece) => piece.level !== "plane")) {
      into.add(cell);
      return;
    }
    for (const piece of pieces) {
      if (piece.level !== "plane") {
        into.add(piece.cell);
        continue;
      }
      tallyBelowBefore(store, piece.cell, filling.layer, belowBefore);
      raise(store, piece.cell, filling, into);
    }
  }

  /** The cells that the present work has cut, for readers. */
  *markedCells(): Generator<{ triangle: number; cell: CutCell }> {
    for (const triangle of this.markedTriangles()) {
      for (const cell of this.cellsOf(triangle)) if (isCut(cell)) yield { triangle, cell };
    }
  }

  /** Numbers of the triangles with cells that the present work has cut. */
  markedTriangles(): number[] {
    const triangles: number[] = [];
    for (const { number, marked } of this.cutBlocks) {
      for (let k = 0; k < BLOCK_SIZE; k++) {
        if ((marked & (1 << k)) !== 0) triangles.push(number * BLOCK_SIZE + k);
      }
    }
    return triangles;
  }

  /** Those of them that lie at the outer edge of the survey. */
  markedAtEdge(): number[] {
    const triangles: number[] = [];
    for (const { number, marked } of this.cutBlocks) {
      for (const triangle of this.base.atEdge(number)) {
        if ((marked & (1 << triangle % BLOCK_SIZE)) !== 0) triangles.push(triangle);
      }
    }
    return triangles;
  }

  /**
   * Visits the corners of what the present work has cut: place, and depth below the ground before,
   * local m. `among` names the triangles to look at; all of the cut's when it is not given.
   */
  visitCut(
    visit: (x: number, y: number, depth: number, triangle: number) => void,
    among: readonly number[] = this.markedTriangles(),
  ): void {
    const { store } = this;
    for (const triangle of among) {
      for (let cell = this.firstOf(triangle); cell >= 0; cell = store.nextOf(cell)) {
        if (!store.isCut(cell)) continue;
        const { values } = store;
        const corners = store.cornersOf(cell);
        const [x, top, before] = [store.row(cell, 0), store.surfaceRow(cell), store.beforeRow(cell)];
        for (let i = 0; i < corners; i++) {
          const depth = values[before + i]! - values[top + i]!;
          visit(values[x + i]!, values[x + corners + i]!, depth, triangle);
        }
      }
    }
  }

  /** Ends the present work: its cells forget the ground before it. */
  finishWork(): void {
    for (const block of this.cutBlocks) block.marked = 0;
    this.cutBlocks = [];
    this.store.present++;
    this.area = new Sum();
    this.deepest = 0;
    this.tallest = 0;
  }

  /**
   * What the present work has cut: plan area, m²; its greatest depth, m; and the most that the
   * ground before it stands above its floor's plane within the cut, m (its tallest face).
   */
  markedExtent(): { area: number; deepest: number; tallest: number } {
    return { area: this.area.value, deepest: this.deepest, tallest: this.tallest };
  }
}
