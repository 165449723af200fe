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
  /** Whether the plane that won the last triangle is a floor. */
  floor = false;

  constructor(
    private readonly base: BaseGround,
    private readonly store: CellStore,
  ) {
    const { layers } = base;
    this.tops = new Float64Array(3 * layers.length);
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
    return this.near.length === 1 ? this.near[0]! : { is: "higher", of: [...this.near] };
  }

  /** Cuts a triangle as found. Returns its one cell, or one of the results above. */
  cut(triangle: number, carving: Carving): number {
    const { near } = this;
    if (near.length === 0) return UNDECIDED;
    const { triangles, x, y, z } = this.base.tin;
    const { rounding } = this.store;
    const [v0, v1, v2] = [
      triangles[3 * triangle]!,
      triangles[3 * triangle + 1]!,
      triangles[3 * triangle + 2]!,
    ];
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
    if (split) return UNDECIDED;
    if (h0 - z0 > rounding || h1 - z1 > rounding || h2 - z2 > rounding) return UNDECIDED;
    if (h0 - z0 >= -rounding && h1 - z1 >= -rounding && h2 - z2 >= -rounding) return UNTOUCHED;
    this.floor = won.floor;
    const { tops, level } = this;
    const surface = tops.length - 3;
    this.x[0] = x0;
    this.x[1] = x1;
    this.x[2] = x2;
    this.y[0] = y0;
    this.y[1] = y1;
    this.y[2] = y2;
    tops[surface] = z0;
    tops[surface + 1] = z1;
    tops[surface + 2] = z2;
    level[0] = h0;
    level[1] = h1;
    level[2] = h2;
    return this.settle(triangle, carving);
  }

  /** Cuts the triangle in hand down to its level. */
  private settle(triangle: number, carving: Carving): number {
    const region = this.base.regionOf(triangle);
    if (region < 0) return UNDECIDED;
    this.layTops(region);
    const left = this.layersLeft();
    if (left > 0) return this.carve(left, carving);
    return ACROSS_LAYERS;
  }

  private layTops(region: number): void {
    const { x, y, tops } = this;
    const { thickness } = this.base.regions[region]!;
    for (let i = 0; i < thickness.length; i++) {
      const { a, b, c } = thickness[i]!;
      const over = tops.length - 3 * (i + 1);
      for (let k = 0; k < 3; k++) {
        const thick = a * x[k]! + b * y[k]! + c;
        tops[over - 3 + k] = tops[over + k]! - (thick > 0 ? thick : 0);
      }
    }
  }

  /** How many layers stay, the topmost of them cut; 0 where the level crosses a layer's foot. */
  private layersLeft(): number {
    const { tops, level } = this;
    const { rounding } = this.store;
    let left = tops.length / 3;
    for (; left > 1; left--) {
      const bottom = 3 * (left - 2);
      const d0 = tops[bottom]! - level[0]!;
      const d1 = tops[bottom + 1]! - level[1]!;
      const d2 = tops[bottom + 2]! - level[2]!;
      if (d0 <= rounding && d1 <= rounding && d2 <= rounding) return left;
      if (d0 < -rounding || d1 < -rounding || d2 < -rounding) return 0;
    }
    return left;
  }

  /** Takes the triangle in hand down to its level, leaving so many layers. */
  private carve(left: number, carving: Carving): number {
    const { x, y, tops, level } = this;
    const twice = (x[1]! - x[0]!) * (y[2]! - y[0]!) - (x[2]! - x[0]!) * (y[1]! - y[0]!);
    const count = tops.length / 3;
    for (let layer = count - 1; layer >= left; layer--) {
      this.tallyPrism(carving, layer, twice, tops, 3 * (layer - 1));
    }
    this.tallyPrism(carving, left - 1, twice, level, 0);
    carving.area.add(twice / 2);
    this.noteDepth(carving);
    return this.record(left, carving);
  }

  private record(left: number, carving: Carving): number {
    const { store, x, y, tops, level } = this;
    const cell = store.make(3, this.left[left]!, 0, DUG | (this.floor ? FLOOR : 0), carving.part);
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

  private noteDepth(carving: Carving): void {
    const { x, y, tops, level } = this;
    const surface = tops.length - 3;
    const { a, b, c } = carving.floor;
    for (let k = 0; k < 3; k++) {
      const ground = tops[surface + k]!;
      const z = level[k]!;
      if (z < carving.lowest) carving.lowest = z;
      if (ground - z > carving.deepest) carving.deepest = ground - z;
      const above = ground - (a * x[k]! + b * y[k]! + c);
      if (above > carving.tallest) carving.tallest = above;
    }
  }

  /** Adds the prism of the triangle under a layer's top, down to a row. See `Tally.addPrism`. */
  private tallyPrism(
    carving: Carving,
    layer: number,
    twice: number,
    bottoms: Float64Array,
    bottom: number,
  ): void {
    const { x, y, tops } = this;
    const top = 3 * layer;
    const b0 = bottoms[bottom]!;
    const b1 = bottoms[bottom + 1]!;
    const b2 = bottoms[bottom + 2]!;
    const t0 = tops[top]!;
    const t1 = tops[top + 1]!;
    const t2 = tops[top + 2]!;
    const d0 = t0 - b0;
    const d1 = t1 - b1;
    const d2 = t2 - b2;
    const sum = d0 + d1 + d2;
    const mx = (x[0]! + x[1]! + x[2]!) * sum + x[0]! * d0 + x[1]! * d1 + x[2]! * d2;
    const my = (y[0]! + y[1]! + y[2]!) * sum + y[0]! * d0 + y[1]! * d1 + y[2]! * d2;
    const m0 = t0 + b0;
    const m1 = t1 + b1;
    const m2 = t2 + b2;
    const mz = (m0 + m1 + m2) * sum + m0 * d0 + m1 * d1 + m2 * d2;
    carving.tally.add(
      this.numbers[layer]!,
      (twice * sum) / 6,
      (twice * mx) / 24,
      (twice * my) / 24,
      (twice * mz) / 48,
    );
  }
}

function isPlane(surface: Surface): surface is Plane {
  return surface.is === "plane";
}
