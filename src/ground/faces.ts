/**
 * The quick way through a cut: a survey triangle as found that lies wholly in one face of the
 * hole is settled from its three corners, without clipping anything. Nearly all the triangles of
 * a dense survey are such. Whatever is not plain is left to the general way.
 */
import type { BaseGround } from "./base.js";
import type { Carving } from "./carve.js";
import { DUG, FLOOR, type CellStore } from "./store.js";
import type { Bounds, Surface } from "./surface.js";

type Plane = Surface & { is: "plane" };

/** Result of cutting a triangle that it leaves as found. */
export const UNTOUCHED = -1;
/** Result of the quick way where the triangle needs the general one. */
export const UNDECIDED = -2;
/** Result of the quick way where the whole triangle goes down to one plane, across a layer. */
export const ACROSS_LAYERS = -3;

/** What is noted of a block: plan area cut, lowest level, greatest depth, tallest face. */
const AREA = 0;
const LOWEST = 1;
const DEEPEST = 2;
const TALLEST = 3;

export class Faces {
  /** Planes of a surface that is the highest of them, and which of them matter in a block. */
  private planes: readonly Plane[] = [];
  private near: Plane[] = [];
  /** Stack of the natural layers left when the topmost are gone, by how many are left. */
  private readonly left: number[] = [];
  /** Numbers of the natural layers in the store, 0 at the bottom. */
  private readonly numbers: number[] = [];
  /** Top of each layer at the three corners of the triangle in hand, bottom layer first. */
  private readonly tops: Float64Array;
  /** Corners in plan of the triangle in hand, and the level that it is cut down to. */
  private readonly x = new Float64Array(3);
  private readonly y = new Float64Array(3);
  private readonly level = new Float64Array(3);
  /** By layer: six volumes, 24 and 48 moments of what has gone in the block, not yet handed over. */
  private readonly moved: Float64Array;
  private readonly noted = new Float64Array(4);
  /** Whether the plane that won the last triangle is a floor. */
  floor = false;
  /** What of the surface matters in the last triangle that was left undecided; null when unknown. */
  meeting: Surface | null = null;
  /** The surface that matters in the block, once it has been asked for. */
  private joined: Surface | null = null;

  constructor(
    private readonly base: BaseGround,
    private readonly store: CellStore,
  ) {
    const { layers } = base;
    this.tops = new Float64Array(3 * layers.length);
    this.moved = new Float64Array(4 * layers.length);
    this.clear();
    let stack = store.stacks.of(layers);
    for (let depth = layers.length; depth > 0; depth--) {
      this.left[depth] = stack;
      this.numbers[depth - 1] = store.stacks.topOf[stack]!;
      stack = store.stacks.under[stack]!;
    }
  }

  /** Takes aim at a surface. True when it is the highest of planes, as of a hole in the open. */
  aim(surface: Surface): boolean {
    if (surface.is === "plane") this.planes = [surface];
    else if (surface.is === "higher" && surface.of.every(isPlane)) this.planes = surface.of;
    else this.planes = [];
    this.near = [...this.planes];
    this.joined = null;
    return this.planes.length > 0;
  }

  /**
   * Leaves out the planes that others outdo everywhere in a box (see `narrow`, of which this is
   * the plain case). False when the surface lies above all the ground in it.
   */
  narrowTo(box: Bounds): boolean {
    const { planes, near } = this;
    const x = (box.west + box.east) / 2;
    const y = (box.south + box.north) / 2;
    const wide = (box.east - box.west) / 2;
    const high = (box.north - box.south) / 2;
    let decided = -Infinity;
    for (let p = 0; p < planes.length; p++) {
      const { a, b, c } = planes[p]!;
      const least = a * x + b * y + c - Math.abs(a) * wide - Math.abs(b) * high;
      if (least > decided) decided = least;
    }
    if (decided >= box.highest) return false;
    this.joined = null;
    near.length = 0;
    for (let p = 0; p < planes.length; p++) {
      const { a, b, c } = planes[p]!;
      const most = a * x + b * y + c + Math.abs(a) * wide + Math.abs(b) * high;
      if (most >= decided) near.push(planes[p]!);
    }
    return true;
  }

  /** The surface that matters in the block. */
  surface(): Surface {
    const { near } = this;
    this.joined ??= near.length === 1 ? near[0]! : { is: "higher", of: [...near] };
    return this.joined;
  }

  /** Cuts a triangle as found. Returns its one cell, or one of the results above. */
  cut(triangle: number, carving: Carving): number {
    const { near } = this;
    this.meeting = null;
    if (near.length === 0) return UNDECIDED;
    const { triangles, x, y, z } = this.base.tin;
    const { rounding } = this.store;
    const v0 = triangles[3 * triangle]!;
    const v1 = triangles[3 * triangle + 1]!;
    const v2 = triangles[3 * triangle + 2]!;
    const x0 = x[v0]!;
    const x1 = x[v1]!;
    const x2 = x[v2]!;
    const y0 = y[v0]!;
    const y1 = y[v1]!;
    const y2 = y[v2]!;
    const z0 = z[v0]!;
    const z1 = z[v1]!;
    const z2 = z[v2]!;
    let won = near[0]!;
    let h0 = won.a * x0 + won.b * y0 + won.c;
    let h1 = won.a * x1 + won.b * y1 + won.c;
    let h2 = won.a * x2 + won.b * y2 + won.c;
    if (h0 >= z0 && h1 >= z1 && h2 >= z2) return UNTOUCHED;
    let split = false;
    for (let p = 1; p < near.length; p++) {
      const plane = near[p]!;
      const g0 = plane.a * x0 + plane.b * y0 + plane.c;
      const g1 = plane.a * x1 + plane.b * y1 + plane.c;
      const g2 = plane.a * x2 + plane.b * y2 + plane.c;
      if (g0 >= z0 && g1 >= z1 && g2 >= z2) return UNTOUCHED;
      if (g0 <= h0 && g1 <= h1 && g2 <= h2) continue;
      if (g0 >= h0 && g1 >= h1 && g2 >= h2) {
        // It outdoes all that stood, so whatever crossed among those no longer matters.
        split = false;
        won = plane;
      } else split = true;
      h0 = g0 > h0 ? g0 : h0;
      h1 = g1 > h1 ? g1 : h1;
      h2 = g2 > h2 ? g2 : h2;
    }
    this.meeting = split ? this.surface() : won;
    if (split) return UNDECIDED;
    if (h0 - z0 > rounding || h1 - z1 > rounding || h2 - z2 > rounding) return UNDECIDED;
    if (h0 - z0 >= -rounding && h1 - z1 >= -rounding && h2 - z2 >= -rounding) return UNTOUCHED;
    this.floor = won.floor;
    this.x[0] = x0;
    this.x[1] = x1;
    this.x[2] = x2;
    this.y[0] = y0;
    this.y[1] = y1;
    this.y[2] = y2;
    this.level[0] = h0;
    this.level[1] = h1;
    this.level[2] = h2;
    const region = this.base.regionOf(triangle);
    if (region < 0) return UNDECIDED;
    const left = this.layTops(region, z0, z1, z2);
    if (left === 0) return ACROSS_LAYERS;
    this.tally(left, carving);
    return this.record(left, carving.part);
  }

  /**
   * Lays the tops of the layers under the triangle in hand, whose surface is given. Returns how many
   * layers stay, the topmost of them cut; 0 where the level crosses the foot of one.
   */
  private layTops(region: number, z0: number, z1: number, z2: number): number {
    const { x, y, tops, level } = this;
    const { rounding } = this.store;
    const { thickness } = this.base.regions[region]!;
    let at = tops.length - 3;
    let left = at / 3 + 1;
    let settled = false;
    let across = false;
    let t0 = z0;
    let t1 = z1;
    let t2 = z2;
    for (let i = 0; ; i++) {
      tops[at] = t0;
      tops[at + 1] = t1;
      tops[at + 2] = t2;
      if (at === 0) return across ? 0 : left;
      at -= 3;
      const { a, b, c } = thickness[i]!;
      const d0 = a * x[0]! + b * y[0]! + c;
      const d1 = a * x[1]! + b * y[1]! + c;
      const d2 = a * x[2]! + b * y[2]! + c;
      if (d0 > 0) t0 -= d0;
      if (d1 > 0) t1 -= d1;
      if (d2 > 0) t2 -= d2;
      if (settled) continue;
      const e0 = t0 - level[0]!;
      const e1 = t1 - level[1]!;
      const e2 = t2 - level[2]!;
      if (e0 <= rounding && e1 <= rounding && e2 <= rounding) settled = true;
      else if (e0 < -rounding || e1 < -rounding || e2 < -rounding) settled = across = true;
      else left--;
    }
  }

  /** Counts what goes when the triangle in hand is cut down to its level. See `Tally.addPrism`. */
  private tally(left: number, { floor }: Carving): void {
    const { x, y, tops, level, moved, noted } = this;
    const x0 = x[0]!;
    const x1 = x[1]!;
    const x2 = x[2]!;
    const y0 = y[0]!;
    const y1 = y[1]!;
    const y2 = y[2]!;
    const h0 = level[0]!;
    const h1 = level[1]!;
    const h2 = level[2]!;
    const twice = (x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0);
    let at = tops.length - 3;
    let t0 = tops[at]!;
    let t1 = tops[at + 1]!;
    let t2 = tops[at + 2]!;
    const { a, b, c } = floor;
    noted[AREA] = noted[AREA]! + twice / 2;
    noted[LOWEST] = Math.min(noted[LOWEST]!, h0, h1, h2);
    noted[DEEPEST] = Math.max(noted[DEEPEST]!, t0 - h0, t1 - h1, t2 - h2);
    noted[TALLEST] = Math.max(
      noted[TALLEST]!,
      t0 - a * x0 - b * y0 - c,
      t1 - a * x1 - b * y1 - c,
      t2 - a * x2 - b * y2 - c,
    );
    for (let layer = at / 3; layer >= left - 1; layer--) {
      at -= 3;
      const last = layer === left - 1;
      const b0 = last ? h0 : tops[at]!;
      const b1 = last ? h1 : tops[at + 1]!;
      const b2 = last ? h2 : tops[at + 2]!;
      const d0 = t0 - b0;
      const d1 = t1 - b1;
      const d2 = t2 - b2;
      const sum = d0 + d1 + d2;
      const m0 = t0 + b0;
      const m1 = t1 + b1;
      const m2 = t2 + b2;
      const k = 4 * layer;
      moved[k] = moved[k]! + twice * sum;
      moved[k + 1] = moved[k + 1]! + twice * ((x0 + x1 + x2) * sum + x0 * d0 + x1 * d1 + x2 * d2);
      moved[k + 2] = moved[k + 2]! + twice * ((y0 + y1 + y2) * sum + y0 * d0 + y1 * d1 + y2 * d2);
      moved[k + 3] = moved[k + 3]! + twice * ((m0 + m1 + m2) * sum + m0 * d0 + m1 * d1 + m2 * d2);
      t0 = b0;
      t1 = b1;
      t2 = b2;
    }
  }

  /** Begins a block. */
  private clear(): void {
    this.moved.fill(0);
    this.noted[AREA] = 0;
    this.noted[LOWEST] = Infinity;
    this.noted[DEEPEST] = 0;
    this.noted[TALLEST] = 0;
  }

  /**
   * Hands over what has been counted in a block. A block's few triangles are summed plainly, the
   * blocks' sums with care (see `Tally.add`).
   */
  settle(carving: Carving): void {
    const { moved, noted } = this;
    if (noted[AREA] === 0) return;
    for (let layer = 0; layer < this.numbers.length; layer++) {
      const k = 4 * layer;
      if (moved[k] === 0) continue;
      carving.tally.add(
        this.numbers[layer]!,
        moved[k]! / 6,
        moved[k + 1]! / 24,
        moved[k + 2]! / 24,
        moved[k + 3]! / 48,
      );
    }
    carving.area.add(noted[AREA]!);
    carving.lowest = Math.min(carving.lowest, noted[LOWEST]!);
    carving.deepest = Math.max(carving.deepest, noted[DEEPEST]!);
    carving.tallest = Math.max(carving.tallest, noted[TALLEST]!);
    this.clear();
  }

  private record(left: number, part: number): number {
    const { store, x, y, tops, level } = this;
    const cell = store.make(3, this.left[left]!, 0, DUG | (this.floor ? FLOOR : 0), part);
    store.setCutNow(cell);
    const { values } = store;
    const at = store.row(cell, 0);
    const surface = tops.length - 3;
    const last = at + 9 + 3 * (left - 1);
    for (let k = 0; k < 3; k++) {
      values[at + k] = x[k]!;
      values[at + 3 + k] = y[k]!;
      values[at + 6 + k] = tops[surface + k]!;
      values[last + k] = level[k]!;
    }
    for (let i = 0; i < 3 * (left - 1); i++) values[at + 9 + i] = tops[i]!;
    return cell;
  }

  /**
   * The triangle in hand as a cell as found that carries its level: for the general way, when only
   * its layers are to be parted.
   */
  carrying(): number {
    const { store, x, y, tops, level } = this;
    const count = tops.length / 3;
    const cell = store.make(3, this.left[count]!, 1, 0, 0);
    const { values } = store;
    const at = store.row(cell, 0);
    for (let k = 0; k < 3; k++) {
      values[at + k] = x[k]!;
      values[at + 3 + k] = y[k]!;
      values[at + 9 + tops.length + k] = level[k]!;
    }
    for (let i = 0; i < tops.length; i++) values[at + 9 + i] = tops[i]!;
    return cell;
  }
}

function isPlane(surface: Surface): surface is Plane {
  return surface.is === "plane";
}
