/**
 * Outlines of a part of the ground: the rings around the cells that answer to a question. Only
 * triangles at its edge are looked at closely; the cost follows the outline, not the area.
 */
import { BLOCK_SIZE } from "./blocks.js";
import { Cover, type CoverSource } from "./cover.js";
import type { Place } from "./outline.js";
import { joinRings } from "./rings.js";
import { Segments } from "./segments.js";
import { Stretches } from "./stretches.js";
import type { Tin } from "./tin.js";
import { addUnshared } from "./unshared.js";

/** Where the region's cells are looked for. */
export interface RegionSource extends CoverSource {
  tin: Tin;
}

/**
 * Rings around the cells for which `within` holds, local m: outer ones counter-clockwise, holes
 * clockwise, corners that lie straight between others left out.
 */
export function regionRings(source: RegionSource, within: (cell: number) => boolean): Place[][] {
  return joinRings(new Rim(source, within).trace(), 1e4 * source.tin.rounding);
}

/** Sides of the triangles in a block. */
const SIDES = 3 * BLOCK_SIZE;

/** The edges of a region while they are gathered. */
class Rim {
  private readonly cover: Cover;
  private readonly found = new Segments();
  /** Edges inside the triangle in hand. */
  private readonly inner = new Segments();
  private readonly left = new Stretches();
  /**
   * By side of a triangle that is partly in the region (its place among its block's, blocks as in
   * the source): the first of the stretches along which the region touches it. 0 ends a list.
   */
  private readonly touching: Int32Array;
  private readonly from = [0];
  private readonly to = [0];
  private readonly next = [0];
  private readonly near: number;

  constructor(
    private readonly source: RegionSource,
    private readonly within: (cell: number) => boolean,
  ) {
    this.cover = new Cover(source, within);
    this.touching = new Int32Array(SIDES * source.blocks.length);
    this.near = 10 * source.tin.rounding;
  }

  /** All edges of the region, which lies to their left. */
  trace(): Segments {
    const { blocks } = this.source;
    const { whole, partly } = this.cover;
    for (let slot = 0; slot < blocks.length; slot++) {
      for (let bits = partly[slot]!; bits !== 0; bits &= bits - 1) {
        this.addInside(slot, lowestBit(bits));
      }
    }
    for (let slot = 0; slot < blocks.length; slot++) {
      for (let bits = whole[slot]! | partly[slot]!; bits !== 0; bits &= bits - 1) {
        this.addSides(slot, lowestBit(bits));
      }
    }
    return this.found;
  }

  /**
   * Adds the region's edges inside triangle k of a block, and notes which stretches of its sides it
   * touches. An edge between two cells of the region is no edge of it, though one of them may be
   * cut finer.
   */
  private addInside(slot: number, k: number): void {
    const { store, blocks } = this.source;
    const { number, chains } = blocks[slot]!;
    const { values } = store;
    const { inner } = this;
    inner.clear();
    for (let cell = store.chains[chains + k]!; cell >= 0; cell = store.nextOf(cell)) {
      if (!this.within(cell)) continue;
      const corners = store.cornersOf(cell);
      const x = store.row(cell, 0);
      const y = x + corners;
      for (let i = 0; i < corners; i++) {
        const j = i + 1 === corners ? 0 : i + 1;
        const ax = values[x + i]!;
        const ay = values[y + i]!;
        const bx = values[x + j]!;
        const by = values[y + j]!;
        const onSide = this.noteSide(SIDES * number + 3 * k, SIDES * slot + 3 * k, ax, ay, bx, by);
        if (!onSide) inner.add(ax, ay, bx, by);
      }
    }
    if (inner.count > 0) addUnshared(inner, this.near, this.found);
  }

  /**
   * Notes an edge that lies on a side of its triangle, whose sides begin at `side` in the survey and
   * at `noted` in `touching`; false when it lies inside.
   */
  private noteSide(
    side: number,
    noted: number,
    ax: number,
    ay: number,
    bx: number,
    by: number,
  ): boolean {
    const { x, y, triangles } = this.source.tin;
    for (let k = 0; k < 3; k++) {
      const p = triangles[side + k]!;
      const q = triangles[k === 2 ? side : side + k + 1]!;
      const px = x[p]!;
      const py = y[p]!;
      const dx = x[q]! - px;
      const dy = y[q]! - py;
      const squared = dx * dx + dy * dy;
      const most = this.near * this.near * squared;
      if ((dx * (ay - py) - dy * (ax - px)) ** 2 > most) continue;
      if ((dx * (by - py) - dy * (bx - px)) ** 2 > most) continue;
      this.next.push(this.touching[noted + k]!);
      this.touching[noted + k] = this.from.length;
      this.from.push((dx * (ax - px) + dy * (ay - py)) / squared);
      this.to.push((dx * (bx - px) + dy * (by - py)) / squared);
      return true;
    }
    return false;
  }

  /**
   * Adds the stretches of the sides of a block's triangle k that have the region on this side only.
   * Most sides lead to a triangle that is whole, often of the same block, and are done.
   */
  private addSides(slot: number, k: number): void {
    const { twins } = this.source.tin;
    const start = BLOCK_SIZE * this.source.blocks[slot]!.number;
    const wholeHere = this.cover.whole[slot]!;
    for (let side = 3 * (start + k); side < 3 * (start + k) + 3; side++) {
      const twin = twins[side]!;
      // Whole numbers below 2^31, so that the bits of a quotient are the quotient.
      const beyond = twin < 0 ? -1 : (twin / 3) | 0;
      const there = beyond - start;
      const isWhole =
        there >= 0 && there < BLOCK_SIZE
          ? (wholeHere & (1 << there)) !== 0
          : this.cover.isWhole(beyond);
      if (!isWhole) this.addSide(slot, side, twin);
    }
  }

  /** Adds the stretches of one side of a triangle, towards one that is not whole. */
  private addSide(slot: number, side: number, twin: number): void {
    const { tin, blocks } = this.source;
    const { left } = this;
    const triangle = (side / 3) | 0;
    left.clear();
    if (this.cover.isWhole(triangle)) left.add(0, 1);
    else this.addTouching(SIDES * slot + side - SIDES * blocks[slot]!.number);
    if (left.count > 0 && twin >= 0) this.removeTouching(twin);
    if (left.count === 0) return;
    const p = tin.triangles[side]!;
    const q = tin.triangles[side === 3 * triangle + 2 ? 3 * triangle : side + 1]!;
    left.addTo(this.found, tin.x[p]!, tin.y[p]!, tin.x[q]!, tin.y[q]!, this.near);
  }

  private addTouching(noted: number): void {
    for (let i = this.touching[noted]!; i > 0; i = this.next[i]!) {
      this.left.add(this.from[i]!, this.to[i]!);
    }
  }

  /** Takes away the stretches along which the region touches the same side from beyond. */
  private removeTouching(twin: number): void {
    const block = (twin / SIDES) | 0;
    const slot = this.cover.slotOf(block);
    if (slot < 0) return;
    const noted = SIDES * slot + twin - SIDES * block;
    for (let i = this.touching[noted]!; i > 0; i = this.next[i]!) {
      this.left.remove(1 - this.to[i]!, 1 - this.from[i]!);
    }
  }
}

/** The place of the lowest bit that is set, 0 to 31. */
function lowestBit(bits: number): number {
  return 31 - Math.clz32(bits & -bits);
}
