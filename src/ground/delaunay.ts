/** The one place that knows the triangulating libraries (delaunator, Constrainautor). */
import Constrainautor from "@kninnug/constrainautor";
import Delaunator from "delaunator";

export interface Triangulation {
  /** Vertex indices, three per triangle, counter-clockwise with y up. */
  triangles: Uint32Array;
  /** Vertex indices around the outside, counter-clockwise. */
  hull: Uint32Array;
}

/** Why a triangulation could not be made. */
export type TriangulationFailure = { failed: "in-line" } | { failed: "constraint"; text: string };

/**
 * Constrained Delaunay triangulation of distinct points.
 *
 * `xy` holds x, y pairs (m, any frame); `edges` holds pairs of point indices that must be triangle
 * edges. Preconditions: no two points at one place; no edge passes through a third point; no two
 * edges cross. Delaunator winds its triangles clockwise with y up; they are re-wound here.
 */
export function triangulate(
  xy: Float64Array,
  edges: readonly (readonly [number, number])[],
): Triangulation | TriangulationFailure {
  const delaunay = new Delaunator(xy);
  if (delaunay.triangles.length === 0) return { failed: "in-line" };
  if (edges.length > 0) {
    // Constrainautor never comes back from an edge to a point that delaunator has dropped.
    const used = new Set(delaunay.triangles);
    const lost = edges.flat().find((vertex) => !used.has(vertex));
    if (lost !== undefined)
      return { failed: "constraint", text: `point ${lost} is in no triangle` };
    try {
      const constrained = new Constrainautor(delaunay);
      for (const [from, to] of edges) constrained.constrainOne(from, to);
      constrained.delaunify(true);
    } catch (error) {
      return { failed: "constraint", text: error instanceof Error ? error.message : String(error) };
    }
  }
  const whole = { triangles: rewound(delaunay.triangles), hull: delaunay.hull.slice().reverse() };
  return hasHullSliver(xy, delaunay) ? withoutHullSlivers(xy, whole) : whole;
}

/** True when a triangle on the outside is a sliver: its side there has no half-edge beyond. */
function hasHullSliver(
  xy: Float64Array,
  { triangles, halfedges }: { triangles: ArrayLike<number>; halfedges: ArrayLike<number> },
): boolean {
  for (let side = 0; side < halfedges.length; side++) {
    if (halfedges[side] !== -1) continue;
    const first = side - (side % 3);
    const [b, c] = [first + ((side + 1) % 3), first + ((side + 2) % 3)];
    if (thickness(xy, triangles[side]!, triangles[b]!, triangles[c]!) < SLIVER) return true;
  }
  return false;
}

/** Triangles on the outside that are thinner than this are nothing but rounding, m. */
const SLIVER = 1e-6;

/**
 * Drops triangles of no thickness along the hull. Points that lie in line on the ground need not do
 * so after conversion from feet; delaunator then closes the hull with a triangle of 1e-15 m².
 */
function withoutHullSlivers(xy: Float64Array, { triangles, hull }: Triangulation): Triangulation {
  const owner = new Map<string, number>();
  for (let t = 0; t < triangles.length; t++) {
    const next = t % 3 === 2 ? t - 2 : t + 1;
    owner.set(`${triangles[t]!},${triangles[next]!}`, t);
  }
  const dropped = new Set<number>();
  const outside: number[] = [];
  const ahead = [...hull, hull[0]!].reverse();
  let here = ahead.pop()!;
  while (ahead.length > 0) {
    const there = ahead[ahead.length - 1]!;
    const corner = owner.get(`${here},${there}`);
    const triangle = corner === undefined ? -1 : Math.floor(corner / 3);
    const apex = corner === undefined ? -1 : triangles[3 * triangle + ((corner + 2) % 3)]!;
    if (apex >= 0 && !dropped.has(triangle) && thickness(xy, here, there, apex) < SLIVER) {
      dropped.add(triangle);
      ahead.push(apex);
      continue;
    }
    outside.push(here);
    here = there;
    ahead.pop();
  }
  if (dropped.size === 0) return { triangles, hull };
  return {
    triangles: triangles.filter((_, t) => !dropped.has(Math.floor(t / 3))),
    hull: Uint32Array.from(outside),
  };
}

/** Height of a triangle over its side a–b, m. */
function thickness(xy: Float64Array, a: number, b: number, apex: number): number {
  const [dx, dy] = [xy[2 * b]! - xy[2 * a]!, xy[2 * b + 1]! - xy[2 * a + 1]!];
  const off = dx * (xy[2 * apex + 1]! - xy[2 * a + 1]!) - dy * (xy[2 * apex]! - xy[2 * a]!);
  return Math.abs(off) / Math.hypot(dx, dy);
}

function rewound(clockwise: ArrayLike<number>): Uint32Array {
  const triangles = Uint32Array.from(clockwise);
  for (let i = 0; i < triangles.length; i += 3) {
    const second = triangles[i + 1]!;
    triangles[i + 1] = triangles[i + 2]!;
    triangles[i + 2] = second;
  }
  return triangles;
}
