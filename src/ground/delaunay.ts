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
    try {
      const constrained = new Constrainautor(delaunay);
      for (const [from, to] of edges) constrained.constrainOne(from, to);
      constrained.delaunify(true);
    } catch (error) {
      return { failed: "constraint", text: error instanceof Error ? error.message : String(error) };
    }
  }
  return { triangles: rewound(delaunay.triangles), hull: delaunay.hull.slice().reverse() };
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
