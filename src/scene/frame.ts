import { groundAt, lotEdge } from "../estimate/index.js";
import type { PlanPoint, Site } from "../site/index.js";

/** A place in the scene's frame: m east, north and up from the frame's origin. */
export type ScenePoint = readonly [number, number, number];

/**
 * Where the scene sits on the site. Scene coordinates are site coordinates less `origin`, so that
 * 32-bit GPU positions stay exact to a millimetre.
 */
export interface SceneFrame {
  /** Site coordinates of the scene's (0, 0, 0), m; whole hundreds, so that small edits keep it. */
  origin: ScenePoint;
  /** The lot's edge on the ground as found, counter-clockwise, scene frame. */
  edge: readonly ScenePoint[];
  /** Middle of the lot in plan, at the ground's middle height. */
  centre: ScenePoint;
  /** Lowest and highest surveyed elevation, scene frame. */
  low: number;
  high: number;
  /** Half the diagonal of the lot in plan, m. */
  reach: number;
}

/** The frame of a site. Throws nothing: a checked site has at least three points. */
export function sceneFrame(site: Site): SceneFrame {
  const points = site.survey.points;
  const first = points[0];
  if (first === undefined) throw new Error("a site needs survey points: got 0, expected 3 or more");
  const origin: ScenePoint = [hundred(first.x), hundred(first.y), hundred(first.z)];
  // Not Math.min(...): a large survey has more points than a call may have arguments.
  const low = points.reduce((least, p) => Math.min(least, p.z), Infinity) - origin[2];
  const high = points.reduce((most, p) => Math.max(most, p.z), -Infinity) - origin[2];
  const edge = lotEdge(site).map(([x, y]): ScenePoint => {
    const z = groundAt(site, [x, y]);
    return [x - origin[0], y - origin[1], z === null ? (low + high) / 2 : z - origin[2]];
  });
  const xs = edge.map((p) => p[0]);
  const ys = edge.map((p) => p[1]);
  const [west, east] = [Math.min(...xs), Math.max(...xs)];
  const [south, north] = [Math.min(...ys), Math.max(...ys)];
  const middle: PlanPoint = [(west + east) / 2, (south + north) / 2];
  const ground = groundAt(site, [middle[0] + origin[0], middle[1] + origin[1]]);
  return {
    origin,
    edge,
    centre: [middle[0], middle[1], ground === null ? (low + high) / 2 : ground - origin[2]],
    low,
    high,
    reach: Math.hypot(east - west, north - south) / 2,
  };
}

function hundred(metres: number): number {
  return Math.round(metres / 100) * 100;
}

/** A place in plan of the site, in the scene's plane. */
export function toScene(frame: SceneFrame, at: PlanPoint): PlanPoint {
  return [at[0] - frame.origin[0], at[1] - frame.origin[1]];
}

/** A place in the scene's plane, in plan of the site. */
export function toSite(frame: SceneFrame, at: PlanPoint): PlanPoint {
  return [at[0] + frame.origin[0], at[1] + frame.origin[1]];
}
