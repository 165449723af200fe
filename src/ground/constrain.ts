/** Makes given edges part of a triangulation, keeping it Delaunay elsewhere. */
import { insideCircle, nextSide, sideBefore, turnOf, type Mesh } from "./sides.js";

/** An edge that cannot be followed: an end of it is in no triangle, or it crosses another edge. */
export interface EdgeFault {
  fault: "lost-vertex" | "crosses";
  from: number;
  to: number;
}

/**
 * Makes edges, pairs of vertex numbers, sides of triangles, in place: the triangles that an edge
 * crosses are taken out and what lies to either side of it is filled anew. An edge that passes
 * exactly through a vertex is followed in two parts. All tests are exact. Returns null, or the first
 * edge that cannot be followed; the mesh is then whole but lacks that edge.
 *
 * Source: M. V. Anglada, "An improved incremental algorithm for constructing restricted Delaunay
 * triangulations", Computers & Graphics 21 (1997), 215–223 (recalled).
 */
export function constrain(mesh: Mesh, edges: ArrayLike<number>): EdgeFault | null {
  if (edges.length === 0) return null;
  const follower = new EdgeFollower(mesh);
  for (let i = 0; i < edges.length; i += 2) {
    const [from, to] = [edges[i]!, edges[i + 1]!];
    const fault = follower.follow(from, to);
    if (fault) return { fault, from, to };
  }
  return null;
}

/** Vertices in a row and, for each but the last, what is known of the edge to the next. */
interface Chain {
  vertices: number[];
  edges: ChainEdge[];
}

interface ChainEdge {
  /** The side that the edge was, and the one beyond it (-1: none), before the corridor was filled. */
  side: number;
  beyond: number;
  /** Whether it is a given edge. */
  isKept: boolean;
}

/** The triangles that a way crosses, and what bounds them on its right and on its left. */
interface Corridor {
  triangles: number[];
  right: Chain;
  left: Chain;
}

/** Triangles for use, and the new number of each side between what is filled and the rest. */
interface Filling {
  taken: ReadonlySet<number>;
  free: number[];
  moved: Map<number, number>;
}

class EdgeFollower {
  /** Sides that are a given edge or part of one. */
  private readonly kept = new Set<number>();
  /** A side that starts at each vertex, or -1. */
  private readonly sideFrom: Int32Array;

  constructor(private readonly mesh: Mesh) {
    const { x, triangles } = mesh;
    this.sideFrom = new Int32Array(x.length).fill(-1);
    for (let side = 0; side < triangles.length; side++) this.sideFrom[triangles[side]!] = side;
  }

  follow(from: number, to: number): EdgeFault["fault"] | null {
    if (this.sideFrom[from]! < 0 || this.sideFrom[to]! < 0) return "lost-vertex";
    let here = from;
    while (here !== to) {
      const reached = this.followToVertex(here, to);
      if (reached === null) return "crosses";
      if (reached === here)
        throw new Error(`expected to get on from vertex ${here}, got back to it`);
      here = reached;
    }
    return null;
  }

  /** Follows the way to a vertex as far as the first vertex on it; returns that, or null. */
  private followToVertex(from: number, to: number): number | null {
    const start = this.startOfWay(from, to);
    if (!start) return null;
    if (start.side < 0) {
      this.keep(this.sideBetween(from, start.vertex));
      return start.vertex;
    }
    const corridor: Corridor = { triangles: [], right: emptyChain(), left: emptyChain() };
    const reached = this.cross(start.side, [from, to], corridor);
    if (reached !== null) this.fill(corridor);
    return reached;
  }

  /**
   * Goes from a vertex across a side towards another vertex, as far as the first vertex on the way.
   * Returns that one, or null when the way crosses a kept side or leaves the ground.
   */
  private cross(
    first: number,
    [from, to]: readonly [number, number],
    { triangles: passed, right, left }: Corridor,
  ): number | null {
    const { triangles, twins } = this.mesh;
    let side = first;
    passed.push(Math.floor(side / 3));
    right.vertices.push(from);
    left.vertices.push(from);
    this.extend(right, sideBefore(side), triangles[side]!);
    this.extend(left, nextSide(side), triangles[nextSide(side)]!);
    for (;;) {
      const twin = twins[side]!;
      if (twin < 0 || this.kept.has(side)) return null;
      passed.push(Math.floor(twin / 3));
      const apex = triangles[sideBefore(twin)]!;
      const turn = apex === to ? 0 : turnOf(this.mesh, from, to, apex);
      if (turn <= 0) this.extend(right, nextSide(twin), apex);
      if (turn >= 0) this.extend(left, sideBefore(twin), apex);
      if (turn === 0) return apex;
      // The twin starts on the left, so the side after it starts on the right.
      side = turn > 0 ? nextSide(twin) : sideBefore(twin);
    }
  }

  private extend(chain: Chain, side: number, vertex: number): void {
    chain.vertices.push(vertex);
    chain.edges.push({ side, beyond: this.mesh.twins[side]!, isKept: this.kept.has(side) });
  }

  /** Fills a corridor anew on both sides of the way through it. */
  private fill({ triangles, right, left }: Corridor): void {
    for (const t of triangles) for (let k = 0; k < 3; k++) this.kept.delete(3 * t + k);
    const filling = {
      taken: new Set(triangles),
      free: triangles,
      moved: new Map<number, number>(),
    };
    const base = this.fillChain(right, filling);
    const other = this.fillChain(reversed(left), filling);
    this.link(base, other);
    this.keep(base);
  }

  /**
   * Fills the ground between a chain, which goes counter-clockwise about it, and the straight way
   * from its end back to its start with Delaunay triangles. Returns the side along that way.
   */
  private fillChain({ vertices, edges }: Chain, filling: Filling): number {
    let base = -1;
    const parts = [{ first: 0, last: vertices.length - 1, across: -1 }];
    for (let part = parts.pop(); part; part = parts.pop()) {
      const { first, last, across } = part;
      if (last === first + 1) {
        this.join(across, edges[first]!, filling);
        continue;
      }
      const apex = this.apexFor(vertices, first, last);
      const t = filling.free.pop();
      if (t === undefined)
        throw new Error("expected as many triangles as before, got one too many");
      this.place(t, [vertices[first]!, vertices[apex]!, vertices[last]!]);
      if (across < 0) base = 3 * t + 2;
      else this.link(3 * t + 2, across);
      parts.push({ first, last: apex, across: 3 * t }, { first: apex, last, across: 3 * t + 1 });
    }
    return base;
  }

  /** Joins a new side to what lay beyond the edge that it is. */
  private join(side: number, { side: before, beyond, isKept }: ChainEdge, filling: Filling): void {
    filling.moved.set(before, side);
    if (isKept) this.kept.add(side);
    if (beyond < 0 || !filling.taken.has(Math.floor(beyond / 3))) {
      this.link(side, beyond);
      return;
    }
    // An edge that juts into the corridor is met twice, once from each side.
    const other = filling.moved.get(beyond);
    if (other !== undefined) this.link(side, other);
  }

  /** The vertex between two of a chain whose circle with them holds none of the others. */
  private apexFor(vertices: readonly number[], first: number, last: number): number {
    const [a, b] = [vertices[first]!, vertices[last]!];
    let apex = -1;
    for (let i = first + 1; i < last; i++) {
      const vertex = vertices[i]!;
      if (turnOf(this.mesh, a, vertex, b) <= 0) continue;
      if (apex < 0 || insideCircle(this.mesh, [a, vertices[apex]!, b, vertex])) apex = i;
    }
    if (apex < 0) throw new Error(`expected a vertex beside ${a} to ${b}, got none`);
    return apex;
  }

  private place(t: number, corners: readonly [number, number, number]): void {
    corners.forEach((vertex, k) => {
      this.mesh.triangles[3 * t + k] = vertex;
      this.sideFrom[vertex] = 3 * t + k;
    });
  }

  private link(side: number, beyond: number): void {
    this.mesh.twins[side] = beyond;
    if (beyond >= 0) this.mesh.twins[beyond] = side;
  }

  private keep(side: number): void {
    this.kept.add(side);
    const twin = this.mesh.twins[side]!;
    if (twin >= 0) this.kept.add(twin);
  }

  /** The first side across the way from a vertex to another, or (side -1) the first vertex on it. */
  private startOfWay(from: number, to: number): { side: number; vertex: number } | null {
    const { mesh } = this;
    const start = this.firstSideFrom(from);
    let side = start;
    do {
      const right = mesh.triangles[nextSide(side)]!;
      const left = mesh.triangles[sideBefore(side)]!;
      for (const vertex of [right, left]) {
        if (vertex === to || this.isOnWay(from, to, vertex)) return { side: -1, vertex };
      }
      const isAcross = turnOf(mesh, from, to, right) < 0 && turnOf(mesh, from, to, left) > 0;
      if (isAcross) return { side: nextSide(side), vertex: -1 };
      side = mesh.twins[sideBefore(side)]!;
    } while (side >= 0 && side !== start);
    return null;
  }

  private isOnWay(from: number, to: number, vertex: number): boolean {
    if (turnOf(this.mesh, from, to, vertex) !== 0) return false;
    const { x, y } = this.mesh;
    const [dx, dy] = [x[to]! - x[from]!, y[to]! - y[from]!];
    return dx * (x[vertex]! - x[from]!) + dy * (y[vertex]! - y[from]!) > 0;
  }

  /** The side from a vertex that is furthest clockwise, so that a walk about it misses none. */
  private firstSideFrom(vertex: number): number {
    const { twins } = this.mesh;
    const start = this.sideFrom[vertex]!;
    let side = start;
    do {
      const twin = twins[side]!;
      if (twin < 0) return side;
      side = nextSide(twin);
    } while (side !== start);
    return side;
  }

  /** The side from p to q, or where the ground ends there the one from q to p. */
  private sideBetween(p: number, q: number): number {
    const { triangles, twins } = this.mesh;
    const start = this.firstSideFrom(p);
    let side = start;
    do {
      if (triangles[nextSide(side)] === q) return side;
      const before = sideBefore(side);
      if (triangles[before] === q) return before;
      side = twins[before]!;
    } while (side >= 0 && side !== start);
    throw new Error(`expected a side between vertices ${p} and ${q}, got none`);
  }
}

function emptyChain(): Chain {
  return { vertices: [], edges: [] };
}

function reversed({ vertices, edges }: Chain): Chain {
  return { vertices: vertices.reverse(), edges: edges.reverse() };
}
