/** The ground as found as cells: each survey triangle's parts in the regions of the probe field. */
import type { CellLayer } from "./cell.js";
import type { ProbeRegion } from "./probes.js";
import { splitAlong } from "./resolve.js";
import { FOUND, type CellStore } from "./store.js";
import type { Tin } from "./tin.js";

/** The ground as found, before any cell is made. */
export interface Found {
  tin: Tin;
  /** Layers from the bottom up. */
  layers: readonly CellLayer[];
  regions: readonly ProbeRegion[];
}

/**
 * Makes the starting cells of a triangle and returns the first of their chain. On each the ground
 * and every layer's top is a plane. `stack` is the natural layers' in this store.
 */
export function startCells(base: Found, store: CellStore, stack: number, triangle: number): number {
  const whole = wholeTriangle(base, store, stack, triangle);
  let first = -1;
  for (let r = 0; r < base.regions.length; r++) {
    const part = base.regions.length === 1 ? whole : clippedTo(base, store, whole, r);
    if (part < 0) continue;
    // A triangle wholly in one region is its own part; a copy keeps the others' clipping unharmed.
    layTops(base, store, part, r);
    store.setNext(part, first);
    first = part;
    if (part === whole) break;
  }
  return first;
}

/** Number of the region that holds a whole triangle, or −1 when it lies in several. */
export function regionHolding(
  { tin, regions }: Pick<Found, "tin" | "regions">,
  triangle: number,
  likely: number,
): number {
  if (holdsTriangle(tin, regions[likely]!, triangle)) return likely;
  for (let r = 0; r < regions.length; r++) {
    if (r !== likely && holdsTriangle(tin, regions[r]!, triangle)) return r;
  }
  return -1;
}

function holdsTriangle(
  { x, y, triangles, rounding }: Tin,
  { sides }: ProbeRegion,
  triangle: number,
): boolean {
  for (const { nx, ny, d } of sides) {
    for (let k = 0; k < 3; k++) {
      const v = triangles[3 * triangle + k]!;
      if (nx * x[v]! + ny * y[v]! - d > rounding) return false;
    }
  }
  return true;
}

/** A triangle as one cell with its surface set and no more: for questions about its surface. */
export function wholeTriangle(
  { tin, layers }: Found,
  store: CellStore,
  stack: number,
  triangle: number,
): number {
  const cell = store.make(3, stack, 0, FOUND, 0);
  const { values } = store;
  const x = store.row(cell, 0);
  const y = store.row(cell, 1);
  const top = store.topRow(cell, layers.length - 1);
  for (let k = 0; k < 3; k++) {
    const vertex = tin.triangles[3 * triangle + k]!;
    values[x + k] = tin.x[vertex]!;
    values[y + k] = tin.y[vertex]!;
    values[top + k] = tin.z[vertex]!;
  }
  return cell;
}

function clippedTo({ regions }: Found, store: CellStore, whole: number, region: number): number {
  let part = whole;
  for (const { nx, ny, d } of regions[region]!.sides) {
    splitAlong(store, part, nx, ny, d);
    part = store.below;
    if (part < 0) return -1;
  }
  return part;
}

/** Lays each layer's top: the surface less the thickness of every layer above. */
function layTops({ regions, layers }: Found, store: CellStore, cell: number, region: number): void {
  const corners = store.cornersOf(cell);
  const { values } = store;
  const x = store.row(cell, 0);
  const y = x + corners;
  for (let layer = layers.length - 2; layer >= 0; layer--) {
    const { a, b, c } = regions[region]!.thickness[layers.length - 2 - layer]!;
    const top = store.topRow(cell, layer);
    for (let i = 0; i < corners; i++) {
      // Beyond rounding a thickness cannot be negative: it is a mean of thicknesses that are not.
      const thickness = Math.max(0, a * values[x + i]! + b * values[y + i]! + c);
      values[top + i] = values[top + corners + i]! - thickness;
    }
  }
}
