import { insideRings } from "../../estimate/index.js";
import type { PlanPoint } from "../../site/index.js";

/** What a plan shows: what is in its middle, m, and n of 1 : n; north is up. */
export interface SheetWindow {
  middle: readonly [number, number];
  scale: number;
}

/** The window after its drawing was moved so many mm to the right and down on the paper. */
export function movedWindow(
  { middle, scale }: SheetWindow,
  [right, down]: readonly [number, number],
): SheetWindow {
  const metres = scale / 1000;
  return { middle: [middle[0] - right * metres, middle[1] + down * metres], scale };
}

/** The place on the edge from a to b, m, that is nearest to p. */
function nearestOnEdge(p: PlanPoint, a: PlanPoint, b: PlanPoint): PlanPoint {
  const [east, north] = [b[0] - a[0], b[1] - a[1]];
  const squared = east * east + north * north;
  const along = (p[0] - a[0]) * east + (p[1] - a[1]) * north;
  const share = squared === 0 ? 0 : Math.min(1, Math.max(0, along / squared));
  return [a[0] + share * east, a[1] + share * north];
}

/**
 * The window with its middle on the lot, so that no plan is printed without ground: a middle that lies
 * beyond goes to the nearest place of the lot's outline.
 * @param lot the lot's outline in plan, m; one without corners holds nothing back
 */
export function windowOnLot(window: SheetWindow, lot: readonly PlanPoint[]): SheetWindow {
  const [x, y] = window.middle;
  if (lot.length === 0 || insideRings([x, y], [lot])) return window;
  const away = ([east, north]: PlanPoint): number => Math.hypot(east - x, north - y);
  const middle = lot
    .map((corner, i) => nearestOnEdge([x, y], corner, lot[(i + 1) % lot.length]!))
    .reduce((best, place) => (away(place) < away(best) ? place : best));
  return { ...window, middle };
}
