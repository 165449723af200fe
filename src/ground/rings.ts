/** Directed segments joined into closed rings. */
import type { Place } from "./outline.js";

/** From x, y to x, y, local m; what it bounds lies to its left. */
export type Segment = readonly [number, number, number, number];

/**
 * Joins directed segments into closed rings. Ends nearer to each other than `near` (m) are one
 * place. Where rings touch at a place each goes on by its sharpest left turn, so that they part.
 */
export function joinRings(segments: readonly Segment[], near: number): Place[][] {
  const { vertexOf, places } = joinedEnds(segments, near);
  const leaving: number[][] = places.map(() => []);
  segments.forEach((_, i) => {
    if (vertexOf[2 * i] !== vertexOf[2 * i + 1]) leaving[vertexOf[2 * i]!]!.push(i);
  });
  const used = new Uint8Array(segments.length);
  const rings: Place[][] = [];
  for (let i = 0; i < segments.length; i++) {
    if (used[i] === 1 || vertexOf[2 * i] === vertexOf[2 * i + 1]) continue;
    const ring = walk(i, { places, leaving, used, vertexOf });
    if (ring) {
      const plain = withoutStraight(ring, near);
      if (plain.length >= 3) rings.push(plain);
    }
  }
  return rings;
}

/** Gives segment ends that lie together one number: end 2i is the start of segment i. */
function joinedEnds(
  segments: readonly Segment[],
  near: number,
): { vertexOf: Int32Array; places: Place[] } {
  const count = 2 * segments.length;
  const x = new Float64Array(count);
  const y = new Float64Array(count);
  segments.forEach(([ax, ay, bx, by], i) => {
    x[2 * i] = ax;
    y[2 * i] = ay;
    x[2 * i + 1] = bx;
    y[2 * i + 1] = by;
  });
  const order = Int32Array.from(x.keys()).sort((i, j) => x[i]! - x[j]!);
  const vertexOf = new Int32Array(count).fill(-1);
  const places: Place[] = [];
  for (let a = 0; a < count; a++) {
    const i = order[a]!;
    if (vertexOf[i] !== -1) continue;
    vertexOf[i] = places.length;
    for (let b = a + 1; b < count && x[order[b]!]! - x[i]! <= near; b++) {
      const j = order[b]!;
      if (vertexOf[j] === -1 && Math.abs(y[j]! - y[i]!) <= near) vertexOf[j] = places.length;
    }
    places.push([x[i]!, y[i]!]);
  }
  return { vertexOf, places };
}

interface Walking {
  places: readonly Place[];
  leaving: readonly (readonly number[])[];
  used: Uint8Array;
  vertexOf: Int32Array;
}

/** The ring that a segment starts, or null when it leads nowhere (a stray crumb). */
function walk(start: number, { places, leaving, used, vertexOf }: Walking): Place[] | null {
  const home = vertexOf[2 * start]!;
  const ring: Place[] = [places[home]!];
  let here = start;
  for (;;) {
    used[here] = 1;
    const at = vertexOf[2 * here + 1]!;
    if (at === home) return ring;
    ring.push(places[at]!);
    const from = places[vertexOf[2 * here]!]!;
    const ahead = leaving[at]!.filter((i) => used[i] === 0);
    if (ahead.length === 0) return null;
    here = ahead[0]!;
    for (const other of ahead) {
      const turned = turnOf(from, places[at]!, places[vertexOf[2 * other + 1]!]!);
      if (turned > turnOf(from, places[at]!, places[vertexOf[2 * here + 1]!]!)) here = other;
    }
  }
}

/** Turn at b on the way from a to c, radians, left positive. */
function turnOf(a: Place, b: Place, c: Place): number {
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], c[0] - b[0], c[1] - b[1]];
  return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
}

/** Leaves out corners that lie, within `near`, straight between those beside them. */
function withoutStraight(ring: readonly Place[], near: number): Place[] {
  const kept: Place[] = [];
  for (let i = 0; i < ring.length; i++) {
    const before = kept[kept.length - 1] ?? ring[ring.length - 1]!;
    const after = ring[(i + 1) % ring.length]!;
    const here = ring[i]!;
    const [dx, dy] = [after[0] - before[0], after[1] - before[1]];
    const off = dx * (here[1] - before[1]) - dy * (here[0] - before[0]);
    if (Math.abs(off) > near * Math.hypot(dx, dy)) kept.push(here);
  }
  return kept;
}
