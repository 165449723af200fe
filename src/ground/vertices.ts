/** Vertices of the ground while more are being added where breaklines cross. */
import { BoxIndex, type PlanBox } from "./boxIndex.js";
import { PlaceGrid } from "./placeGrid.js";
import type { Frame } from "./hilbert.js";
import type { Places } from "./places.js";

/** Vertices in a block that is searched as one. */
const BLOCK_SIZE = 32;

/** A straight way in plan, local m. */
export interface Way {
  ax: number;
  ay: number;
  bx: number;
  by: number;
}

/**
 * Vertices sorted along a curve, found by place in blocks of neighbours; added ones follow and are
 * found one by one. `reach` is how near counts as the same place, m.
 */
export class Vertices {
  private readonly count: number;
  private readonly blocks: BoxIndex;
  private readonly west: Float64Array;
  private readonly south: Float64Array;
  private readonly east: Float64Array;
  private readonly north: Float64Array;
  private readonly addedX: number[] = [];
  private readonly addedY: number[] = [];
  private readonly addedZ: number[] = [];
  private readonly addedGrid: PlaceGrid;

  constructor(
    private readonly places: Places & { frame: Frame },
    readonly reach: number,
  ) {
    this.count = places.x.length;
    const blocks = Math.ceil(this.count / BLOCK_SIZE);
    this.west = new Float64Array(blocks);
    this.south = new Float64Array(blocks);
    this.east = new Float64Array(blocks);
    this.north = new Float64Array(blocks);
    for (let block = 0; block < blocks; block++) this.bound(block);
    this.blocks = BoxIndex.over(this.west, this.south, this.east, this.north);
    this.addedGrid = new PlaceGrid(this.addedX, this.addedY, places.frame, reach, 64);
  }

  /** Sets the box of a block. */
  private bound(block: number): void {
    const { x, y } = this.places;
    let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
    const end = Math.min(this.count, BLOCK_SIZE * (block + 1));
    for (let vertex = BLOCK_SIZE * block; vertex < end; vertex++) {
      const px = x[vertex]!;
      const py = y[vertex]!;
      if (px < west) west = px;
      if (px > east) east = px;
      if (py < south) south = py;
      if (py > north) north = py;
    }
    this.west[block] = west;
    this.south[block] = south;
    this.east[block] = east;
    this.north[block] = north;
  }

  x(vertex: number): number {
    return vertex < this.count ? this.places.x[vertex]! : this.addedX[vertex - this.count]!;
  }

  y(vertex: number): number {
    return vertex < this.count ? this.places.y[vertex]! : this.addedY[vertex - this.count]!;
  }

  z(vertex: number): number {
    return vertex < this.count ? this.places.z[vertex]! : this.addedZ[vertex - this.count]!;
  }

  /** Adds a vertex that is no survey point; returns its number. */
  add(x: number, y: number, z: number): number {
    const added = this.addedX.length;
    this.addedX.push(x);
    this.addedY.push(y);
    this.addedZ.push(z);
    this.addedGrid.add(added);
    return this.count + added;
  }

  /** Numbers of the vertices added so far. */
  added(): number[] {
    return this.addedX.map((_, i) => this.count + i);
  }

  /** The first vertex within reach of a place, or -1. */
  near(x: number, y: number): number {
    const { reach } = this;
    const box: PlanBox = [x - reach, y - reach, x + reach, y + reach];
    let found = -1;
    for (const block of this.blocks.search(box)) {
      const end = Math.min(this.count, BLOCK_SIZE * (block + 1));
      for (let vertex = BLOCK_SIZE * block; vertex < end; vertex++) {
        const [dx, dy] = [this.places.x[vertex]! - x, this.places.y[vertex]! - y];
        if (dx * dx + dy * dy <= reach * reach && (found < 0 || vertex < found)) found = vertex;
      }
    }
    if (found >= 0) return found;
    const added = this.addedGrid.near(x, y);
    return added < 0 ? -1 : this.count + added;
  }

  /** Survey vertices within reach of a straight way, but not of its ends' perpendiculars. */
  along(way: Way): { vertex: number; share: number }[] {
    const { reach } = this;
    const box: PlanBox = [
      Math.min(way.ax, way.bx) - reach,
      Math.min(way.ay, way.by) - reach,
      Math.max(way.ax, way.bx) + reach,
      Math.max(way.ay, way.by) + reach,
    ];
    const { x, y } = this.places;
    const passed: { vertex: number; share: number }[] = [];
    for (const block of this.blocks.search(box, (each) => this.isNear(each, way))) {
      const end = Math.min(this.count, BLOCK_SIZE * (block + 1));
      for (let vertex = BLOCK_SIZE * block; vertex < end; vertex++) {
        const share = shareOn(way, x[vertex]!, y[vertex]!, reach);
        if (share >= 0) passed.push({ vertex, share });
      }
    }
    return passed;
  }

  /** False when a block lies wholly on one side of a way, out of reach. */
  private isNear(block: number, { ax, ay, bx, by }: Way): boolean {
    const [dx, dy] = [bx - ax, by - ay];
    const middleX = (this.west[block]! + this.east[block]!) / 2;
    const middleY = (this.south[block]! + this.north[block]!) / 2;
    const off = Math.abs(dx * (middleY - ay) - dy * (middleX - ax));
    const halfX = (this.east[block]! - this.west[block]!) / 2 + this.reach;
    const halfY = (this.north[block]! - this.south[block]!) / 2 + this.reach;
    return off <= Math.abs(dx) * halfY + Math.abs(dy) * halfX;
  }

  /** All vertices, the added ones last. */
  whole(): Places {
    if (this.addedX.length === 0) return this.places;
    const joined = (sorted: Float64Array, added: readonly number[]): Float64Array => {
      const all = new Float64Array(sorted.length + added.length);
      all.set(sorted);
      all.set(added, sorted.length);
      return all;
    };
    const { origin, x, y, z } = this.places;
    return {
      origin,
      x: joined(x, this.addedX),
      y: joined(y, this.addedY),
      z: joined(z, this.addedZ),
    };
  }
}

/**
 * Share of a way's length at which a place lies within `reach` (m) of it, or -1 when it does not.
 * Places within reach of the perpendicular at an end count as beyond that end.
 */
export function shareOn({ ax, ay, bx, by }: Way, x: number, y: number, reach: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const px = x - ax;
  const py = y - ay;
  const length = Math.sqrt(dx * dx + dy * dy);
  if (Math.abs(dx * py - dy * px) > reach * length) return -1;
  const along = (dx * px + dy * py) / length;
  return along <= reach || along >= length - reach ? -1 : along / length;
}
