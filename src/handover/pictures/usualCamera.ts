/** From where a site is seen unless a camera is given. */
import type { Site } from "../../site/index.js";

export interface ParallelLook {
  kind: "parallel";
  bearing: number;
  dip: number;
}

/** Degrees below the level, and off the way straight up the slope. */
const DIP = 38;
const ASIDE = 24;

/** Rise per run below which a lot has no slope to look up: then one looks north. */
const LEVEL = 0.01;

/**
 * Looks up the slope, a little aside, so that cuts into it show. The slope is that of the plane through
 * all spot heights (least squares).
 */
export function usualCamera({ survey: { points } }: Site): ParallelLook {
  const [east, north] = slopeOf(points);
  const bearing = Math.hypot(east, north) < LEVEL ? 0 : (Math.atan2(east, north) * 180) / Math.PI;
  return { kind: "parallel", bearing: bearing + ASIDE, dip: DIP };
}

/** Rise per run to the east and to the north of the plane that fits best; none where there is none. */
function slopeOf(points: Site["survey"]["points"]): readonly [number, number] {
  const count = Math.max(1, points.length);
  const mean = { x: 0, y: 0, z: 0 };
  for (const { x, y, z } of points) {
    mean.x += x / count;
    mean.y += y / count;
    mean.z += z / count;
  }
  let [xx, xy, yy, xz, yz] = [0, 0, 0, 0, 0];
  for (const point of points) {
    const [x, y, z] = [point.x - mean.x, point.y - mean.y, point.z - mean.z];
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xz += x * z;
    yz += y * z;
  }
  const size = xx * yy - xy * xy;
  if (size <= 1e-9 * xx * yy) return [0, 0];
  return [(xz * yy - yz * xy) / size, (yz * xx - xz * xy) / size];
}
