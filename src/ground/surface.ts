/**
 * Surfaces that a work cuts down to or fills up to: planes joined by "the higher of" and "the
 * lower of". A hole with sloped walls is the highest of its floor and wall planes; a concave
 * outline or a trench with bends needs "the lower of" as well. Compared with cutting the convex
 * parts of an outline one after the other, one such surface has no inner walls to reason about
 * and each wall stays one plane through its floor edge, mitred at the corners.
 *
 * All coordinates are local metres.
 */

export type Surface =
  /** Plane z = a·x + b·y + c; `floor` marks it as a floor and not a wall. */
  | { is: "plane"; a: number; b: number; c: number; floor: boolean }
  /** A vertical wall: −∞ where `nx·x + ny·y ≤ d`, +∞ beyond (or the reverse when `reversed`). */
  | { is: "wall"; nx: number; ny: number; d: number; reversed: boolean }
  | { is: "higher" | "lower"; of: readonly Surface[] }
  /**
   * Side by side: strips across the direction (`ux`, `uy`). Strip i holds where ux·x + uy·y lies
   * between `marks[i − 1]` and `marks[i]`; the first and the last run on for ever.
   */
  | { is: "strips"; ux: number; uy: number; marks: readonly number[]; of: readonly Surface[] }
  /** Everywhere −∞ or +∞. */
  | Boundless;

interface Boundless {
  is: "boundless";
  level: "below" | "above";
}

export const BELOW: Boundless = { is: "boundless", level: "below" };
export const ABOVE: Boundless = { is: "boundless", level: "above" };

/** Plane z = a·x + b·y + c. */
export function plane(a: number, b: number, c: number, floor = false): Surface {
  return { is: "plane", a, b, c, floor };
}

/** The level plane at a height. */
export function level(height: number, floor = false): Surface {
  return plane(0, 0, height, floor);
}

export function higherOf(of: readonly Surface[]): Surface {
  return joinOf("higher", of);
}

export function lowerOf(of: readonly Surface[]): Surface {
  return joinOf("lower", of);
}

/** One flat join: the higher of the higher of some is the highest of them all. */
function joinOf(is: "higher" | "lower", of: readonly Surface[]): Surface {
  const flat = of.flatMap((each) => (each.is === is ? each.of : [each]));
  return flat.length === 1 ? flat[0]! : { is, of: flat };
}

/** The surface moved up by a height, m; vertical walls stay. */
export function lifted(surface: Surface, by: number): Surface {
  switch (surface.is) {
    case "plane":
      return { ...surface, c: surface.c + by };
    case "higher":
    case "lower":
    case "strips":
      return { ...surface, of: surface.of.map((part) => lifted(part, by)) };
    case "wall":
    case "boundless":
      return surface;
  }
}

/**
 * What the caller will do with the surface. For a cut only what lies below the ground matters, so
 * whatever lies above it may as well be infinitely high; for a fill the reverse.
 */
export type Purpose = "cut" | "fill";

/** A box in plan and the lowest and highest ground in it, local m. */
export interface Bounds {
  west: number;
  south: number;
  east: number;
  north: number;
  lowest: number;
  highest: number;
}

/** Bounds of the surface that `narrow` last returned, m; ±Infinity for what is boundless. */
let leastHeight = 0;
let mostHeight = 0;

/**
 * The part of a surface that matters in a box: whatever another part outdoes everywhere in it, or
 * that lies on the idle side of all its ground, is left out. Interval arithmetic over the tree, so
 * what is kept may be more than needed and never less. A hole of thousand triangles is settled a
 * block at a time: most blocks are left with one plane, or with none.
 */
export function narrow(surface: Surface, box: Bounds, purpose: Purpose): Surface {
  switch (surface.is) {
    case "plane":
      return narrowPlane(surface, box, purpose);
    case "wall":
      return narrowWall(surface, box);
    case "higher":
    case "lower":
      return narrowJoin(surface, box, purpose);
    case "strips":
      return narrowStrips(surface, box, purpose);
    case "boundless":
      leastHeight = mostHeight = surface.level === "above" ? Infinity : -Infinity;
      return surface;
  }
}

function narrowPlane(surface: Surface & { is: "plane" }, box: Bounds, purpose: Purpose): Surface {
  const { a, b, c } = surface;
  const middle = (a * (box.west + box.east) + b * (box.south + box.north)) / 2 + c;
  const spread = (Math.abs(a) * (box.east - box.west) + Math.abs(b) * (box.north - box.south)) / 2;
  leastHeight = middle - spread;
  mostHeight = middle + spread;
  if (purpose === "cut" && leastHeight >= box.highest) return boundless(ABOVE);
  if (purpose === "fill" && mostHeight <= box.lowest) return boundless(BELOW);
  return surface;
}

function boundless(surface: Boundless): Surface {
  leastHeight = mostHeight = surface.level === "above" ? Infinity : -Infinity;
  return surface;
}

function narrowWall(surface: Surface & { is: "wall" }, box: Bounds): Surface {
  const { nx, ny, d, reversed } = surface;
  const middle = (nx * (box.west + box.east) + ny * (box.south + box.north)) / 2 - d;
  const spread =
    (Math.abs(nx) * (box.east - box.west) + Math.abs(ny) * (box.north - box.south)) / 2;
  if (middle + spread <= 0) return boundless(reversed ? ABOVE : BELOW);
  if (middle - spread >= 0) return boundless(reversed ? BELOW : ABOVE);
  leastHeight = -Infinity;
  mostHeight = Infinity;
  return surface;
}

function narrowJoin(
  surface: Surface & { is: "higher" | "lower" },
  box: Bounds,
  purpose: Purpose,
): Surface {
  const higher = surface.is === "higher";
  const kept: Surface[] = [];
  const lows: number[] = [];
  const highs: number[] = [];
  let decided = higher ? -Infinity : Infinity;
  for (const next of surface.of) {
    const part = narrow(next, box, purpose);
    if (higher ? mostHeight < decided : leastHeight > decided) continue;
    if (part.is === "boundless") {
      if ((part.level === "above") === higher) return boundless(higher ? ABOVE : BELOW);
      continue;
    }
    kept.push(part);
    lows.push(leastHeight);
    highs.push(mostHeight);
    decided = higher ? Math.max(decided, leastHeight) : Math.min(decided, mostHeight);
  }
  return joinOfKept(surface, kept, lows, highs);
}

/** Leaves out what a later part outdid, and keeps the node itself where nothing was left out. */
function joinOfKept(
  surface: Surface & { is: "higher" | "lower" },
  kept: readonly Surface[],
  lows: readonly number[],
  highs: readonly number[],
): Surface {
  const higher = surface.is === "higher";
  let [low, high] = higher ? [-Infinity, -Infinity] : [Infinity, Infinity];
  for (let i = 0; i < kept.length; i++) {
    low = higher ? Math.max(low, lows[i]!) : Math.min(low, lows[i]!);
    high = higher ? Math.max(high, highs[i]!) : Math.min(high, highs[i]!);
  }
  const left = kept.filter((_, i) => (higher ? highs[i]! >= low : lows[i]! <= high));
  if (left.length === 0) return boundless(higher ? BELOW : ABOVE);
  leastHeight = low;
  mostHeight = high;
  if (left.length === 1) return left[0]!;
  const same = left.length === surface.of.length && left.every((part, i) => part === surface.of[i]);
  return same ? surface : { is: surface.is, of: left };
}

function narrowStrips(surface: Surface & { is: "strips" }, box: Bounds, purpose: Purpose): Surface {
  const { ux, uy, marks, of } = surface;
  const middle = (ux * (box.west + box.east) + uy * (box.south + box.north)) / 2;
  const spread =
    (Math.abs(ux) * (box.east - box.west) + Math.abs(uy) * (box.north - box.south)) / 2;
  let first = 0;
  while (first < marks.length && marks[first]! <= middle - spread) first++;
  let last = first;
  while (last < marks.length && marks[last]! < middle + spread) last++;
  if (first === last) return narrow(of[first]!, box, purpose);
  let [low, high] = [Infinity, -Infinity];
  const parts: Surface[] = [];
  for (let i = first; i <= last; i++) {
    parts.push(narrow(of[i]!, box, purpose));
    low = Math.min(low, leastHeight);
    high = Math.max(high, mostHeight);
  }
  leastHeight = low;
  mostHeight = high;
  return { is: "strips", ux, uy, marks: marks.slice(first, last), of: parts };
}
