/**
 * Contour lines: the edge, in plan, of the ground that stands above a level.
 *
 * A place stands above a level when its height is greater, so that a level exactly through a corner
 * is taken a hair above it. Every decision is a comparison of whole numbers (how many levels lie
 * below a corner), so a line never branches and never ends but at the edge of the survey, whatever
 * the rounding. Where neighbouring cells differ in height (a vertical wall) the line runs along
 * the side between them. Higher ground is always on a line's left.
 */
import { netOfTin, type SurfaceNet } from "./surfaceNet.js";
import type { Tin } from "./tin.js";

/** One contour line in plan, local m. A closed line repeats its first place at the end. */
export interface Contour {
  /** Elevation, m, site. */
  elevation: number;
  closed: boolean;
  line: (readonly [number, number])[];
}

/**
 * Joined contour lines of the ground as found at every multiple of `step` (m, site elevations),
 * from the lowest up. A step that is not more than zero throws.
 */
export function contourLines(tin: Tin, step: number): Contour[] {
  return contoursOfNet(netOfTin(tin), step, tin.origin[2]);
}

/**
 * Joined contour lines of a net at every multiple of `step` (m, site elevations). `base` is the
 * site elevation of the net's zero.
 */
export function contoursOfNet(net: SurfaceNet, step: number, base: number): Contour[] {
  if (!(step > 0)) throw new Error(`got a contour step of ${step} m, expected more than 0`);
  const levels = levelsWithin(net.height, step, base);
  if (levels.elevations.length === 0) return [];
  const walk = new ContourWalk(net, levels.heights);
  return walk.lines().map(({ level, closed, line }) => ({
    elevation: levels.elevations[level]!,
    closed,
    line,
  }));
}

/** The multiples of `step` that the heights reach, as site elevations and as local heights. */
function levelsWithin(
  heights: Float64Array,
  step: number,
  base: number,
): { elevations: Float64Array; heights: Float64Array } {
  let lowest = Infinity;
  let highest = -Infinity;
  for (let i = 0; i < heights.length; i++) {
    const height = heights[i]!;
    if (height < lowest) lowest = height;
    if (height > highest) highest = height;
  }
  const first = Math.floor((lowest + base) / step);
  const last = Math.ceil((highest + base) / step);
  if (!(last >= first)) return { elevations: new Float64Array(), heights: new Float64Array() };
  if (last - first > MOST_LEVELS) {
    throw new Error(`got a contour step of ${step} m: ${last - first} levels, expected fewer`);
  }
  // Twelve digits: 3 × 0.1 shall be 0.3, and meet a corner at 0.3 exactly.
  const elevations = Float64Array.from({ length: last - first + 1 }, (_, i) =>
    Number(((first + i) * step).toPrecision(12)),
  );
  return { elevations, heights: elevations.map((elevation) => elevation - base) };
}

/** More levels than this are a slip of the pen, and would fill the memory. */
const MOST_LEVELS = 100_000;

/** Places nearer than this to the one before add nothing to a line, m. */
const SAME_PLACE = 1e-9;

interface WalkedLine {
  level: number;
  closed: boolean;
  line: (readonly [number, number])[];
}

/** Where a walk stands: about to cross a cell from one of its sides, or to follow a wall. */
type Move = { by: "cross" | "wall"; side: number } | null;

/** Walks every line of every level once. */
class ContourWalk {
  /** Per side: how many of the levels lie below its corner; the corner is above level k if > k. */
  private readonly below: Int32Array;
  /** Per side: number (from 1) of the latest level whose line entered the cell there. */
  private readonly crossed: Int32Array;
  /** Per side: likewise of the latest level whose line set out along it as a wall. */
  private readonly followed: Int32Array;
  private level = 0;
  /** True when the place where a cell is entered is yet to be added to the line. */
  private entering = true;
  private line: (readonly [number, number])[] = [];

  constructor(
    private readonly net: SurfaceNet,
    private readonly heights: Float64Array,
  ) {
    this.below = levelsBelow(net.height, heights);
    this.crossed = new Int32Array(net.corner.length);
    this.followed = new Int32Array(net.corner.length);
  }

  lines(): WalkedLine[] {
    const { below, net } = this;
    const falling = seeds(below, belowAtEnd(below, net), this.heights.length);
    const walls = net.stepped ? seeds(below, belowBeyond(below, net), this.heights.length) : null;
    const out: WalkedLine[] = [];
    for (this.level = 0; this.level < this.heights.length; this.level++) {
      const crossings = falling(this.level);
      const steps = walls === null ? NO_SIDES : walls(this.level);
      // Open lines first, each from its start, so that it is walked once from end to end.
      for (const side of crossings) if (this.net.twin[side]! < 0) this.walk("cross", side, out);
      for (const side of steps) if (this.startsAtEdge(side)) this.walk("wall", side, out);
      for (const side of crossings) this.walk("cross", side, out);
      for (const side of steps) this.walk("wall", side, out);
    }
    return out;
  }

  private isAbove(side: number): boolean {
    return this.below[side]! > this.level;
  }

  /** True when the wall that sets out along a side is the first of an open line. */
  private startsAtEdge(side: number): boolean {
    let arriving = this.net.previous[side]!;
    for (;;) {
      const leaving = this.net.twin[arriving]!;
      if (leaving < 0) return true;
      if (!this.isAbove(leaving)) return false;
      arriving = this.net.previous[leaving]!;
    }
  }

  private walk(by: "cross" | "wall", side: number, out: WalkedLine[]): void {
    const { net } = this;
    const mark = this.level + 1;
    const seen = by === "cross" ? this.crossed : this.followed;
    if (seen[side] === mark) return;
    this.line = [];
    this.entering = true;
    let move: Move = { by, side };
    while (move !== null) {
      const marks: Int32Array = move.by === "cross" ? this.crossed : this.followed;
      if (marks[move.side] === mark) break;
      marks[move.side] = mark;
      move = move.by === "cross" ? this.cross(move.side) : this.follow(move.side);
      // Without steps a line enters a cell exactly where it left the one before.
      this.entering = net.stepped;
    }
    if (move !== null && (move.by !== by || move.side !== side)) {
      throw new Error(`a contour met itself at side ${move.side}, expected its start ${side}`);
    }
    const closed = move !== null;
    if (closed) this.close();
    if (this.line.length >= (closed ? 4 : 2)) {
      out.push({ level: this.level, closed, line: this.line });
    }
  }

  /** Crosses a cell, entering by a side that falls through the level. */
  private cross(entry: number): Move {
    const { next, twin } = this.net;
    if (this.entering) this.addCrossing(entry);
    let exit = next[entry]!;
    while (this.isAbove(exit) || !this.isAbove(next[exit]!)) exit = next[exit]!;
    this.addCrossing(exit);
    const beyond = twin[exit]!;
    if (beyond < 0) return null;
    const atStart = this.isAbove(next[beyond]!);
    const atEnd = this.isAbove(beyond);
    // The cell beyond rises through the level on this side too: go in there.
    if (!atStart && atEnd) return { by: "cross", side: beyond };
    const high = atStart && (atEnd || this.along(exit, exit) < this.along(exit, beyond));
    // Beyond is low: on along the wall to this side's end. Beyond is high: back along it.
    return this.turn(high ? beyond : exit);
  }

  /** Follows a wall from a side's corner: its cell is above the level there, the one beyond not. */
  private follow(side: number): Move {
    const { next, twin } = this.net;
    this.addCorner(side);
    const beyond = twin[side]!;
    const stays = this.isAbove(next[side]!);
    const rises = this.isAbove(beyond);
    if (stays) return rises ? { by: "cross", side: beyond } : this.turn(side);
    if (!rises) return { by: "cross", side };
    const first = this.along(side, side) <= this.along(side, beyond);
    return { by: "cross", side: first ? side : beyond };
  }

  /** From a wall that arrives at a side's end, round the high ground to the wall that leaves. */
  private turn(arriving: number): Move {
    const { next, twin } = this.net;
    let side = next[arriving]!;
    this.addCorner(side);
    for (;;) {
      const beyond = twin[side]!;
      if (beyond < 0) return null;
      if (!this.isAbove(next[beyond]!)) return { by: "wall", side };
      side = next[beyond]!;
    }
  }

  /** How far along `side` the level is crossed as the cell of `of` (it or its twin) has it. */
  private along(side: number, of: number): number {
    const { corner, next } = this.net;
    const share = this.share(of);
    return corner[side]! < corner[next[side]!]! ? share : -share;
  }

  /** Where the level crosses a side, 0 to 1 from its lower-numbered corner to the other. */
  private share(side: number): number {
    const { corner, height, next } = this.net;
    const end = next[side]!;
    const rising = corner[side]! < corner[end]!;
    const from = height[rising ? side : end]!;
    const to = height[rising ? end : side]!;
    return (this.heights[this.level]! - from) / (to - from);
  }

  private addCrossing(side: number): void {
    const { corner, next, x, y } = this.net;
    const share = this.share(side);
    const a = corner[side]!;
    const b = corner[next[side]!]!;
    const from = a < b ? a : b;
    const to = a < b ? b : a;
    // From the nearer end, so that a level through a corner gives the corner itself.
    if (share <= 0.5) {
      this.add(x[from]! + share * (x[to]! - x[from]!), y[from]! + share * (y[to]! - y[from]!));
    } else {
      const rest = 1 - share;
      this.add(x[to]! - rest * (x[to]! - x[from]!), y[to]! - rest * (y[to]! - y[from]!));
    }
  }

  private addCorner(side: number): void {
    const corner = this.net.corner[side]!;
    this.add(this.net.x[corner]!, this.net.y[corner]!);
  }

  private add(x: number, y: number): void {
    const last = this.line[this.line.length - 1];
    if (last !== undefined && isSame(last, x, y)) return;
    this.line.push([x, y]);
  }

  private close(): void {
    const { line } = this;
    const first = line[0]!;
    while (line.length > 1 && isSame(line[line.length - 1]!, first[0], first[1])) line.pop();
    line.push(first);
  }
}

const NO_SIDES = new Uint32Array();

/** Per side: levels below the corner where it ends. */
function belowAtEnd(below: Int32Array, { next }: SurfaceNet): Int32Array {
  const out = new Int32Array(below.length);
  for (let side = 0; side < out.length; side++) out[side] = below[next[side]!]!;
  return out;
}

/** Per side: levels below its corner as the cell beyond has it; its own at the survey's edge. */
function belowBeyond(below: Int32Array, { next, twin }: SurfaceNet): Int32Array {
  const out = new Int32Array(below.length);
  for (let side = 0; side < out.length; side++) {
    const beyond = twin[side]!;
    out[side] = below[beyond < 0 ? side : next[beyond]!]!;
  }
  return out;
}

/** For each level the sides whose corner is above it while `lower` of the side is not. */
function seeds(
  below: Int32Array,
  lower: Int32Array,
  levels: number,
): (level: number) => Uint32Array {
  const start = new Uint32Array(levels + 1);
  for (let side = 0; side < below.length; side++) {
    for (let k = lower[side]!; k < below[side]!; k++) start[k + 1]!++;
  }
  for (let k = 1; k <= levels; k++) start[k]! += start[k - 1]!;
  const sides = new Uint32Array(start[levels]!);
  const filled = start.slice();
  for (let side = 0; side < below.length; side++) {
    for (let k = lower[side]!; k < below[side]!; k++) sides[filled[k]!++] = side;
  }
  return (level) => sides.subarray(start[level], start[level + 1]);
}

function isSame(place: readonly [number, number], x: number, y: number): boolean {
  return Math.abs(place[0] - x) <= SAME_PLACE && Math.abs(place[1] - y) <= SAME_PLACE;
}

/** For each height how many of the levels (evenly spaced, rising) lie below it. */
function levelsBelow(heights: Float64Array, levels: Float64Array): Int32Array {
  const count = levels.length;
  const first = levels[0]!;
  const step = count > 1 ? (levels[count - 1]! - first) / (count - 1) : 1;
  const below = new Int32Array(heights.length);
  for (let i = 0; i < heights.length; i++) {
    const height = heights[i]!;
    let guess = Math.min(count, Math.max(0, Math.ceil((height - first) / step)));
    while (guess > 0 && levels[guess - 1]! >= height) guess--;
    while (guess < count && levels[guess]! < height) guess++;
    below[i] = guess;
  }
  return below;
}
