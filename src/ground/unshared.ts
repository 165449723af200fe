/** Edges of a group of cells along which no two of the group meet: the group's own edge. */
import { PlaceHash } from "./placeHash.js";
import { Segments } from "./segments.js";
import { Stretches } from "./stretches.js";

/** From so many edges on, those with an exact twin are sorted out before all are compared. */
const MANY = 24;

/**
 * Adds to `into` the stretches of edges along which no other of them runs the opposite way. `near`,
 * m: what lies within it is on the line.
 */
export function addUnshared(edges: Segments, near: number, into: Segments): void {
  const alone = edges.count > MANY ? withoutTwins(edges, near) : edges;
  const left = new Stretches();
  for (let i = 0; i < alone.count; i++) {
    const { ends } = alone;
    const at = 4 * i;
    left.clear();
    left.add(0, 1);
    for (let j = 0; j < alone.count && left.count > 0; j++) {
      if (j !== i) takeShared(ends, at, 4 * j, near, left);
    }
    left.addTo(into, ends[at]!, ends[at + 1]!, ends[at + 2]!, ends[at + 3]!, near);
  }
}

/** Takes off an edge the stretch along which another runs the opposite way. */
function takeShared(
  ends: Float64Array,
  edge: number,
  other: number,
  near: number,
  left: Stretches,
): void {
  const px = ends[edge]!;
  const py = ends[edge + 1]!;
  const dx = ends[edge + 2]! - px;
  const dy = ends[edge + 3]! - py;
  const squared = dx * dx + dy * dy;
  const most = near * near * squared;
  const ax = ends[other]! - px;
  const ay = ends[other + 1]! - py;
  if ((dx * ay - dy * ax) ** 2 > most) return;
  const bx = ends[other + 2]! - px;
  const by = ends[other + 3]! - py;
  if ((dx * by - dy * bx) ** 2 > most) return;
  const from = (dx * ax + dy * ay) / squared;
  const to = (dx * bx + dy * by) / squared;
  if (from > to) left.remove(to, from);
}

/** Leaves out edges that another runs back along from end to end. */
function withoutTwins({ count, ends }: Segments, near: number): Segments {
  const places = new PlaceHash(2 * count, near);
  const start = new Int32Array(count);
  const end = new Int32Array(count);
  for (let i = 0; i < count; i++) {
    start[i] = places.numberOf(ends[4 * i]!, ends[4 * i + 1]!);
    end[i] = places.numberOf(ends[4 * i + 2]!, ends[4 * i + 3]!);
  }
  /** By place, the first of the edges that leave it and have met no twin; −1 for none. */
  const leaving = new Int32Array(places.count).fill(-1);
  const next = new Int32Array(count);
  for (let i = 0; i < count; i++) {
    if (takeEdge(leaving, next, end, end[i]!, start[i]!)) continue;
    next[i] = leaving[start[i]!]!;
    leaving[start[i]!] = i;
  }
  const alone = new Segments();
  for (let place = 0; place < places.count; place++) {
    for (let i = leaving[place]!; i >= 0; i = next[i]!) {
      alone.add(ends[4 * i]!, ends[4 * i + 1]!, ends[4 * i + 2]!, ends[4 * i + 3]!);
    }
  }
  return alone;
}

/** Takes an edge between two places off the lists. False when there is none. */
function takeEdge(
  leaving: Int32Array,
  next: Int32Array,
  end: Int32Array,
  from: number,
  to: number,
): boolean {
  let before = -1;
  for (let i = leaving[from]!; i >= 0; i = next[i]!) {
    if (end[i] === to) {
      if (before < 0) leaving[from] = next[i]!;
      else next[before] = next[i]!;
      return true;
    }
    before = i;
  }
  return false;
}
