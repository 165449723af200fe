/**
 * Surfaces that a work cuts down to or fills up to: planes joined by "the higher of" and "the
 * lower of". A hole with sloped walls is the highest of its floor and wall planes; a concave
 * outline or a trench with bends needs "the lower of" as well. Compared with cutting the convex
 * parts of an outline one after the other, one such surface has no inner walls to reason about
 * and each wall stays one plane through its floor edge, mitred at the corners.
 *
 * All coordinates are local metres.
 */
import {
  minus,
  ROUNDING,
  splitAcross,
  splitCell,
  surfaceOf,
  type CarriedCell,
  type Cell,
} from "./cell.js";

export type Surface =
  | { is: "plane"; a: number; b: number; c: number }
  /** A vertical wall: −∞ where `nx·x + ny·y ≤ d`, +∞ beyond (or the reverse when `reversed`). */
  | { is: "wall"; nx: number; ny: number; d: number; reversed: boolean }
  | { is: "higher" | "lower"; of: readonly Surface[] }
  /** Names the part of a work that a surface belongs to; cut cells remember it. */
  | { is: "part"; part: number; of: Surface };

/** A piece of a cell on which the surface is one plane (heights at corners), or out of reach. */
export interface Resolved {
  cell: Cell;
  carry: readonly (readonly number[])[];
  /** Heights at the corners; "below" is −∞ and "above" is +∞ (or past where it matters). */
  level: readonly number[] | "below" | "above";
  part: number;
}

/** Plane z = a·x + b·y + c. */
export function plane(a: number, b: number, c: number): Surface {
  return { is: "plane", a, b, c };
}

/** The level plane at a height. */
export function level(height: number): Surface {
  return plane(0, 0, height);
}

export function higherOf(of: readonly Surface[]): Surface {
  return of.length === 1 ? of[0]! : { is: "higher", of };
}

export function lowerOf(of: readonly Surface[]): Surface {
  return of.length === 1 ? of[0]! : { is: "lower", of };
}

/**
 * What the caller will do with the surface. For a cut only what lies below the ground matters, so
 * pieces above it become "above" at once; for a fill the reverse. This keeps a cell in few pieces.
 */
export type Purpose = "cut" | "fill";

/** Cuts a cell into pieces on each of which the surface is one plane. */
export function resolve(part: CarriedCell, surface: Surface, purpose: Purpose): Resolved[] {
  switch (surface.is) {
    case "plane":
      return trimmed(planePiece(part, surface), purpose);
    case "wall":
      return wallPieces(part, surface);
    case "part":
      return resolve(part, surface.of, purpose).map(({ cell, carry, level: at }) => ({
        cell,
        carry,
        level: at,
        part: surface.part,
      }));
    case "higher":
    case "lower":
      return joined(part, surface.is, surface.of, purpose);
  }
}

function planePiece(part: CarriedCell, { a, b, c }: Surface & { is: "plane" }): Resolved {
  const { x, y } = part.cell;
  const heights = new Array<number>(x.length);
  for (let i = 0; i < x.length; i++) heights[i] = a * x[i]! + b * y[i]! + c;
  return { cell: part.cell, carry: part.carry, level: heights, part: 0 };
}

function wallPieces(part: CarriedCell, wall: Surface & { is: "wall" }): Resolved[] {
  const { x, y } = part.cell;
  const off = new Array<number>(x.length);
  for (let i = 0; i < x.length; i++) off[i] = wall.nx * x[i]! + wall.ny * y[i]! - wall.d;
  const { below, above } = splitCell(part, off);
  const inside = wall.reversed ? "above" : "below";
  const outside = wall.reversed ? "below" : "above";
  const pieces: Resolved[] = [];
  if (below) pieces.push({ cell: below.cell, carry: below.carry, level: inside, part: 0 });
  if (above) pieces.push({ cell: above.cell, carry: above.carry, level: outside, part: 0 });
  return pieces;
}

/** Splits a piece where its level meets the ground and marks the idle side as out of reach. */
function trimmed(piece: Resolved, purpose: Purpose): Resolved[] {
  if (typeof piece.level === "string") return [piece];
  const idle = purpose === "cut" ? "above" : "below";
  const rise = minus(piece.level, surfaceOf(piece.cell));
  const side = sideOf(rise);
  if (side === idle) return [{ cell: piece.cell, carry: piece.carry, level: idle, part: 0 }];
  if (side !== "both") return [piece];
  const carried = { cell: piece.cell, carry: [piece.level, ...piece.carry] };
  const { below, above } = splitAcross(carried, rise);
  const whole = ({ cell, carry }: CarriedCell, busy: boolean): Resolved => ({
    cell,
    carry: carry.slice(1),
    level: busy ? carry[0]! : idle,
    part: piece.part,
  });
  return [whole(below, purpose === "cut"), whole(above, purpose === "fill")];
}

/** Where corner values lie: all at most zero, all at least zero (and one more), or on both sides. */
function sideOf(values: readonly number[]): "below" | "above" | "both" {
  let anyBelow = false;
  let anyAbove = false;
  for (const at of values) {
    if (at > ROUNDING) anyAbove = true;
    else if (at < -ROUNDING) anyBelow = true;
  }
  if (!anyAbove) return "below";
  return anyBelow ? "both" : "above";
}

function joined(
  part: CarriedCell,
  how: "higher" | "lower",
  of: readonly Surface[],
  purpose: Purpose,
): Resolved[] {
  const decided = how === "higher" ? "above" : "below";
  const neutral = how === "higher" ? "below" : "above";
  let pieces: Resolved[] = [{ cell: part.cell, carry: part.carry, level: neutral, part: 0 }];
  for (const next of of) {
    const made: Resolved[] = [];
    for (const piece of pieces) {
      if (piece.level === decided) made.push(piece);
      else joinOne(piece, next, how, purpose, made);
    }
    pieces = made;
  }
  return pieces;
}

/** Joins a piece with a surface that is out of reach all over it: nothing need be split. */
function withOutOfReach(piece: Resolved, how: "higher" | "lower", purpose: Purpose): Resolved {
  const reach = purpose === "cut" ? "above" : "below";
  const decides = (how === "higher") === (reach === "above");
  return decides ? { cell: piece.cell, carry: piece.carry, level: reach, part: 0 } : piece;
}

function joinOne(
  piece: Resolved,
  next: Surface,
  how: "higher" | "lower",
  purpose: Purpose,
  into: Resolved[],
): void {
  if (outOfReach(piece.cell, next, purpose)) {
    into.push(withOutOfReach(piece, how, purpose));
    return;
  }
  const standing = piece.level;
  if (typeof standing === "string") {
    // Standing at the neutral end: whatever `next` says holds.
    for (const made of resolve(piece, next, purpose)) into.push(made);
    return;
  }
  const carried = { cell: piece.cell, carry: [standing, ...piece.carry] };
  for (const { cell, carry, level: at, part } of resolve(carried, next, purpose)) {
    const rest = carry.slice(1);
    const mine = { cell, carry: rest, level: carry[0]!, part: piece.part };
    if (typeof at === "string") {
      const otherWins = (at === "above") === (how === "higher");
      into.push(otherWins ? { cell, carry: rest, level: at, part } : mine);
      continue;
    }
    for (const won of winners(mine, { cell, carry: rest, level: at, part }, how)) into.push(won);
  }
}

function winners(
  mine: Resolved & { level: readonly number[] },
  other: Resolved & { level: readonly number[] },
  how: "higher" | "lower",
): Resolved[] {
  const gap = minus(other.level, mine.level);
  const side = sideOf(gap);
  if (side !== "both") return [(side === "above") === (how === "higher") ? other : mine];
  const carried = { cell: mine.cell, carry: [mine.level, other.level, ...mine.carry] };
  const { below, above } = splitAcross(carried, gap);
  const pieces: Resolved[] = [];
  const take = (side: CarriedCell, otherWins: boolean): void => {
    pieces.push({
      cell: side.cell,
      carry: side.carry.slice(2),
      level: side.carry[otherWins ? 1 : 0]!,
      part: otherWins ? other.part : mine.part,
    });
  };
  take(below, how === "lower");
  take(above, how === "higher");
  return pieces;
}

/**
 * A quick test, sure but not complete: true when the surface leaves the whole cell alone (for a
 * cut it lies above the ground everywhere on it, for a fill below).
 */
export function outOfReach(cell: Cell, surface: Surface, purpose: Purpose): boolean {
  switch (surface.is) {
    case "plane": {
      const ground = surfaceOf(cell);
      const sign = purpose === "cut" ? 1 : -1;
      for (let i = 0; i < ground.length; i++) {
        const height = surface.a * cell.x[i]! + surface.b * cell.y[i]! + surface.c;
        if (sign * (height - ground[i]!) < -ROUNDING) return false;
      }
      return true;
    }
    case "wall": {
      if (surface.reversed === (purpose === "cut")) return false;
      for (let i = 0; i < cell.x.length; i++) {
        if (surface.nx * cell.x[i]! + surface.ny * cell.y[i]! - surface.d < -ROUNDING) return false;
      }
      return true;
    }
    case "part":
      return outOfReach(cell, surface.of, purpose);
    case "higher":
    case "lower": {
      const one = (surface.is === "higher") === (purpose === "cut");
      return one
        ? surface.of.some((next) => outOfReach(cell, next, purpose))
        : surface.of.every((next) => outOfReach(cell, next, purpose));
    }
  }
}
