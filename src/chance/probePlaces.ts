/** Where a further probe could go. */
import { elevationAt, insideOutline, type BaseGround } from "../ground/index.js";
import type { Site } from "../site/index.js";
import { DEFAULT_RANGE } from "./rockModel.js";

interface At {
  x: number;
  y: number;
}

/** Places tried, at most: a draw costs the square of them. */
const MOST_PLACES = 150;

/**
 * An even lattice of places, local m, on and about the dug ground: within half the range of a
 * column, on trusted ground. Empty when nothing natural is dug.
 */
export function candidatePlaces(site: Site, base: BaseGround, columns: readonly At[]): At[] {
  if (columns.length === 0) return [];
  const reach = (site.ground.doubt?.range ?? DEFAULT_RANGE) / 4;
  for (let step = 1; ; step *= 1.2) {
    const places = latticeAbout(columns, reach, step).filter((place) => trustedAt(base, place));
    if (places.length <= MOST_PLACES) return places;
  }
}

function trustedAt({ tin, boundary }: BaseGround, { x, y }: At): boolean {
  if (elevationAt(tin, x, y) === null) return false;
  return boundary === null || insideOutline(boundary, x, y);
}

function latticeAbout(columns: readonly At[], reach: number, step: number): At[] {
  const xs = columns.map(({ x }) => x);
  const ys = columns.map(({ y }) => y);
  const [left, low] = [Math.min(...xs) - reach, Math.min(...ys) - reach];
  const [right, high] = [Math.max(...xs) + reach, Math.max(...ys) + reach];
  // A vast site is no reason for a vast list: begin no finer than a hundred steps across.
  const size = Math.max(step, (right - left) / 100, (high - low) / 100);
  const places: At[] = [];
  for (let x = left; x <= right; x += size) {
    for (let y = low; y <= high; y += size) {
      if (columns.some((column) => Math.hypot(column.x - x, column.y - y) <= reach)) {
        places.push({ x, y });
      }
    }
  }
  return places;
}
