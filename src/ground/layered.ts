/**
 * The layered ground while it is worked on: cut down to a surface, filled up to one, and the
 * exact volume of every material moved. See DEVELOPERS.md, "The layered ground".
 */
import type { BaseGround } from "./base.js";
import { Bands } from "./bands.js";
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
import type { Place } from "./outline.js";
import { regionRings } from "./region.js";
import { outOfReach, resolve, type Piece } from "./resolve.js";
import { startCells, wholeTriangle } from "./start.js";
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

/** Volumes are told by bands of depth this thick, m. */
const DEPTH_BAND = 0.5;

/** The level plane at no height: a floor for works that have none. */
const NO_FLOOR = { a: 0, b: 0, c: 0 };

/** Pieces of a cell of which some stand below a surface that they are to be raised to, or null. */
function raisedPieces(store: CellStore, cell: number, near: Surface): Piece[] | null {
  if (outOfReach(store, cell, near, "fill")) return null;
  const pieces: Piece[] = [];
  resolve(store, cell, near, "fill", pieces);
  return pieces.some((piece) => piece.level === "plane") ? pieces : null;
}

/**
 * Sets the scratch row to what a cell is to be shaved down to; false when there is nothing to take:
 * a built thing on top, or another layer than the site's own topmost.
 */
function readyToShave(
  store: CellStore,
  cell: number,
  depth: number | "top layer",
  topmost: number,
): boolean {
  const stack = store.stackOf(cell);
  if (store.stacks.top(stack).structure) return false;
  if (depth !== "top layer") {
    setAboveSurface(store, cell, -depth);
    return true;
  }
  if (store.stacks.topOf[stack] !== topmost || store.stacks.depth[stack]! < 2) return false;
  const corners = store.cornersOf(cell);
  const top = store.surfaceRow(cell);
  const { values, scratch } = store;
  let thickest = 0;
  for (let i = 0; i < corners; i++) {
    scratch[i] = values[top - corners + i]!;
    thickest = Math.max(thickest, values[top + i]! - scratch[i]!);
  }
  return thickest > store.rounding;
}

function setAboveSurface(store: CellStore, cell: number, by: number): void {
  const top = store.surfaceRow(cell);
  const { values, scratch } = store;
  for (let i = 0; i < store.cornersOf(cell); i++) scratch[i] = values[top + i]! + by;
}

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
  /** What the present work has put in so far, by height above what it was put on. */
  private filled = new Bands(DEPTH_BAND);

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
    const carving = this.carving(tally, part, floor);
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
    this.noteCarving(carving);
    return carving.hit.value;
  }

  private carving(tally: Tally, part: number, floor: Carving["floor"]): Carving {
    return {
      tally,
      hit: new Sum(),
      area: this.area,
      lowest: this.bottom,
      deepest: this.deepest,
      tallest: this.tallest,
      part,
      floor,
    };
  }

  private noteCarving({ lowest, deepest, tallest }: Carving): void {
    this.bottom = lowest;
    this.deepest = deepest;
    this.tallest = tallest;
  }

  /** Cuts the triangles of a block; `near` is null where `faces` knows the surface. */
  private cutBlock(number: number, near: Surface | null, carving: Carving): void {
    const { store, faces } = this;
    const start = number * BLOCK_SIZE;
    const count = this.trianglesOf(number);
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
      this.markBlock(block, k);
    }
    faces.settle(carving);
    if (block && carving.lowest < block.lowest) block.lowest = carving.lowest;
  }

  private cutAcrossLayers(carving: Carving): number {
    this.chain.start();
    carve(this.store, this.faces.carrying(), this.faces.floor, carving, this.chain);
    return this.chain.first;
  }

  /** Cuts a triangle's cells, or those that it starts with; returns the new chain or UNTOUCHED. */
  private cutChain(first: number, triangle: number, around: Surface, carving: Carving): number {
    const { store, chain } = this;
    const near = this.nearer(around, triangle, "cut");
    if (this.leftAlone(first, triangle, near, "cut")) return UNTOUCHED;
    const mark = store.mark();
    const from = first >= 0 ? first : startCells(this.base, store, this.natural, triangle);
    chain.start();
    let changed = false;
    for (let cell = from; cell >= 0;) {
      // Adding a cell to a chain sets what follows it.
      const next = store.nextOf(cell);
      if (cutCell(store, cell, near, carving, chain)) changed = true;
      cell = next;
    }
    if (changed || first >= 0) return chain.first;
    store.release(mark);
    return UNTOUCHED;
  }

  /** What of a surface that matters in a triangle's block matters in the triangle. */
  private nearer(near: Surface, triangle: number, purpose: Purpose): Surface {
    const { x, y, triangles } = this.base.tin;
    const number = Math.floor(triangle / BLOCK_SIZE);
    const a = triangles[3 * triangle]!;
    const b = triangles[3 * triangle + 1]!;
    const c = triangles[3 * triangle + 2]!;
    const block = this.touched.get(number) ?? null;
    const { lowest, highest } = this.base.tin.blocks;
    const bounds = {
      west: Math.min(x[a]!, x[b]!, x[c]!),
      south: Math.min(y[a]!, y[b]!, y[c]!),
      east: Math.max(x[a]!, x[b]!, x[c]!),
      north: Math.max(y[a]!, y[b]!, y[c]!),
      lowest: block ? block.lowest : lowest[number]!,
      highest: block ? block.highest : highest[number]!,
    };
    return narrow(near, bounds, purpose);
  }

  /** A sure but not complete test: true when a surface leaves all of a triangle's cells alone. */
  private leftAlone(first: number, triangle: number, near: Surface, purpose: Purpose): boolean {
    const { store } = this;
    if (near.is === "boundless") return (near.level === "above") === (purpose === "cut");
    if (first < 0) {
      // A triangle as found is asked as a whole, before it is parted by the probes' regions.
      const mark = store.mark();
      const whole = wholeTriangle(this.base, store, this.natural, triangle);
      const alone = outOfReach(store, whole, near, purpose);
      store.release(mark);
      return alone;
    }
    for (let cell = first; cell >= 0; cell = store.nextOf(cell)) {
      if (!outOfReach(store, cell, near, purpose)) return false;
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
        if ((block.marked & (1 << k)) !== 0)
          this.refillChain(block.chains + k, surfaceFor, filling);
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
    for (let cell = store.chains[at]!; cell >= 0;) {
      const next = store.nextOf(cell);
      if (!store.isCut(cell)) chain.add(cell);
      else refillCell(store, cell, surfaceFor(store.partOf(cell)), filling, chain);
      cell = next;
    }
    store.chains[at] = chain.first;
  }

  private filling(layer: CellLayer, crown: number): Filling {
    const number = this.store.stacks.layerNumber(layer);
    // A tank put in is no fill that anyone spreads and compacts.
    const bands = layer.structure ? null : this.filled;
    return { tally: this.tally(), layer: number, crown, highest: -Infinity, bands };
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
    const { store } = this;
    this.edit(surface, box, "fill", filling, (cell, near, into) => {
      const pieces = raisedPieces(store, cell, near);
      if (pieces === null) return false;
      for (const piece of pieces) {
        if (piece.level !== "plane") {
          into.add(piece.cell);
          continue;
        }
        tallyBelowBefore(store, piece.cell, filling.layer, belowBefore);
        raise(store, piece.cell, filling, into);
      }
      return true;
    });
    return { put: filling.tally, belowBefore };
  }

  /** What `fill` would put in, m³, and over which plan area, m²; nothing is changed. */
  measureFill(surface: Surface, box: Box): { volume: number; area: number } {
    const { store } = this;
    const tally = this.tally();
    const area = new Sum();
    this.look(surface, box, "fill", (cell, near) => {
      for (const piece of raisedPieces(store, cell, near) ?? []) {
        if (piece.level !== "plane") continue;
        const level = store.carriedRow(piece.cell);
        tally.addPrism(0, piece.cell, store.surfaceRow(piece.cell), level);
        area.add(store.area(piece.cell));
      }
    });
    return { volume: tally.volume, area: area.value };
  }

  /**
   * Takes the top off the ground where `region` (vertical walls only) is −∞: a depth, m, or the
   * whole of the site's own top layer where it still lies on top. Counts as the present work's cut.
   */
  shave(region: Surface, box: Box, depth: number | "top layer", tally: Tally): void {
    const { store } = this;
    const carving = this.carving(tally, 0, NO_FLOOR);
    const topmost = store.stacks.topOf[this.natural]!;
    this.edit(region, box, "cut", null, (cell, near, into) => {
      const pieces: Piece[] = [];
      resolve(store, cell, near, "cut", pieces);
      if (pieces.every((piece) => piece.level !== "below")) return false;
      for (const piece of pieces) {
        const ready = piece.level === "below" && readyToShave(store, piece.cell, depth, topmost);
        if (ready) carve(store, store.carrying(piece.cell), true, carving, into);
        else into.add(piece.cell);
      }
      return true;
    });
    // A strip has no floor's plane to stand above: its face is as tall as it is deep.
    carving.tallest = carving.deepest;
    this.noteCarving(carving);
  }

  /** Plan area, m², of bare earth where `region` (vertical walls only) is −∞. */
  bareArea(region: Surface, box: Box): number {
    const { store } = this;
    const area = new Sum();
    this.look(region, box, "cut", (cell, near) => {
      if (store.stacks.top(store.stackOf(cell)).structure) return;
      const pieces: Piece[] = [];
      resolve(store, cell, near, "cut", pieces);
      for (const piece of pieces) if (piece.level === "below") area.add(store.area(piece.cell));
    });
    return area.value;
  }

  /** Spreads a layer of one thickness, m, on the bare earth where `region` is −∞. */
  cover(region: Surface, box: Box, thickness: number, layer: CellLayer): Tally {
    const filling = this.filling(layer, 0);
    const { store } = this;
    this.edit(region, box, "cut", filling, (cell, near, into) => {
      if (store.stacks.top(store.stackOf(cell)).structure) return false;
      const pieces: Piece[] = [];
      resolve(store, cell, near, "cut", pieces);
      if (pieces.every((piece) => piece.level !== "below")) return false;
      for (const piece of pieces) {
        if (piece.level === "below") {
          setAboveSurface(store, piece.cell, thickness);
          raise(store, store.carrying(piece.cell), filling, into);
        } else into.add(piece.cell);
      }
      return true;
    });
    return filling.tally;
  }

  /**
   * Hands every cell in `box` near a surface to `change`, with what matters of the surface there.
   * It adds to the chain what the cell becomes and returns true, or returns false to let it be.
   */
  private edit(
    surface: Surface,
    box: Box,
    purpose: Purpose,
    filling: Filling | null,
    change: (cell: number, near: Surface, into: Chain) => boolean,
  ): void {
    for (const number of blocksIn(this.base.tin, box)) {
      const near = narrow(surface, this.boundsOf(number), purpose);
      if (near.is === "boundless" && (near.level === "above") === (purpose === "cut")) continue;
      if (filling) filling.highest = -Infinity;
      for (let k = 0; k < this.trianglesOf(number); k++) {
        const made = this.editChain(number * BLOCK_SIZE + k, near, purpose, change);
        if (made === UNTOUCHED) continue;
        const block = this.touched.get(number) ?? this.touch(number);
        this.store.chains[block.chains + k] = made;
        if (filling) this.raiseBounds(block, filling.highest);
        else this.markBlock(block, k);
      }
    }
  }

  private trianglesOf(number: number): number {
    return Math.min(BLOCK_SIZE, this.base.tin.triangles.length / 3 - number * BLOCK_SIZE);
  }

  private markBlock(block: TouchedBlock, k: number): void {
    if (block.marked === 0) this.cutBlocks.push(block);
    block.marked |= 1 << k;
  }

  private editChain(
    triangle: number,
    around: Surface,
    purpose: Purpose,
    change: (cell: number, near: Surface, into: Chain) => boolean,
  ): number {
    const { store, chain } = this;
    const near = this.nearer(around, triangle, purpose);
    const first = this.firstOf(triangle);
    if (this.leftAlone(first, triangle, near, purpose)) return UNTOUCHED;
    const mark = store.mark();
    const from = first >= 0 ? first : startCells(this.base, store, this.natural, triangle);
    chain.start();
    let changed = false;
    for (let cell = from; cell >= 0;) {
      const next = store.nextOf(cell);
      if (change(cell, near, chain)) changed = true;
      else chain.add(cell);
      cell = next;
    }
    if (changed || first >= 0) return chain.first;
    store.release(mark);
    return UNTOUCHED;
  }

  /**
   * Shows every cell in `box` near a surface, with what matters of it there; changes nothing. A
   * triangle as found is shown as one cell, of which only the surface may be asked.
   */
  private look(
    surface: Surface,
    box: Box,
    purpose: Purpose,
    see: (cell: number, near: Surface) => void,
  ): void {
    const { store } = this;
    for (const number of blocksIn(this.base.tin, box)) {
      const around = narrow(surface, this.boundsOf(number), purpose);
      if (around.is === "boundless" && (around.level === "above") === (purpose === "cut")) continue;
      for (let k = 0; k < this.trianglesOf(number); k++) {
        const mark = store.mark();
        const triangle = number * BLOCK_SIZE + k;
        const near = this.nearer(around, triangle, purpose);
        const first = this.firstOf(triangle);
        if (this.leftAlone(first, triangle, near, purpose)) continue;
        let cell = first >= 0 ? first : wholeTriangle(this.base, store, this.natural, triangle);
        for (; cell >= 0; cell = store.nextOf(cell)) see(cell, near);
        store.release(mark);
      }
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
        if ((marked & (1 << (triangle % BLOCK_SIZE))) !== 0) triangles.push(triangle);
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
        const [x, top, before] = [
          store.row(cell, 0),
          store.surfaceRow(cell),
          store.beforeRow(cell),
        ];
        for (let i = 0; i < corners; i++) {
          const depth = values[before + i]! - values[top + i]!;
          visit(values[x + i]!, values[x + corners + i]!, depth, triangle);
        }
      }
    }
  }

  /**
   * Outlines in plan of what the present work has cut, or of the floor that it has laid bare, local
   * m: outer rings counter-clockwise, holes clockwise.
   */
  cutRings(of: "daylight" | "floor"): Place[][] {
    const { store } = this;
    const source = { tin: this.base.tin, store, blocks: this.cutBlocks };
    return of === "daylight"
      ? regionRings(source, (cell) => store.isCut(cell))
      : regionRings(source, (cell) => store.isCut(cell) && store.isFloor(cell));
  }

  /** Outlines in plan of where a layer lies on top, local m. */
  placedRings(layer: CellLayer): Place[][] {
    const { store } = this;
    const number = store.stacks.layerNumber(layer);
    const blocks = [...this.touched.values()].map(({ number: block, chains }) => {
      let marked = 0;
      for (let k = 0; k < BLOCK_SIZE; k++) if (store.chains[chains + k]! >= 0) marked |= 1 << k;
      return { number: block, chains, marked };
    });
    const source = { tin: this.base.tin, store, blocks };
    return regionRings(source, (cell) => store.stacks.topOf[store.stackOf(cell)] === number);
  }

  /** What the present work has cut, by depth below the ground before it. */
  cutBands(): Bands {
    const { store } = this;
    const bands = new Bands(DEPTH_BAND);
    for (const { chains, marked } of this.cutBlocks) {
      for (let k = 0; k < BLOCK_SIZE; k++) {
        if ((marked & (1 << k)) === 0) continue;
        for (let cell = store.chains[chains + k]!; cell >= 0; cell = store.nextOf(cell)) {
          if (store.isCut(cell)) {
            bands.add(store, cell, store.surfaceRow(cell), store.beforeRow(cell));
          }
        }
      }
    }
    return bands;
  }

  /** What the present work has put in, by height above what each part was put on. */
  filledBands(): Bands {
    return this.filled;
  }

  /** Ends the present work: its cells forget the ground before it. */
  finishWork(): void {
    for (const block of this.cutBlocks) block.marked = 0;
    this.cutBlocks = [];
    this.store.present++;
    this.area = new Sum();
    this.deepest = 0;
    this.tallest = 0;
    this.filled = new Bands(DEPTH_BAND);
  }

  /**
   * What the present work has cut: plan area, m²; its greatest depth, m; and the most that the
   * ground before it stands above its floor's plane within the cut, m (its tallest face).
   */
  markedExtent(): { area: number; deepest: number; tallest: number } {
    return { area: this.area.value, deepest: this.deepest, tallest: this.tallest };
  }
}
