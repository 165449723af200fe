/** The ground at one place: its surface and its layers from the top down. */
import type { Cell } from "./cell.js";
import type { LayeredGround } from "./layered.js";
import { cellAt, valueAt } from "./profile.js";

/** One layer at a place. */
export interface ColumnLayer {
  /** Material id; "native" for the site's own earth put back. */
  material: string;
  /** Index of the work that placed it; -1 for natural ground. */
  by: number;
  /** A tank or other built thing. */
  structure: boolean;
  /** Local m. The last layer has no bottom: null. */
  top: number;
  bottom: number | null;
}

/** Layers thinner than this are not there, m. */
const NOTHING = 1e-9;

/**
 * The layers at a place (local m) as the ground now stands, from the top down; null beyond the
 * survey. On a vertical wall, a place belongs to one of its two sides.
 */
export function groundColumn(ground: LayeredGround, x: number, y: number): ColumnLayer[] | null {
  const cell = cellAt(ground, x, y);
  return cell && layersAt(cell, x, y);
}

function layersAt(cell: Cell, x: number, y: number): ColumnLayer[] {
  const out: ColumnLayer[] = [];
  let bottom: number | null = null;
  cell.layers.forEach(({ material, by, structure }, i) => {
    const top = valueAt(cell, cell.tops[i]!, x, y);
    if (bottom !== null && top - bottom <= NOTHING) return;
    const below = out[out.length - 1];
    const same = below?.material === material && below.by === by && below.structure === structure;
    if (same) below.top = top;
    else out.push({ material, by, structure, top, bottom });
    bottom = top;
  });
  return out.reverse();
}
