/** The ground's cells, block by block, and how they are found, replaced and read. */
import type { BaseGround } from "./base.js";
import { BLOCK_SIZE, blocksIn } from "./blocks.js";
import { Chain, type Filling } from "./carve.js";
import type { Cell } from "./cell.js";
import { EarlierCells } from "./earlier.js";
import { UNTOUCHED } from "./faces.js";
import { outOfReach } from "./resolve.js";
import { startCells, wholeTriangle } from "./start.js";
import type { CellStore } from "./store.js";
import { narrow, type Bounds, type Purpose, type Surface } from "./surface.js";
import { Tally } from "./tally.js";

/** A box in plan, local m: west, south, east, north. */
export type Box = readonly [number, number, number, number];

/** A block of triangles of which some have been touched. */
export interface TouchedBlock {
  number: number;
  /** Where the chains of its triangles start in the store's `chains`; −1 is a triangle as found. */
  chains: number;
  /** One bit for each triangle with cells that the present work has cut. */
  marked: number;
  /** No surface in the block is lower, or higher, m. */
  lowest: number;
  highest: number;
}

/** The cells of a ground that works have touched; all others are as found. */
export class CellGround {
  constructor(readonly base: BaseGround) {
    this.store = base.takeStore();
    this.natural = this.store.stacks.of(base.layers);
    this.chain = new Chain(this.store);
    this.ceiling = base.tin.highest;
    this.bottom = base.tin.lowest;
  }

  /** Blocks with triangles that works have touched; all others are as found. */
  protected readonly touched = new Map<number, TouchedBlock>();

  protected readonly store: CellStore;

  /** The natural layers' stack. */
  protected readonly natural: number;

  protected readonly chain: Chain;

  /** Blocks with cells that the present work has cut, and what it has cut so far. */
  protected cutBlocks: TouchedBlock[] = [];

  /** No surface anywhere is higher, or lower, than these, m local. */
  protected ceiling: number;

  protected bottom: number;

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

  protected firstOf(triangle: number): number {
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

  /** What of a surface that matters in a triangle's block matters in the triangle. */
  protected nearer(near: Surface, triangle: number, purpose: Purpose): Surface {
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
  protected leftAlone(first: number, triangle: number, near: Surface, purpose: Purpose): boolean {
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

  protected touch(number: number): TouchedBlock {
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

  protected boundsOf(number: number): Bounds {
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

  protected raiseBounds(block: TouchedBlock, highest: number): void {
    if (highest > block.highest) block.highest = highest;
    if (highest > this.ceiling) this.ceiling = highest;
  }

  /**
   * Hands every cell in `box` near a surface to `change`, with what matters of the surface there.
   * It adds to the chain what the cell becomes and returns true, or returns false to let it be.
   */
  protected edit(
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

  protected trianglesOf(number: number): number {
    return Math.min(BLOCK_SIZE, this.base.tin.triangles.length / 3 - number * BLOCK_SIZE);
  }

  protected markBlock(block: TouchedBlock, k: number): void {
    if (block.marked === 0) this.cutBlocks.push(block);
    block.marked |= 1 << k;
  }

  protected editChain(
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
  protected look(
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

  /** All that has been put in and stands, by layer. */
  placed(): Tally {
    const { store } = this;
    const tally = this.tally();
    for (const triangle of this.touchedTriangles()) {
      for (let cell = this.firstOf(triangle); cell >= 0; cell = store.nextOf(cell)) {
        this.addPlaced(cell, tally);
      }
    }
    return tally;
  }

  private addPlaced(cell: number, tally: Tally): void {
    const { stacks } = this.store;
    let stack = this.store.stackOf(cell);
    for (let i = this.store.depthOf(cell) - 1; i > 0 && stacks.top(stack).by >= 0; i--) {
      const [bottom, top] = [this.store.topRow(cell, i - 1), this.store.topRow(cell, i)];
      tally.addPrism(stacks.topOf[stack]!, cell, bottom, top);
      stack = stacks.under[stack]!;
    }
  }

  /** Makes the cells of this ground, which has none, those of another without its late layers. */
  protected takeEarlier(ground: CellGround, step: number): void {
    const cells = new EarlierCells(ground.store, this.store, step);
    this.bottom = ground.bottom;
    for (const source of ground.touched.values()) {
      let block: TouchedBlock | null = null;
      for (let k = 0; k < BLOCK_SIZE; k++) {
        const first = ground.store.chains[source.chains + k]!;
        if (first < 0 || cells.isFound(first, this.natural)) continue;
        block ??= this.touch(source.number);
        this.chain.start();
        for (let cell = first; cell >= 0; cell = ground.store.nextOf(cell)) {
          const made = cells.copy(cell);
          this.chain.add(made);
          this.stretchBounds(block, made);
        }
        this.store.chains[block.chains + k] = this.chain.first;
      }
    }
  }

  private stretchBounds(block: TouchedBlock, cell: number): void {
    const { values } = this.store;
    const top = this.store.surfaceRow(cell);
    for (let i = 0; i < this.store.cornersOf(cell); i++) {
      const z = values[top + i]!;
      if (z < block.lowest) block.lowest = z;
      this.raiseBounds(block, z);
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
}
