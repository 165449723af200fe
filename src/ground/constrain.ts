/** Makes given edges part of a triangulation, keeping it Delaunay elsewhere. */
import { flip, insideCircle, nextSide, sideBefore, turnOf, type Mesh } from "./sides.js";

/** An edge that cannot be followed: an end of it is in no triangle, or it crosses another edge. */
export interface EdgeFault {
  fault: "lost-vertex" | "crosses";
  from: number;
  to: number;
}

/**
 * Makes edges, pairs of vertex numbers, sides of triangles by turning diagonals, in place. An edge
 * that passes exactly through a vertex is followed in two parts. All tests are exact. Returns null,
 * or the first edge that cannot be followed; the mesh is then whole but lacks that edge.
 *
 * Source: S. W. Sloan, "A fast algorithm for generating constrained Delaunay triangulations",
 * Computers & Structures 47 (1993), 441–450 (recalled).
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
      const crossed: number[] = [];
      const reached = this.wayTo(here, to, crossed);
      if (reached === null) return "crosses";
      const turned = this.turnAside(crossed, here, reached);
      this.keep(here, reached);
      this.legalize(turned);
      here = reached;
    }
    return null;
  }

  /**
   * Goes from a vertex towards another as far as the first vertex on the way, and returns that one,
   * or null when the way crosses a kept side or leaves the ground. Adds the sides crossed to
   * `crossed`, each as its vertex on the right of the way and its vertex on the left.
   */
  private wayTo(from: number, to: number, crossed: number[]): number | null {
    const { triangles, twins } = this.mesh;
    const start = this.startOfWay(from, to);
    if (start === null || start.side < 0) return start ? start.vertex : null;
    let { side } = start;
    for (;;) {
      const twin = twins[side]!;
      if (twin < 0 || this.kept.has(side)) return null;
      crossed.push(triangles[side]!, triangles[twin]!);
      const apex = triangles[sideBefore(twin)]!;
      const turn = apex === to ? 0 : turnOf(this.mesh, from, to, apex);
      if (turn === 0) return apex;
      side = turn > 0 ? nextSide(twin) : sideBefore(twin);
    }
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

  /** The side from p to q, or where the ground ends there the one from q to p; -1 if none. */
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
    return -1;
  }

  private keep(p: number, q: number): void {
    const side = this.sideBetween(p, q);
    if (side < 0) throw new Error(`expected a side between vertices ${p} and ${q}, got none`);
    this.kept.add(side);
    const twin = this.mesh.twins[side]!;
    if (twin >= 0) this.kept.add(twin);
  }

  /** Turns sides until none crosses the way; returns the new ones, as pairs of vertices. */
  private turnAside(crossed: number[], from: number, to: number): number[] {
    const { mesh } = this;
    const turned: number[] = [];
    let inVain = 0;
    for (let next = 0; next < crossed.length; next += 2) {
      const [p, q] = [crossed[next]!, crossed[next + 1]!];
      const side = this.sideBetween(p, q);
      const r = mesh.triangles[sideBefore(side)]!;
      const s = mesh.triangles[sideBefore(mesh.twins[side]!)]!;
      if (this.isBetween(r, s, p, q)) {
        this.turn(side);
        inVain = 0;
        const stillCrosses = this.endsAt(r, s, from, to) ? false : this.isBetween(from, to, r, s);
        (stillCrosses ? crossed : turned).push(r, s);
      } else {
        crossed.push(p, q);
        if (++inVain > crossed.length - next) {
          throw new Error(`expected the way from vertex ${from} to ${to} to clear, got stuck`);
        }
      }
    }
    return turned;
  }

  private endsAt(r: number, s: number, from: number, to: number): boolean {
    return r === from || r === to || s === from || s === to;
  }

  /** True when p and q lie on different sides of the line through a and b. */
  private isBetween(a: number, b: number, p: number, q: number): boolean {
    const one = turnOf(this.mesh, a, b, p);
    const two = turnOf(this.mesh, a, b, q);
    return (one > 0 && two < 0) || (one < 0 && two > 0);
  }

  /** Makes sides (pairs of vertices) and what they disturb Delaunay, kept sides aside. */
  private legalize(pairs: number[]): void {
    const { mesh } = this;
    const { triangles, twins } = mesh;
    while (pairs.length > 0) {
      const q = pairs.pop()!;
      const p = pairs.pop()!;
      const side = this.sideBetween(p, q);
      if (side < 0 || this.kept.has(side)) continue;
      const twin = twins[side]!;
      if (twin < 0) continue;
      const [a, b] = [triangles[side]!, triangles[twin]!];
      const c = triangles[sideBefore(side)]!;
      const d = triangles[sideBefore(twin)]!;
      if (!insideCircle(mesh, [a, b, c, d])) continue;
      this.turn(side);
      pairs.push(a, d, d, b, b, c, c, a);
    }
  }

  /** Turns the diagonal at a side; what is known of the sides that change number goes with them. */
  private turn(side: number): void {
    const { triangles, twins } = this.mesh;
    const twin = twins[side]!;
    const [before, beforeTwin] = [sideBefore(side), sideBefore(twin)];
    flip(this.mesh, side);
    // A side that is turned is not kept itself, so these two numbers are free.
    if (this.kept.delete(beforeTwin)) this.kept.add(side);
    if (this.kept.delete(before)) this.kept.add(twin);
    for (const each of [side, nextSide(side), twin, nextSide(twin)]) {
      this.sideFrom[triangles[each]!] = each;
    }
  }
}
