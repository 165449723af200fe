/** Scales of plans: those that a scale rule has, and the largest of them at which something fits. */
import type { PlanPoint, Site } from "../../site/index.js";
import type { Room } from "../paper.js";

/**
 * n of 1 : n, largest scale first. US: 1 in to 10 … 60 ft as on an engineer's scale, and tens of
 * them; metric: the scales of ISO 5455:1979 and 1 : 250 (both recalled).
 */
export const PLAN_SCALES: Readonly<Record<Site["units"], readonly number[]>> = {
  us: [10, 20, 30, 40, 50, 60, 100, 200, 300, 400, 500, 600, 1000, 2000, 5000].map((n) => 12 * n),
  metric: [50, 100, 200, 250, 500, 1000, 2000, 2500, 5000, 10_000, 20_000, 50_000],
};

/** A box in plan, m. */
export interface Extent {
  west: number;
  south: number;
  east: number;
  north: number;
}

/** The box about some places; null without any. */
export function extentOf(places: Iterable<PlanPoint>): Extent | null {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of places) {
    [west, east] = [Math.min(west, x), Math.max(east, x)];
    [south, north] = [Math.min(south, y), Math.max(north, y)];
  }
  return west <= east ? { west, south, east, north } : null;
}

export function middleOfExtent({ west, south, east, north }: Extent): PlanPoint {
  return [(west + east) / 2, (south + north) / 2];
}

/**
 * n of the largest usual scale at which a box in plan stays `margin` mm inside a room; past the list
 * the smallest thousand that does. A box of no size gets the largest scale of all.
 */
export function fittingScale(
  extent: Extent,
  room: Pick<Room, "width" | "height">,
  units: Site["units"],
  margin: number,
): number {
  const across = (room.width - 2 * margin) / 1000;
  const down = (room.height - 2 * margin) / 1000;
  if (across <= 0 || down <= 0) {
    throw new Error(`plan: got a room of ${room.width} × ${room.height} mm, expected a larger one`);
  }
  const least = Math.max(
    (extent.east - extent.west) / across,
    (extent.north - extent.south) / down,
  );
  const usual = PLAN_SCALES[units].find((scale) => scale >= least * (1 - 1e-9));
  return usual ?? Math.ceil(least / 1000) * 1000;
}
