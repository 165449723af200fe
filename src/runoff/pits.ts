/**
 * Hollows of the ground filled to where they spill, on the triangles' own vertices.
 *
 * Priority flood (Barnes, Lehman and Mulla, "Priority-Flood", Computers & Geosciences 62, 2014) on
 * the graph of triangle edges, from the survey's outer edge inwards. On a surface of plane triangles
 * this is exact: along any way over the surface, the lower ends of the edges that it crosses make a
 * way along edges that is nowhere higher.
 */
import FlatQueue from "flatqueue";
import type { Tin } from "../ground/index.js";

export interface Flood {
  /** Level to which water stands over each vertex before it runs off the survey, m local. */
  level: Float64Array;
  /** The vertex towards which the water over each one leaves; -1 on the survey's outer edge. */
  next: Int32Array;
  /** Place of each vertex in the order of flooding: `next` always comes earlier. */
  order: Int32Array;
}

/** Floods the ground from its outer edge inwards. */
export function floodFrom(tin: Tin): Flood {
  const count = tin.x.length;
  const level = new Float64Array(count).fill(NaN);
  const next = new Int32Array(count).fill(-1);
  const order = new Int32Array(count).fill(-1);
  const neighbours = neighboursOf(tin);
  const queue = new FlatQueue<number>();
  for (const v of tin.hull) {
    if (!Number.isNaN(level[v]!)) continue;
    level[v] = tin.z[v]!;
    queue.push(v, tin.z[v]!);
  }
  for (let turn = 0; ; turn++) {
    const v = queue.pop();
    if (v === undefined) break;
    order[v] = turn;
    for (let i = neighbours.start[v]!; i < neighbours.start[v + 1]!; i++) {
      const w = neighbours.of[i]!;
      if (!Number.isNaN(level[w]!)) continue;
      const stands = Math.max(tin.z[w]!, level[v]!);
      level[w] = stands;
      next[w] = v;
      queue.push(w, stands);
    }
  }
  return { level, next, order };
}

/** The vertices joined to each vertex by an edge: those of v at `start[v]` to `start[v + 1]`. */
function neighboursOf({ x, triangles }: Tin): { start: Int32Array; of: Int32Array } {
  const start = new Int32Array(x.length + 1);
  // Every inner edge is met from both sides and so counts twice; that does no harm.
  for (const v of triangles) start[v + 1]! += 2;
  for (let v = 0; v < x.length; v++) start[v + 1]! += start[v]!;
  const at = start.slice();
  const of = new Int32Array(2 * triangles.length);
  for (let t = 0; t < triangles.length; t += 3) {
    for (let k = 0; k < 3; k++) {
      const v = triangles[t + k]!;
      of[at[v]!++] = triangles[t + ((k + 1) % 3)]!;
      of[at[v]!++] = triangles[t + ((k + 2) % 3)]!;
    }
  }
  return { start, of };
}
