/** What a cell is to be raised or shaved to. */
import { outOfReach, resolve, type Piece } from "./resolve.js";
import type { CellStore } from "./store.js";
import type { Surface } from "./surface.js";

/** Pieces of a cell of which some stand below a surface that they are to be raised to, or null. */
export function raisedPieces(store: CellStore, cell: number, near: Surface): Piece[] | null {
  if (outOfReach(store, cell, near, "fill")) return null;
  const pieces: Piece[] = [];
  resolve(store, cell, near, "fill", pieces);
  return pieces.some((piece) => piece.level === "plane") ? pieces : null;
}

/**
 * Sets the scratch row to what a cell is to be shaved down to; false when there is nothing to take:
 * a built thing on top, or another layer than the site's own topmost.
 */
export function readyToShave(
  store: CellStore,
  cell: number,
  depth: number | "top layer",
  topmost: number,
): boolean {
  const stack = store.stackOf(cell);
  if (store.stacks.top(stack).structure) return false;
  if (depth !== "top layer") {
    setAboveSurface(store, cell, -depth);
    return true;
  }
  if (store.stacks.topOf[stack] !== topmost || store.stacks.depth[stack]! < 2) return false;
  const corners = store.cornersOf(cell);
  const top = store.surfaceRow(cell);
  const { values, scratch } = store;
  let thickest = 0;
  for (let i = 0; i < corners; i++) {
    scratch[i] = values[top - corners + i]!;
    thickest = Math.max(thickest, values[top + i]! - scratch[i]!);
  }
  return thickest > store.rounding;
}

export function setAboveSurface(store: CellStore, cell: number, by: number): void {
  const top = store.surfaceRow(cell);
  const { values, scratch } = store;
  for (let i = 0; i < store.cornersOf(cell); i++) scratch[i] = values[top + i]! + by;
}
