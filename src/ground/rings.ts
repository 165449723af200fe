/** Directed segments joined into closed rings. */
import type { Place } from "./outline.js";
import { PlaceHash } from "./placeHash.js";
import type { Segments } from "./segments.js";

/** Segments that know which places they run between, and which leave each place. */
interface Joined {
  places: PlaceHash;
  from: Int32Array;
  to: Int32Array;
  /** By place, the first of the segments that leave it; by segment, the next. −1 ends a list. */
  leaving: Int32Array;
  next: Int32Array;
  used: Uint8Array;
}

/**
 * Joins directed segments into closed rings; what they bound lies to their left. Ends nearer to
 * each other than `near` (m) are one place, open ends a hundred times as far too. Where rings touch at a place each goes on by its
 * sharpest left turn, so that they part. Strays, which rounding may leave over, are left out.
 */
export function joinRings(segments: Segments, near: number): Place[][] {
  const joined = joinedEnds(segments, near);
  leaveOutStrays(joined);
  const rings: Place[][] = [];
  for (let i = 0; i < segments.count; i++) {
    if (joined.used[i] === 1) continue;
    const plain = withoutStraight(walk(i, joined), near);
    if (plain.length >= 3) rings.push(plain);
  }
  return rings;
}

function joinedEnds({ count, ends }: Segments, near: number): Joined {
  const places = new PlaceHash(2 * count, near);
  const from = new Int32Array(count);
  const to = new Int32Array(count);
  for (let i = 0; i < count; i++) {
    from[i] = places.numberOf(ends[4 * i]!, ends[4 * i + 1]!);
    to[i] = places.numberOf(ends[4 * i + 2]!, ends[4 * i + 3]!);
  }
  closeGaps({ places, from, to }, GAP * near);
  const leaving = new Int32Array(places.count).fill(-1);
  const next = new Int32Array(count);
  const used = new Uint8Array(count);
  for (let i = count - 1; i >= 0; i--) {
    if (from[i] === to[i]) {
      // Shorter than `near`: its ends are one place already.
      used[i] = 1;
      continue;
    }
    next[i] = leaving[from[i]!]!;
    leaving[from[i]!] = i;
  }
  return { places, from, to, leaving, next, used };
}

/** Open ends as far apart as so many times the distance within which places are one are joined. */
const GAP = 100;

/**
 * Makes one place of two where more segments come than leave at one, and fewer at the other, no
 * farther than `most` (m) away: a side as short as that has been lost, or is left over, by rounding,
 * where an edge of the region runs almost along a triangle's side. What closes is left as it is.
 */
function closeGaps(ends: Pick<Joined, "places" | "from" | "to">, most: number): void {
  const { places, from, to } = ends;
  const excess = excessOf(ends);
  const open: number[] = [];
  for (let place = 0; place < excess.length; place++) if (excess[place] !== 0) open.push(place);
  for (const place of open) {
    let [found, least] = [-1, most];
    for (const other of excess[place]! < 0 ? open : []) {
      const far = Math.hypot(
        places.x[other]! - places.x[place]!,
        places.y[other]! - places.y[place]!,
      );
      if (excess[other]! > 0 && far <= least) [found, least] = [other, far];
    }
    if (found < 0) continue;
    excess[found]! += excess[place]!;
    excess[place] = 0;
    for (let i = 0; i < from.length; i++) {
      if (from[i] === place) from[i] = found;
      if (to[i] === place) to[i] = found;
    }
  }
}

/** By place, how many more segments leave it than come to it. */
function excessOf({ places, from, to }: Pick<Joined, "places" | "from" | "to">): Int32Array {
  const excess = new Int32Array(places.count);
  for (let i = 0; i < from.length; i++) {
    excess[from[i]!]!++;
    excess[to[i]!]!--;
  }
  return excess;
}

/**
 * Marks as used what keeps the rest from closing: where more segments leave a place than come to it,
 * the shortest way on to a place where fewer do. All places then balance, so every walk comes home.
 */
function leaveOutStrays(joined: Joined): void {
  // What is used already starts and ends at one place.
  const excess = excessOf(joined);
  for (let place = 0; place < excess.length; place++) {
    for (; excess[place]! > 0; excess[place]!--) excess[leaveOutWay(place, excess, joined)]!++;
  }
}

/** Marks as used the shortest way from a place to one with an excess below 0, which is returned. */
function leaveOutWay(start: number, excess: Int32Array, joined: Joined): number {
  const { from, to, leaving, next, used } = joined;
  /** By place reached: m from the start, and the segment by which; those to go on from. */
  const reached = new Map([[start, { far: 0, by: -1 }]]);
  const open = [start];
  while (open.length > 0) {
    // Few are open at once, since few places have more than one way out.
    const nearest = open.reduce((a, b) => (reached.get(b)!.far < reached.get(a)!.far ? b : a));
    open.splice(open.indexOf(nearest), 1);
    if (excess[nearest]! < 0) {
      for (let at = nearest; at !== start; at = from[reached.get(at)!.by]!) {
        used[reached.get(at)!.by] = 1;
      }
      return nearest;
    }
    for (let i = leaving[nearest]!; i >= 0; i = next[i]!) {
      if (used[i] === 1) continue;
      const far = reached.get(nearest)!.far + lengthOf(i, joined);
      const known = reached.get(to[i]!);
      if (known && known.far <= far) continue;
      if (!open.includes(to[i]!)) open.push(to[i]!);
      reached.set(to[i]!, { far, by: i });
    }
  }
  throw new Error(`got no way on from place ${start}, expected one: more leave it than come to it`);
}

function lengthOf(segment: number, { places: { x, y }, from, to }: Joined): number {
  const [a, b] = [from[segment]!, to[segment]!];
  return Math.hypot(x[b]! - x[a]!, y[b]! - y[a]!);
}

/** The ring that a segment starts. */
function walk(start: number, joined: Joined): Place[] {
  const { places, from, to, used } = joined;
  const home = from[start]!;
  const ring: Place[] = [[places.x[home]!, places.y[home]!]];
  let here = start;
  for (;;) {
    used[here] = 1;
    const at = to[here]!;
    if (at === home) return ring;
    ring.push([places.x[at]!, places.y[at]!]);
    here = segmentAhead(here, joined);
    if (here < 0) throw new Error(`got no way on from place ${at}, expected as many out as in`);
  }
}

/** Of the segments not yet used that leave where one ends, the sharpest to the left; or −1. */
function segmentAhead(here: number, { places, from, to, leaving, next, used }: Joined): number {
  let found = -1;
  let most = 0;
  for (let i = leaving[to[here]!]!; i >= 0; i = next[i]!) {
    if (used[i] === 1) continue;
    // A turn is worked out only where there is a choice.
    if (found < 0 && next[i]! < 0) return i;
    const turned = turnOf(places, from[here]!, to[here]!, to[i]!);
    if (found < 0 || turned > most) {
      found = i;
      most = turned;
    }
  }
  return found;
}

/** Turn at place b on the way from a to c, radians, left positive. */
function turnOf({ x, y }: PlaceHash, a: number, b: number, c: number): number {
  const ux = x[b]! - x[a]!;
  const uy = y[b]! - y[a]!;
  const vx = x[c]! - x[b]!;
  const vy = y[c]! - y[b]!;
  return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
}

/** Leaves out corners that lie, within `near`, straight between those beside them. */
function withoutStraight(ring: readonly Place[], near: number): Place[] {
  const kept: Place[] = [];
  let before = ring[ring.length - 1]!;
  for (let i = 0; i < ring.length; i++) {
    const here = ring[i]!;
    const after = ring[i + 1 === ring.length ? 0 : i + 1]!;
    const dx = after[0] - before[0];
    const dy = after[1] - before[1];
    const off = dx * (here[1] - before[1]) - dy * (here[0] - before[0]);
    // `Math.hypot` takes ten times as long, for care with sizes that a site does not have.
    if (Math.abs(off) <= near * Math.sqrt(dx * dx + dy * dy)) continue;
    kept.push(here);
    before = here;
  }
  return kept;
}
