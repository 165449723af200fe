// The package gives its TypeScript source as its types, and that source does not compile under our
// stricter checks. tsconfig.json points here instead: the part of it that we use.

interface Triangulated {
  coords: ArrayLike<number>;
  triangles: { readonly length: number; [n: number]: number };
  halfedges: { readonly length: number; [n: number]: number };
  hull: ArrayLike<number>;
}

/** Makes a triangulation of delaunator's keep given edges; changes it in place. */
export default class Constrainautor {
  /** Throws if `triangulated` is not what delaunator gives or holds no triangle. */
  constructor(triangulated: Triangulated);
  /** Makes `from`–`to` an edge; throws if it crosses a kept edge or passes through a point. */
  constrainOne(from: number, to: number): number;
  /** Restores the Delaunay condition on the edges that are not kept; `deep` until all hold. */
  delaunify(deep?: boolean): this;
}
