/** The one place that knows the triangulating library (delaunator). */
import Delaunator from "delaunator";
import { constrain } from "./constrain.js";
import { nextSide, sideBefore, type Mesh } from "./sides.js";

export interface Triangulation {
  /** Vertex indices, three per triangle, counter-clockwise with y up. */
  triangles: Uint32Array;
  /** For each side (see sides.ts) the same side seen from the triangle beyond, or -1. */
  twins: Int32Array;
  /** Vertex indices around the outside, counter-clockwise. */
  hull: Uint32Array;
}

/** Why a triangulation could not be made. */
export type TriangulationFailure =
  | { failed: "in-line" }
  | { failed: "edge"; from: number; to: number; fault: "lost-vertex" | "crosses" };

/** Triangles on the outside that are thinner than this are nothing but rounding, m. */
const SLIVER = 1e-6;

/**
 * Constrained Delaunay triangulation of distinct places.
 *
 * `x` and `y` are m, any frame with y up; `edges` holds pairs of their numbers that must be sides
 * of triangles. Preconditions: no two places the same; no two edges cross. Triangles on the outside
 * that are thinner than `sliver` (m) are left out. `spare` is memory that may be written over, two
 * numbers for each place, for use in place of new memory.
 */
export function triangulate(
  x: Float64Array,
  y: Float64Array,
  edges: ArrayLike<number> = [],
  sliver = SLIVER,
  spare: Float64Array = new Float64Array(2 * x.length),
): Triangulation | TriangulationFailure {
  const made = delaunay(x, y, spare.subarray(0, 2 * x.length));
  if (made.triangles.length === 0) return { failed: "in-line" };
  // Slivers go first: among them may be some that rounding has turned inside out.
  const whole = withoutHullSlivers({ x, y, ...made }, sliver);
  const fault = constrain({ x, y, ...whole }, edges);
  if (fault) return { failed: "edge", ...fault };
  return edges.length === 0 ? whole : withoutHullSlivers({ x, y, ...whole }, sliver);
}

function delaunay(x: Float64Array, y: Float64Array, places: Float64Array): Triangulation {
  for (let i = 0; i < x.length; i++) {
    places[2 * i] = x[i]!;
    // The library goes counter-clockwise with y downward.
    places[2 * i + 1] = -y[i]!;
  }
  const { triangles, halfedges, hull } = new Delaunator(places);
  return {
    triangles: triangles,
    twins: halfedges,
    hull: hull,
  };
}

/**
 * Drops triangles of no thickness along the hull. Points that lie in line on the ground need not do
 * so after conversion from feet; delaunator then closes the hull with a triangle of 1e-15 m².
 */
function withoutHullSlivers(mesh: Mesh & Triangulation, sliver: number): Triangulation {
  const { triangles, twins, hull } = mesh;
  const dropped = hullSlivers(mesh, sliver);
  if (dropped.size === 0) return { triangles, twins, hull };
  const count = triangles.length / 3 - dropped.size;
  const numbers = new Int32Array(triangles.length / 3).fill(-1);
  for (let t = 0, next = 0; t < numbers.length; t++) if (!dropped.has(t)) numbers[t] = next++;
  const left = { triangles: new Uint32Array(3 * count), twins: new Int32Array(3 * count) };
  for (let side = 0; side < triangles.length; side++) {
    const t = numbers[Math.floor(side / 3)]!;
    if (t < 0) continue;
    const twin = twins[side]!;
    const beyond = twin < 0 ? -1 : numbers[Math.floor(twin / 3)]!;
    left.triangles[3 * t + (side % 3)] = triangles[side]!;
    left.twins[3 * t + (side % 3)] = beyond < 0 ? -1 : 3 * beyond + (twin % 3);
  }
  return { ...left, hull: outsideOf(left.triangles, left.twins) };
}

/** Triangles to drop: outer ones that are slivers, and what is a sliver once those are gone. */
function hullSlivers(mesh: Mesh, sliver: number): Set<number> {
  const { triangles, twins } = mesh;
  const dropped = new Set<number>();
  const outer: number[] = [];
  for (let side = 0; side < twins.length; side++) if (twins[side] === -1) outer.push(side);
  const outside = new Set(outer.map((side) => triangles[side]!));
  for (let side = outer.pop(); side !== undefined; side = outer.pop()) {
    const t = Math.floor(side / 3);
    const apex = triangles[sideBefore(side)]!;
    // An outer apex would leave two grounds that touch in a point.
    if (dropped.has(t) || outside.has(apex) || thickness(mesh, side) >= sliver) continue;
    dropped.add(t);
    outside.add(apex);
    outer.push(twins[nextSide(side)]!, twins[sideBefore(side)]!);
  }
  return dropped;
}

/** Height of a triangle over one of its sides, m. */
function thickness({ x, y, triangles }: Mesh, side: number): number {
  const [a, b, c] = [triangles[side]!, triangles[nextSide(side)]!, triangles[sideBefore(side)]!];
  const [dx, dy] = [x[b]! - x[a]!, y[b]! - y[a]!];
  const off = dx * (y[c]! - y[a]!) - dy * (x[c]! - x[a]!);
  return Math.abs(off) / Math.hypot(dx, dy);
}

/** Vertices around the outside of triangles that have one outside, counter-clockwise. */
function outsideOf(triangles: Uint32Array, twins: Int32Array): Uint32Array {
  const after = new Map<number, number>();
  for (let side = 0; side < twins.length; side++) {
    if (twins[side] === -1) after.set(triangles[side]!, triangles[nextSide(side)]!);
  }
  const start = after.keys().next().value;
  if (start === undefined) return new Uint32Array(0);
  const around = [start];
  for (let vertex = after.get(start); vertex !== undefined && vertex !== start;) {
    around.push(vertex);
    vertex = after.get(vertex);
  }
  return Uint32Array.from(around);
}
