/** Cells cut into pieces on each of which a surface is one plane. */
import type { CellStore } from "./store.js";
import type { Purpose, Surface } from "./surface.js";

/**
 * A piece of a cell. With `level` "plane" the last row that its cell carries is the surface on it;
 * "below" is −∞ and "above" is +∞, or past where it matters. A piece with a plane owns its cell:
 * the record was made for it, so its rows may be changed in place.
 */
export interface Piece {
  cell: number;
  level: "plane" | "below" | "above";
  /** True where the plane is a floor. */
  floor: boolean;
}

/**
 * Adds to `into` the pieces of a cell on each of which the surface is one plane. Rows that the
 * cell already carries stay on every piece, under the surface's own.
 */
export function resolve(
  store: CellStore,
  cell: number,
  surface: Surface,
  purpose: Purpose,
  into: Piece[],
): void {
  switch (surface.is) {
    case "plane":
      planePieces(store, cell, surface, purpose, into);
      return;
    case "wall":
      wallPieces(store, cell, surface, into);
      return;
    case "higher":
    case "lower":
      joinPieces(store, cell, surface, purpose, into);
      return;
    case "strips":
      stripPieces(store, cell, surface, purpose, into);
      return;
    case "boundless":
      into.push({ cell, level: surface.level, floor: false });
  }
}

/** Splits a cell where the plane meets the ground and marks the idle side as out of reach. */
function planePieces(
  store: CellStore,
  cell: number,
  { a, b, c, floor }: Surface & { is: "plane" },
  purpose: Purpose,
  into: Piece[],
): void {
  const idle = purpose === "cut" ? "above" : "below";
  const corners = store.cornersOf(cell);
  const { values, scratch, spare } = store;
  const x = store.row(cell, 0);
  const y = x + corners;
  const top = store.surfaceRow(cell);
  for (let i = 0; i < corners; i++) {
    scratch[i] = a * values[x + i]! + b * values[y + i]! + c;
    spare[i] = scratch[i]! - values[top + i]!;
  }
  const side = sideOf(store, spare, corners);
  if (side === idle) {
    into.push({ cell, level: idle, floor: false });
    return;
  }
  if (side !== "both") {
    into.push({ cell: store.carrying(cell), level: "plane", floor });
    return;
  }
  const busy = purpose === "cut" ? "below" : "above";
  store.splitLaying(cell, spare, scratch, busy, "on top");
  const { below, above } = store;
  into.push({ cell: below, level: purpose === "cut" ? "plane" : "below", floor });
  into.push({ cell: above, level: purpose === "cut" ? "above" : "plane", floor });
}

/** Where corner values lie: all at most zero, all at least zero (and one more), or on both sides. */
function sideOf(
  { rounding }: CellStore,
  values: Float64Array,
  count: number,
): "below" | "above" | "both" {
  let anyBelow = false;
  let anyAbove = false;
  for (let i = 0; i < count; i++) {
    const at = values[i]!;
    if (at > rounding) anyAbove = true;
    else if (at < -rounding) anyBelow = true;
  }
  if (!anyAbove) return "below";
  return anyBelow ? "both" : "above";
}

function wallPieces(
  store: CellStore,
  cell: number,
  wall: Surface & { is: "wall" },
  into: Piece[],
): void {
  splitAlong(store, cell, wall.nx, wall.ny, wall.d);
  const { below, above } = store;
  const inside = wall.reversed ? "above" : "below";
  const outside = wall.reversed ? "below" : "above";
  if (below >= 0) into.push({ cell: below, level: inside, floor: false });
  if (above >= 0) into.push({ cell: above, level: outside, floor: false });
}

/** Splits a cell along the line nx·x + ny·y = d. */
export function splitAlong(
  store: CellStore,
  cell: number,
  nx: number,
  ny: number,
  d: number,
): void {
  const corners = store.cornersOf(cell);
  const { values, scratch } = store;
  const x = store.row(cell, 0);
  const y = x + corners;
  for (let i = 0; i < corners; i++) {
    scratch[i] = nx * values[x + i]! + ny * values[y + i]! - d;
  }
  store.split(cell, scratch);
}

function stripPieces(
  store: CellStore,
  cell: number,
  { ux, uy, marks, of }: Surface & { is: "strips" },
  purpose: Purpose,
  into: Piece[],
): void {
  let rest = cell;
  for (let i = 0; i < marks.length && rest >= 0; i++) {
    splitAlong(store, rest, ux, uy, marks[i]!);
    const { below, above } = store;
    if (below >= 0) resolve(store, below, of[i]!, purpose, into);
    rest = above;
  }
  if (rest >= 0) resolve(store, rest, of[marks.length]!, purpose, into);
}

function joinPieces(
  store: CellStore,
  cell: number,
  { is, of }: Surface & { is: "higher" | "lower" },
  purpose: Purpose,
  into: Piece[],
): void {
  const decided = is === "higher" ? "above" : "below";
  let pieces: Piece[] = [];
  resolve(store, cell, of[0]!, purpose, pieces);
  for (let k = 1; k < of.length; k++) {
    const made: Piece[] = [];
    for (const piece of pieces) {
      if (piece.level === decided) made.push(piece);
      else joinOne(store, piece, of[k]!, is, purpose, made);
    }
    pieces = made;
  }
  for (const piece of pieces) into.push(piece);
}

function joinOne(
  store: CellStore,
  piece: Piece,
  next: Surface,
  how: "higher" | "lower",
  purpose: Purpose,
  into: Piece[],
): void {
  if (piece.level === "plane" && next.is === "plane") {
    joinPlane(store, piece, next, how, purpose, into);
    return;
  }
  if (outOfReach(store, piece.cell, next, purpose)) {
    into.push(withOutOfReach(store, piece, how, purpose));
    return;
  }
  if (piece.level !== "plane") {
    // Standing at the neutral end: whatever `next` says holds.
    resolve(store, piece.cell, next, purpose, into);
    return;
  }
  const others: Piece[] = [];
  resolve(store, piece.cell, next, purpose, others);
  for (const other of others) {
    if (other.level === "plane") takeWinners(store, piece.floor, other, how, into);
    else if ((other.level === "above") === (how === "higher")) {
      store.drop(other.cell, "last");
      into.push(other);
    } else into.push({ cell: other.cell, level: "plane", floor: piece.floor });
  }
}

/**
 * Joins a piece that carries a plane with one more plane, which is the common case by far: nothing
 * is copied but where the two cross, or where the new one comes to the ground.
 */
function joinPlane(
  store: CellStore,
  { cell, floor }: Piece,
  next: Surface & { is: "plane" },
  how: "higher" | "lower",
  purpose: Purpose,
  into: Piece[],
): void {
  const corners = store.cornersOf(cell);
  const { values, scratch, spare } = store;
  const x = store.row(cell, 0);
  const y = x + corners;
  const standing = store.carriedRow(cell);
  for (let i = 0; i < corners; i++) {
    scratch[i] = next.a * values[x + i]! + next.b * values[y + i]! + next.c;
    spare[i] = scratch[i]! - values[standing + i]!;
  }
  const wins = how === "higher" ? "above" : "below";
  const side = sideOf(store, spare, corners);
  let won = -1;
  if (side === "both") {
    store.splitLaying(cell, spare, scratch, wins, "in place");
    won = how === "higher" ? store.above : store.below;
    into.push({ cell: how === "higher" ? store.below : store.above, level: "plane", floor });
  } else if (side === wins) {
    store.layLast(cell, scratch);
    won = cell;
  } else into.push({ cell, level: "plane", floor });
  if (won < 0) return;
  // Only a plane that wins away from the work, upwards in a cut, may come to the ground.
  if ((how === "higher") === (purpose === "cut"))
    splitAtGround(store, won, next.floor, purpose, into);
  else into.push({ cell: won, level: "plane", floor: next.floor });
}

/** Parts a piece where the plane that it carries meets the ground. */
function splitAtGround(
  store: CellStore,
  cell: number,
  floor: boolean,
  purpose: Purpose,
  into: Piece[],
): void {
  const idle = purpose === "cut" ? "above" : "below";
  const corners = store.cornersOf(cell);
  const { values, scratch } = store;
  const level = store.carriedRow(cell);
  const top = store.surfaceRow(cell);
  for (let i = 0; i < corners; i++) scratch[i] = values[level + i]! - values[top + i]!;
  store.split(cell, scratch);
  const { below, above } = store;
  const busy = purpose === "cut" ? below : above;
  const out = purpose === "cut" ? above : below;
  if (out >= 0) {
    store.drop(out, "last");
    into.push({ cell: out, level: idle, floor: false });
  }
  if (busy >= 0) into.push({ cell: busy, level: "plane", floor });
}

/** Joins a piece with a surface that is out of reach all over it: nothing need be split. */
function withOutOfReach(
  store: CellStore,
  piece: Piece,
  how: "higher" | "lower",
  purpose: Purpose,
): Piece {
  const reach = purpose === "cut" ? "above" : "below";
  const decides = (how === "higher") === (reach === "above");
  if (!decides) return piece;
  if (piece.level === "plane") store.drop(piece.cell, "last");
  return { cell: piece.cell, level: reach, floor: false };
}

/** Settles a piece that carries the standing surface and, above it, the other. */
function takeWinners(
  store: CellStore,
  standingFloor: boolean,
  other: Piece,
  how: "higher" | "lower",
  into: Piece[],
): void {
  const corners = store.cornersOf(other.cell);
  const { values, scratch } = store;
  const last = store.carriedRow(other.cell);
  for (let i = 0; i < corners; i++) {
    scratch[i] = values[last + i]! - values[last - corners + i]!;
  }
  store.split(other.cell, scratch);
  const { below, above } = store;
  takeWinner(store, below, how === "lower", standingFloor, other.floor, into);
  takeWinner(store, above, how === "higher", standingFloor, other.floor, into);
}

function takeWinner(
  store: CellStore,
  cell: number,
  otherWins: boolean,
  standingFloor: boolean,
  otherFloor: boolean,
  into: Piece[],
): void {
  if (cell < 0) return;
  store.drop(cell, otherWins ? "under" : "last");
  into.push({ cell, level: "plane", floor: otherWins ? otherFloor : standingFloor });
}

/**
 * A quick test, sure but not complete: true when the surface leaves the whole cell alone (for a
 * cut it lies above the ground everywhere on it, for a fill below).
 */
export function outOfReach(
  store: CellStore,
  cell: number,
  surface: Surface,
  purpose: Purpose,
): boolean {
  switch (surface.is) {
    case "plane":
      return planeOutOfReach(store, cell, surface, purpose);
    case "wall":
      return wallOutOfReach(store, cell, surface, purpose);
    case "higher":
    case "lower": {
      const one = (surface.is === "higher") === (purpose === "cut");
      for (const next of surface.of) {
        if (outOfReach(store, cell, next, purpose) === one) return one;
      }
      return !one;
    }
    case "strips":
      return surface.of.every((next) => outOfReach(store, cell, next, purpose));
    case "boundless":
      return (surface.level === "above") === (purpose === "cut");
  }
}

function planeOutOfReach(
  store: CellStore,
  cell: number,
  { a, b, c }: Surface & { is: "plane" },
  purpose: Purpose,
): boolean {
  const corners = store.cornersOf(cell);
  const { values } = store;
  const x = store.row(cell, 0);
  const y = x + corners;
  const top = store.surfaceRow(cell);
  const sign = purpose === "cut" ? 1 : -1;
  for (let i = 0; i < corners; i++) {
    const over = a * values[x + i]! + b * values[y + i]! + c - values[top + i]!;
    if (sign * over < -store.rounding) return false;
  }
  return true;
}

function wallOutOfReach(
  store: CellStore,
  cell: number,
  { nx, ny, d, reversed }: Surface & { is: "wall" },
  purpose: Purpose,
): boolean {
  const sign = reversed ? -1 : 1;
  // A cut is kept off where the wall is +∞, a fill where it is −∞.
  const wanted = purpose === "cut" ? sign : -sign;
  const corners = store.cornersOf(cell);
  const { values } = store;
  const x = store.row(cell, 0);
  const y = x + corners;
  for (let i = 0; i < corners; i++) {
    const off = nx * values[x + i]! + ny * values[y + i]! - d;
    if (wanted * off < -store.rounding) return false;
  }
  return true;
}
