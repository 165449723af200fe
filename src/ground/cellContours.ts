/** The net of the ground at a stage, and the contour lines of it. */
import type { Cell } from "./cell.js";
import { surfaceOf } from "./cell.js";
import { contoursOfNet, type Contour } from "./contours.js";
import type { LayeredGround } from "./layered.js";
import { netOfTin, type SurfaceNet } from "./surfaceNet.js";
import type { Tin } from "./tin.js";

/** Corners nearer than this share of the survey's width are one, and lie on a side they are near. */
const WELD_SHARE = 1e-8;

/**
 * Joined contour lines of the ground as it now stands, at every multiple of `step` (m, site
 * elevations). Along a vertical wall the line follows the wall's foot in plan.
 */
export function groundContours(ground: LayeredGround, step: number): Contour[] {
  return contoursOfNet(netOfGround(ground), step, ground.base.tin.origin[2]);
}

/**
 * The net of the ground as it now stands. Cells that works have made do not meet corner to corner
 * (a corner of one may lie along a side of the next), so each side is parted at every corner that
 * lies on it. Cells thinner than the welding distance vanish.
 */
export function netOfGround(ground: LayeredGround): SurfaceNet {
  const touched = new Set(ground.touchedTriangles());
  const { tin } = ground.base;
  if (touched.size === 0) return netOfTin(tin);
  const corners = new Corners(tin);
  const patches = new Map<number, Patch>();
  for (const triangle of touched) corners.addTriangle(triangle);
  for (const triangle of touched) {
    patches.set(triangle, new Patch(ground.cellsOf(triangle), corners));
  }
  const onSides = cornersOnSides(tin, patches, corners);
  const net = new NetBuilder(tin, corners);
  const count = tin.triangles.length / 3;
  for (let t = 0; t < count; t++) {
    const patch = patches.get(t);
    if (!patch) net.addTriangle(t, touched, onSides);
    else {
      const near = [...patch.corners];
      for (let k = 0; k < 3; k++) near.push(...(onSides.get(sideKey(tin, 3 * t + k)) ?? []));
      net.addPatch(patch, [...new Set(near)]);
    }
  }
  return net.build();
}

/** One number for a side of the triangulation, seen from either of its triangles. */
function sideKey(tin: Tin, side: number): number {
  const twin = tin.twins[side]!;
  return twin < 0 ? side : Math.min(side, twin);
}

/** Corners in plan, welded: those of the triangulation first, then those that works have made. */
class Corners {
  readonly x: number[];
  readonly y: number[];
  /** Welding distance, m. */
  readonly reach: number;
  private readonly pitch: number;
  private readonly buckets = new Map<number, number[]>();

  constructor(tin: Tin) {
    this.x = Array.from(tin.x);
    this.y = Array.from(tin.y);
    let far = 0;
    for (const v of tin.hull) far = Math.max(far, Math.abs(tin.x[v]!), Math.abs(tin.y[v]!));
    this.reach = WELD_SHARE * far;
    this.pitch = this.reach * 1000;
    this.triangles = tin.triangles;
  }

  private readonly triangles: Uint32Array;

  /** Makes a triangle's corners known, so that what lies on one of them is that one. */
  addTriangle(triangle: number): void {
    for (let k = 0; k < 3; k++) {
      const v = this.triangles[3 * triangle + k]!;
      if (this.find(this.x[v]!, this.y[v]!) < 0) this.enter(v);
    }
  }

  /** Number of the corner at a place, a new one where there is none. */
  at(x: number, y: number): number {
    const known = this.find(x, y);
    if (known >= 0) return known;
    this.x.push(x);
    this.y.push(y);
    this.enter(this.x.length - 1);
    return this.x.length - 1;
  }

  private find(x: number, y: number): number {
    const { pitch, reach } = this;
    const [west, east] = [Math.floor((x - reach) / pitch), Math.floor((x + reach) / pitch)];
    const [south, north] = [Math.floor((y - reach) / pitch), Math.floor((y + reach) / pitch)];
    for (let i = west; i <= east; i++) {
      for (let j = south; j <= north; j++) {
        const v = this.among(this.buckets.get(bucket(i, j)) ?? [], x, y);
        if (v >= 0) return v;
      }
    }
    return -1;
  }

  private among(corners: readonly number[], x: number, y: number): number {
    for (const v of corners) {
      if (Math.hypot(this.x[v]! - x, this.y[v]! - y) <= this.reach) return v;
    }
    return -1;
  }

  private enter(v: number): void {
    const key = bucket(Math.floor(this.x[v]! / this.pitch), Math.floor(this.y[v]! / this.pitch));
    const known = this.buckets.get(key);
    if (known) known.push(v);
    else this.buckets.set(key, [v]);
  }
}

function bucket(i: number, j: number): number {
  return Math.imul(i, 73_856_093) ^ Math.imul(j, 19_349_663);
}

/** A ring of corners with the height of the surface at each. */
interface Ring {
  corners: number[];
  heights: number[];
}

/** The cells of one touched triangle. */
class Patch {
  readonly rings: Ring[] = [];
  readonly corners = new Set<number>();

  constructor(cells: readonly Cell[], corners: Corners) {
    for (const cell of cells) {
      const ring: Ring = { corners: [], heights: [] };
      const top = surfaceOf(cell);
      cell.x.forEach((x, i) => {
        const corner = corners.at(x, cell.y[i]!);
        if (corner === ring.corners[ring.corners.length - 1]) return;
        ring.corners.push(corner);
        ring.heights.push(top[i]!);
      });
      while (ring.corners.length > 1 && ring.corners[0] === ring.corners.at(-1)) {
        ring.corners.pop();
        ring.heights.pop();
      }
      if (ring.corners.length < 3) continue;
      this.rings.push(ring);
      for (const corner of ring.corners) this.corners.add(corner);
    }
  }
}

/** Corners of cells that lie on the sides of their triangles, by side. */
function cornersOnSides(
  tin: Tin,
  patches: ReadonlyMap<number, Patch>,
  corners: Corners,
): Map<number, number[]> {
  const onSides = new Map<number, number[]>();
  for (const [triangle, patch] of patches) {
    for (let k = 0; k < 3; k++) {
      const side = 3 * triangle + k;
      const ends: [number, number] = [
        tin.triangles[side]!,
        tin.triangles[3 * triangle + ((k + 1) % 3)]!,
      ];
      const on = between(corners, ends, [...patch.corners]).map(({ corner }) => corner);
      if (on.length === 0) continue;
      const key = sideKey(tin, side);
      const known = onSides.get(key);
      if (known) known.push(...on);
      else onSides.set(key, on);
    }
  }
  return onSides;
}

/** Those of `candidates` that lie on the side between two corners, in order, each once. */
function between(
  corners: Corners,
  [from, to]: readonly [number, number],
  candidates: readonly number[],
): { corner: number; share: number }[] {
  const { x, y, reach } = corners;
  const [ax, ay] = [x[from]!, y[from]!];
  const [dx, dy] = [x[to]! - ax, y[to]! - ay];
  const length = Math.hypot(dx, dy);
  const found: { corner: number; share: number }[] = [];
  for (const corner of candidates) {
    if (corner === from || corner === to) continue;
    const [px, py] = [x[corner]! - ax, y[corner]! - ay];
    if (Math.abs(px * dy - py * dx) > reach * length) continue;
    const share = (px * dx + py * dy) / (length * length);
    if (share > 0 && share < 1) found.push({ corner, share });
  }
  return found
    .sort((a, b) => a.share - b.share)
    .filter((each, i, all) => each.corner !== all[i - 1]?.corner);
}

/** Gathers rings into a net. */
class NetBuilder {
  private readonly corner: number[] = [];
  private readonly height: number[] = [];
  private readonly next: number[] = [];
  private readonly previous: number[] = [];
  private readonly twin: number[] = [];
  /** Sides that border on touched ground, by their two ends. */
  private readonly open = new Map<number, number>();
  /** First side of each side of an untouched triangle. */
  private readonly first: Int32Array;

  constructor(
    private readonly tin: Tin,
    private readonly corners: Corners,
  ) {
    this.first = new Int32Array(tin.triangles.length).fill(-1);
  }

  addTriangle(
    triangle: number,
    touched: ReadonlySet<number>,
    onSides: ReadonlyMap<number, readonly number[]>,
  ): void {
    const { tin, corners } = this;
    const ring: Ring = { corners: [], heights: [] };
    const bordering: boolean[] = [];
    for (let k = 0; k < 3; k++) {
      const side = 3 * triangle + k;
      const [a, b] = [tin.triangles[side]!, tin.triangles[3 * triangle + ((k + 1) % 3)]!];
      const twin = tin.twins[side]!;
      const borders = twin >= 0 && touched.has(Math.floor(twin / 3));
      this.first[side] = this.corner.length + ring.corners.length;
      ring.corners.push(a);
      ring.heights.push(tin.z[a]!);
      bordering.push(borders);
      if (!borders) continue;
      for (const { corner, share } of between(
        corners,
        [a, b],
        onSides.get(sideKey(tin, side)) ?? [],
      )) {
        ring.corners.push(corner);
        ring.heights.push(tin.z[a]! + share * (tin.z[b]! - tin.z[a]!));
        bordering.push(true);
      }
    }
    this.addRing(ring, (i) => bordering[i]!);
    for (let k = 0; k < 3; k++) this.joinUntouched(3 * triangle + k);
  }

  addPatch(patch: Patch, near: readonly number[]): void {
    for (const ring of patch.rings) {
      const parted = this.parted(ring, near);
      if (parted.corners.length >= 3) this.addRing(parted, () => true);
    }
  }

  build(): SurfaceNet {
    const { corners } = this;
    const width = corners.x.length;
    for (const side of this.open.values()) {
      const [a, b] = [this.corner[side]!, this.corner[this.next[side]!]!];
      this.twin[side] = this.open.get(b * width + a) ?? -1;
    }
    return {
      x: Float64Array.from(corners.x),
      y: Float64Array.from(corners.y),
      corner: Uint32Array.from(this.corner),
      height: Float64Array.from(this.height),
      next: Uint32Array.from(this.next),
      previous: Uint32Array.from(this.previous),
      twin: Int32Array.from(this.twin),
      stepped: true,
    };
  }

  private joinUntouched(side: number): void {
    const twin = this.tin.twins[side]!;
    if (twin < 0 || this.first[twin]! < 0) return;
    const [mine, other] = [this.first[side]!, this.first[twin]!];
    this.twin[mine] = other;
    this.twin[other] = mine;
  }

  /** A ring with every near corner that lies on one of its sides, less what runs out and back. */
  private parted(ring: Ring, near: readonly number[]): Ring {
    const out: Ring = { corners: [], heights: [] };
    ring.corners.forEach((a, i) => {
      const j = (i + 1) % ring.corners.length;
      const [low, high] = [ring.heights[i]!, ring.heights[j]!];
      out.corners.push(a);
      out.heights.push(low);
      for (const { corner, share } of between(this.corners, [a, ring.corners[j]!], near)) {
        out.corners.push(corner);
        out.heights.push(low + share * (high - low));
      }
    });
    return withoutSpurs(out);
  }

  private addRing(ring: Ring, bordering: (i: number) => boolean): void {
    const start = this.corner.length;
    const count = ring.corners.length;
    const width = this.corners.x.length;
    for (let i = 0; i < count; i++) {
      this.corner.push(ring.corners[i]!);
      this.height.push(ring.heights[i]!);
      this.next.push(start + ((i + 1) % count));
      this.previous.push(start + ((i + count - 1) % count));
      this.twin.push(-1);
      if (!bordering(i)) continue;
      const key = ring.corners[i]! * width + ring.corners[(i + 1) % count]!;
      if (!this.open.has(key)) this.open.set(key, start + i);
    }
  }
}

/** A ring without the places where it runs out to a corner and straight back. */
function withoutSpurs(ring: Ring): Ring {
  const corners: number[] = [];
  const heights: number[] = [];
  ring.corners.forEach((corner, i) => {
    if (corner === corners[corners.length - 1]) return;
    if (corners.length > 1 && corner === corners[corners.length - 2]) {
      corners.pop();
      heights.pop();
      return;
    }
    corners.push(corner);
    heights.push(ring.heights[i]!);
  });
  for (;;) {
    const count = corners.length;
    if (count < 3) return { corners: [], heights: [] };
    if (corners[0] === corners[count - 1]) dropEnds(corners, heights, 0, 1);
    else if (corners[0] === corners[count - 2]) dropEnds(corners, heights, 0, 2);
    else if (corners[1] === corners[count - 1]) dropEnds(corners, heights, 2, 0);
    else return { corners, heights };
  }
}

function dropEnds(corners: number[], heights: number[], start: number, end: number): void {
  for (const values of [corners, heights]) values.splice(0, start);
  for (const values of [corners, heights]) values.splice(values.length - end, end);
}
