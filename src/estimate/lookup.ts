/** Small questions about the ground as found, in site coordinates. */
import { contourLines, elevationAt, slopeAt } from "../ground/index.js";
import type { PlanPoint, Site } from "../site/index.js";
import { groundOf } from "./estimate.js";
import type { ContourLine } from "./types.js";

/** Elevation of the ground as found, m; null beyond the survey. */
export function groundAt(site: Site, [x, y]: PlanPoint): number | null {
  const { tin } = groundOf(site);
  const z = elevationAt(tin, x - tin.origin[0], y - tin.origin[1]);
  return z === null ? null : z + tin.origin[2];
}

/** Slope of the ground as found: rise per run, and the bearing (degrees) that it falls towards. */
export function groundSlopeAt(
  site: Site,
  [x, y]: PlanPoint,
): { slope: number; fallsTowards: number } | null {
  const { tin } = groundOf(site);
  return slopeAt(tin, x - tin.origin[0], y - tin.origin[1]);
}

/** Contours of the ground as found at every multiple of `step` m; every fifth is heavy. */
export function contours(site: Site, step: number): ContourLine[] {
  const { tin } = groundOf(site);
  const [ox, oy] = tin.origin;
  return contourLines(tin, step).map(({ elevation, closed, line }) => ({
    elevation,
    heavy: Math.round(elevation / step) % 5 === 0,
    closed,
    line: line.map(([x, y]) => [x + ox, y + oy] as const),
  }));
}

/** The edge of the trusted ground, counter-clockwise: the boundary, or else the survey's hull. */
export function lotEdge(site: Site): PlanPoint[] {
  if (site.survey.boundary) return site.survey.boundary;
  const { tin } = groundOf(site);
  return Array.from(tin.hull, (v): PlanPoint => [
    tin.x[v]! + tin.origin[0],
    tin.y[v]! + tin.origin[1],
  ]);
}

/** The triangles between survey points, in site coordinates, for a plan preview. */
export function surveyTriangles(site: Site): (readonly [PlanPoint, PlanPoint, PlanPoint])[] {
  const { tin } = groundOf(site);
  const place = (v: number): PlanPoint => [tin.x[v]! + tin.origin[0], tin.y[v]! + tin.origin[1]];
  const out: (readonly [PlanPoint, PlanPoint, PlanPoint])[] = [];
  for (let t = 0; t < tin.triangles.length; t += 3) {
    out.push([
      place(tin.triangles[t]!),
      place(tin.triangles[t + 1]!),
      place(tin.triangles[t + 2]!),
    ]);
  }
  return out;
}
