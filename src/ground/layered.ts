/**
 * The layered ground while it is worked on: cut down to a surface, filled up to one, and the
 * exact volume of every material moved. See DEVELOPERS.md, "The layered ground".
 */
import type { BaseGround } from "./base.js";
import { Bands } from "./bands.js";
import { BLOCK_SIZE, blocksIn } from "./blocks.js";
import {
  carve,
  cutCell,
  cutReached,
  raise,
  refillCell,
  tallyBelowBefore,
  type Carving,
  type Filling,
} from "./carve.js";
import { isCut, type CellLayer, type CutCell } from "./cell.js";
import { CellGround, type Box } from "./cellGround.js";
import { ACROSS_LAYERS, Faces, UNDECIDED, UNTOUCHED } from "./faces.js";
import type { Place } from "./outline.js";
import { regionRings } from "./region.js";
import { resolve, type Piece } from "./resolve.js";
import { raisedPieces, readyToShave, setAboveSurface } from "./shave.js";
import { startCells } from "./start.js";
import { Sum } from "./sum.js";
import { narrow, type Surface } from "./surface.js";
import type { Tally } from "./tally.js";

/** Volumes are told by bands of depth this thick, m. */
const DEPTH_BAND = 0.5;

/** The level plane at no height: a floor for works that have none. */
const NO_FLOOR = { a: 0, b: 0, c: 0 };

export class LayeredGround extends CellGround {
  private readonly faces: Faces;
  private area = new Sum();
  private deepest = 0;
  private tallest = 0;
  /** What the present work has put in so far, by height above what it was put on. */
  private filled = new Bands(DEPTH_BAND);

  constructor(base: BaseGround) {
    super(base);
    this.faces = new Faces(base, this.store);
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
    for (let k = 0; k < count; k++) {
      const first = block ? store.chains[block.chains + k]! : -1;
      let made = first >= 0 ? UNDECIDED : faces.cut(start + k, carving);
      if (made === UNTOUCHED) continue;
      if (made === ACROSS_LAYERS) made = this.cutAcrossLayers(carving);
      else if (made === UNDECIDED) {
        made =
          first < 0 && faces.meeting
            ? this.cutFound(start + k, faces.meeting, carving)
            : this.cutChain(first, start + k, near ?? faces.surface(), carving);
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

  /** Cuts a triangle as found by what `faces` knows to matter in it. */
  private cutFound(triangle: number, near: Surface, carving: Carving): number {
    const { store, chain } = this;
    const mark = store.mark();
    chain.start();
    let changed = false;
    for (let cell = startCells(this.base, store, this.natural, triangle); cell >= 0;) {
      // Adding a cell to a chain sets what follows it.
      const next = store.nextOf(cell);
      if (cutReached(store, cell, near, carving, chain)) changed = true;
      cell = next;
    }
    if (changed) return chain.first;
    store.release(mark);
    return UNTOUCHED;
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

  /** The cells that the present work has cut, for readers. */
  *markedCells(): Generator<{ triangle: number; cell: CutCell }> {
    for (const triangle of this.markedTriangles()) {
      for (const cell of this.cellsOf(triangle)) if (isCut(cell)) yield { triangle, cell };
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
        this.addChainTo(bands, store.chains[chains + k]!);
      }
    }
    return bands;
  }

  private addChainTo(bands: Bands, first: number): void {
    const { store } = this;
    for (let cell = first; cell >= 0; cell = store.nextOf(cell)) {
      if (!store.isCut(cell)) continue;
      bands.add(store, cell, store.surfaceRow(cell), store.beforeRow(cell));
    }
  }

  /** What the present work has put in, by height above what each part was put on. */
  filledBands(): Bands {
    return this.filled;
  }

  /**
   * The ground at an earlier step of the job, as a ground of its own: every hole is as it is here,
   * and of what was put in only layers up to `step` stand, unless they lie on a later one. Nothing
   * is cut anew, so the natural ground is the same in both, to the last digit.
   */
  upTo(step: number): LayeredGround {
    const ground = new LayeredGround(this.base);
    ground.takeEarlier(this, step);
    return ground;
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
