/**
 * The way of water down the ground as found: steepest descent on the triangles, exactly. Across a
 * triangle it is a straight line down its slope; where two triangles fall towards their common edge
 * it runs along that edge; at a vertex it takes the steepest of all ways down; in a hollow it goes
 * on from where the hollow spills. All coordinates local, m.
 */
import { corners, triangleAt, type Tin } from "../ground/index.js";
import type { Flood } from "./pits.js";

/** A place on the way: [x, y, z], m local. */
export type WayPoint = readonly [x: number, y: number, z: number];

/** A hollow on the way: its lowest place there, and how deep water stands over it before it spills. */
export interface Hollow {
  at: WayPoint;
  depth: number;
}

export interface Way {
  /** From the start to the survey's outer edge. Over a hollow it runs on its vertices. */
  path: readonly WayPoint[];
  hollows: readonly Hollow[];
}

/** Where the water is: inside a triangle, on one of its sides on the way into it, or at a vertex. */
type Place =
  | { kind: "inside"; triangle: number; x: number; y: number }
  | { kind: "side"; side: number; share: number }
  | { kind: "vertex"; vertex: number };

/** Slope of a triangle: what its height gains per m east and north. */
interface Gradient {
  east: number;
  north: number;
}

/** The steepest way down from a vertex: along an edge, or over a triangle to the side opposite. */
type Down = { kind: "edge"; to: number } | { kind: "face"; side: number };

/** Share of a side that still counts as its end. */
const NEAR_END = 1e-9;

/** Steps after which a way is led by the order of flooding, beside one for each side. */
const MOST_STEPS = 1000;

export class Tracer {
  private readonly gradients: (Gradient | undefined)[] = [];
  private readonly downs: (Down | null | undefined)[] = [];
  /** One side 3t + k that leaves each vertex, for turning about it. */
  private readonly leaving: Int32Array;

  constructor(
    private readonly tin: Tin,
    private readonly flood: Flood,
  ) {
    this.leaving = new Int32Array(tin.x.length).fill(-1);
    tin.triangles.forEach((vertex, side) => {
      // A side on the outer edge comes first in the turn about its vertex.
      if (this.leaving[vertex] === -1 || tin.twins[side] === -1) this.leaving[vertex] = side;
    });
  }

  /** The way from a place; null outside the survey. */
  from(x: number, y: number): Way | null {
    const triangle = triangleAt(this.tin, x, y);
    if (triangle < 0) return null;
    const path: WayPoint[] = [[x, y, this.heightIn(triangle, x, y)]];
    const hollows: Hollow[] = [];
    let place: Place | null = { kind: "inside", triangle, x, y };
    let left = MOST_STEPS + this.tin.triangles.length;
    while (place !== null && left-- > 0) place = this.step(place, path, hollows);
    // Every step goes down or leaves a hollow for good, but for rounding on all but level ground:
    // there the order of flooding leads out, and it cannot turn back.
    if (place !== null) this.followFlood(place, path);
    return { path, hollows };
  }

  private followFlood(place: Place, path: WayPoint[]): void {
    let vertex =
      place.kind === "vertex"
        ? place.vertex
        : this.tin.triangles[place.kind === "side" ? place.side : 3 * place.triangle]!;
    for (; vertex !== -1; vertex = this.flood.next[vertex]!) path.push(this.pointOf(vertex));
  }

  private step(place: Place, path: WayPoint[], hollows: Hollow[]): Place | null {
    switch (place.kind) {
      case "inside":
        return this.fromInside(place, path);
      case "side":
        return this.fromSide(place, path);
      case "vertex":
        return this.fromVertex(place.vertex, path, hollows);
    }
  }

  private fromInside(
    { triangle, x, y }: Place & { kind: "inside" },
    path: WayPoint[],
  ): Place | null {
    const { east, north } = this.gradientOf(triangle);
    if (east === 0 && north === 0) return this.lowestCorner(triangle, path);
    let best: { side: number; share: number; far: number } | null = null;
    for (let k = 0; k < 3; k++) {
      const side = 3 * triangle + k;
      const met = this.meetSide(side, x, y, -east, -north);
      if (met === null) continue;
      if (best === null || met.far < best.far) best = { side, ...met };
    }
    return best === null ? this.lowestCorner(triangle, path) : this.cross(best, path);
  }

  /** Level ground: on from the corner that water leaves first. */
  private lowestCorner(triangle: number, path: WayPoint[]): Place {
    const { order } = this.flood;
    const [a, b, c] = corners(this.tin, triangle);
    const vertex = [a, b, c].reduce((least, v) => (order[v]! < order[least]! ? v : least));
    path.push(this.pointOf(vertex));
    return { kind: "vertex", vertex };
  }

  /** Where a ray from inside the triangle leaves it by a side, if it does. */
  private meetSide(
    side: number,
    x: number,
    y: number,
    dx: number,
    dy: number,
  ): { share: number; far: number } | null {
    const [ax, ay, ex, ey] = this.sideOf(side);
    // Counter-clockwise: the ray leaves by a side that it crosses from left to right.
    const across = dx * ey - dy * ex;
    if (across <= 0) return null;
    const far = ((ax - x) * ey - (ay - y) * ex) / across;
    const share = ((ax - x) * dy - (ay - y) * dx) / across;
    return { share: Math.min(1, Math.max(0, share)), far: Math.max(0, far) };
  }

  /** Over the side of a triangle that water comes to from its inside. */
  private cross({ side, share }: { side: number; share: number }, path: WayPoint[]): Place | null {
    const { tin } = this;
    const from = tin.triangles[side]!;
    const to = tin.triangles[nextSide(side)]!;
    if (share <= NEAR_END || share >= 1 - NEAR_END) {
      const vertex = share < 0.5 ? from : to;
      path.push(this.pointOf(vertex));
      return { kind: "vertex", vertex };
    }
    const [ax, ay, ex, ey] = this.sideOf(side);
    const z = tin.z[from]! + share * (tin.z[to]! - tin.z[from]!);
    path.push([ax + share * ex, ay + share * ey, z]);
    const twin = tin.twins[side]!;
    return twin === -1 ? null : { kind: "side", side: twin, share: 1 - share };
  }

  /** From a side into the triangle that it belongs to, or along it when that falls back to it. */
  private fromSide({ side, share }: Place & { kind: "side" }, path: WayPoint[]): Place | null {
    const triangle = Math.floor(side / 3);
    const { east, north } = this.gradientOf(triangle);
    const [ax, ay, ex, ey] = this.sideOf(side);
    // The triangle lies on the left of its side.
    const inward = -(ex * north - ey * east);
    if (inward <= 0) return this.alongSide(side, path);
    const [x, y] = [ax + share * ex, ay + share * ey];
    const opposite = this.tin.triangles[nextSide(nextSide(side))]!;
    const turn = -east * (this.tin.y[opposite]! - y) + north * (this.tin.x[opposite]! - x);
    if (turn === 0) {
      path.push(this.pointOf(opposite));
      return { kind: "vertex", vertex: opposite };
    }
    // With the opposite corner on the left of the ray, it leaves by the side that runs up to it.
    const out = turn > 0 ? nextSide(side) : nextSide(nextSide(side));
    const met = this.meetSide(out, x, y, -east, -north);
    return met === null ? this.alongSide(side, path) : this.cross({ side: out, ...met }, path);
  }

  /** Down a side to its lower end; a level one is left by the end that water leaves first. */
  private alongSide(side: number, path: WayPoint[]): Place {
    const { tin, flood } = this;
    const [a, b] = [tin.triangles[side]!, tin.triangles[nextSide(side)]!];
    const falls = tin.z[b]! - tin.z[a]!;
    const vertex = falls < 0 || (falls === 0 && flood.order[b]! < flood.order[a]!) ? b : a;
    path.push(this.pointOf(vertex));
    return { kind: "vertex", vertex };
  }

  private fromVertex(vertex: number, path: WayPoint[], hollows: Hollow[]): Place | null {
    const { flood, tin } = this;
    const down = this.steepestFrom(vertex);
    if (down === null) {
      if (flood.next[vertex] === -1) return null;
      return this.leaveHollow(vertex, path, hollows);
    }
    if (down.kind === "edge") {
      path.push(this.pointOf(down.to));
      return { kind: "vertex", vertex: down.to };
    }
    const { east, north } = this.gradientOf(Math.floor(down.side / 3));
    const met = this.meetSide(down.side, tin.x[vertex]!, tin.y[vertex]!, -east, -north);
    // Rounding alone can miss the opposite side: its lower end is then as good.
    return met === null
      ? this.alongSide(down.side, path)
      : this.cross({ side: down.side, ...met }, path);
  }

  /**
   * The steepest way down from a vertex: over a triangle (to the side that lies opposite) where its
   * slope points into it, or down an edge; null where all around is as high or higher.
   */
  private steepestFrom(vertex: number): Down | null {
    // Ways run together, so most of them come to vertices where others have been.
    const known = this.downs[vertex];
    if (known !== undefined) return known;
    const found = this.findSteepest(vertex);
    this.downs[vertex] = found;
    return found;
  }

  private findSteepest(vertex: number): Down | null {
    const { tin } = this;
    let steepest = 0;
    let found: Down | null = null;
    const tryEdge = (to: number): void => {
      const run = Math.hypot(tin.x[to]! - tin.x[vertex]!, tin.y[to]! - tin.y[vertex]!);
      const slope = (tin.z[vertex]! - tin.z[to]!) / run;
      if (slope > steepest) [steepest, found] = [slope, { kind: "edge", to }];
    };
    const first = this.leaving[vertex]!;
    let side = first;
    do {
      tryEdge(tin.triangles[nextSide(side)]!);
      tryEdge(tin.triangles[nextSide(nextSide(side))]!);
      const { east, north } = this.gradientOf(Math.floor(side / 3));
      const slope = Math.hypot(east, north);
      if (slope > steepest && this.pointsInto(side, east, north)) {
        [steepest, found] = [slope, { kind: "face", side: nextSide(side) }];
      }
      // The side before it in the same triangle, seen from beyond, leaves the vertex again.
      side = tin.twins[nextSide(nextSide(side))]!;
    } while (side !== -1 && side !== first);
    return found;
  }

  /** Whether the way down a triangle's slope, from the corner where `side` begins, leads into it. */
  private pointsInto(side: number, east: number, north: number): boolean {
    const { tin } = this;
    const [ax, ay, ex, ey] = this.sideOf(side);
    const third = tin.triangles[nextSide(nextSide(side))]!;
    const [fx, fy] = [tin.x[third]! - ax, tin.y[third]! - ay];
    const afterFirst = ex * -north - ey * -east > 0;
    const beforeLast = -east * fy - -north * fx > 0;
    return afterFirst && beforeLast;
  }

  /** Out of a hollow, or over level ground, by the vertices that it was flooded through. */
  private leaveHollow(vertex: number, path: WayPoint[], hollows: Hollow[]): Place | null {
    const { flood, tin } = this;
    const level = flood.level[vertex]!;
    const depth = level - tin.z[vertex]!;
    if (depth > 0) hollows.push({ at: this.pointOf(vertex), depth });
    let now = vertex;
    do {
      now = flood.next[now]!;
      path.push(this.pointOf(now));
    } while (flood.level[now] === level && flood.next[now] !== -1 && !this.fallsFrom(now, level));
    // Level with the survey's outer edge it has left the survey.
    const isOut = flood.next[now] === -1 && flood.level[now] === level;
    return isOut ? null : { kind: "vertex", vertex: now };
  }

  /** Whether level ground ends at a vertex: from there water goes on by itself. */
  private fallsFrom(vertex: number, level: number): boolean {
    const { tin, flood } = this;
    if (tin.z[vertex] !== level) return false;
    const down = flood.next[vertex]!;
    return down !== -1 && flood.level[down]! < level && this.outOf(vertex, level);
  }

  /** Whether the steepest way down from a spill leaves the hollow, and does not lead back in. */
  private outOf(vertex: number, level: number): boolean {
    const down = this.steepestFrom(vertex);
    if (down === null) return false;
    const ends =
      down.kind === "edge"
        ? [down.to]
        : [this.tin.triangles[down.side]!, this.tin.triangles[nextSide(down.side)]!];
    return ends.every((end) => this.flood.level[end]! < level);
  }

  private pointOf(vertex: number): WayPoint {
    const { x, y, z } = this.tin;
    return [x[vertex]!, y[vertex]!, z[vertex]!];
  }

  /** Start of a side, and its run east and north. */
  private sideOf(side: number): [number, number, number, number] {
    const { tin } = this;
    const [a, b] = [tin.triangles[side]!, tin.triangles[nextSide(side)]!];
    return [tin.x[a]!, tin.y[a]!, tin.x[b]! - tin.x[a]!, tin.y[b]! - tin.y[a]!];
  }

  private heightIn(triangle: number, x: number, y: number): number {
    const { tin } = this;
    const a = tin.triangles[3 * triangle]!;
    const { east, north } = this.gradientOf(triangle);
    return tin.z[a]! + east * (x - tin.x[a]!) + north * (y - tin.y[a]!);
  }

  private gradientOf(triangle: number): Gradient {
    return (this.gradients[triangle] ??= gradient(this.tin, triangle));
  }
}

/** The next side of the same triangle. */
function nextSide(side: number): number {
  return side % 3 === 2 ? side - 2 : side + 1;
}

function gradient(tin: Tin, triangle: number): Gradient {
  const [a, b, c] = corners(tin, triangle);
  const [ux, uy] = [tin.x[b]! - tin.x[a]!, tin.y[b]! - tin.y[a]!];
  const [vx, vy] = [tin.x[c]! - tin.x[a]!, tin.y[c]! - tin.y[a]!];
  const [uz, vz] = [tin.z[b]! - tin.z[a]!, tin.z[c]! - tin.z[a]!];
  const area = ux * vy - uy * vx;
  if (area === 0) return { east: 0, north: 0 };
  return { east: (uz * vy - vz * uy) / area, north: (ux * vz - vx * uz) / area };
}
