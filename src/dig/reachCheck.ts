/** Findings about works that leave the ground that the survey may be trusted for. */
import {
  elevationAt,
  surfaceOf,
  trusted,
  type LayeredGround,
  type Place,
} from "../ground/index.js";
import type { Finding, Work } from "../site/index.js";
import { rectangle } from "./place.js";

/** The outline in plan of a work's floor or footprint, local m; a path for a trench. */
export function footprint(work: Work): readonly Place[] {
  switch (work.kind) {
    case "tank": {
      const { length, width } = work.body;
      return rectangle(work.at, work.bearing, length + 2 * work.overdig, width + 2 * work.overdig);
    }
    case "bed":
      return rectangle(work.at, work.bearing, work.length, work.width);
    case "pad":
    case "building":
      return work.outline;
    case "trench":
      return work.path;
    case "pile":
      return [work.at];
  }
}

/**
 * Says when a work stands beyond the survey, when its walls run off the survey's edge (its volume
 * is then short), and when it reaches ground outside the boundary. `work` is in the local frame;
 * call when it has been cut and not yet filled.
 */
export function reachFindings(ground: LayeredGround, work: Work): Finding[] {
  const { tin } = ground.base;
  const off = footprint(work).some(([x, y]) => elevationAt(tin, x, y) === null);
  if (off) return [offSurvey(work, "stands partly beyond the survey points")];
  const edges = hullEdges(ground);
  const runsOff = someDeepCorner(ground, (triangle, x, y) => {
    const outer = edges.get(triangle);
    return outer !== undefined && outer.some((edge) => distanceTo(edge, x, y) < 1e-6);
  });
  if (runsOff) return [offSurvey(work, "is cut off at the edge of the survey")];
  if (ground.base.boundary === null) return [];
  const untrusted = someDeepCorner(ground, (_, x, y) => !trusted(ground.base, x, y));
  return untrusted ? [outsideBoundary(work)] : [];
}

/**
 * True when a corner of the present cut answers to `is`. Where a wall comes to daylight the depth
 * is nothing: such a corner may lie on the survey's edge and is not asked.
 */
function someDeepCorner(
  ground: LayeredGround,
  is: (triangle: number, x: number, y: number) => boolean,
): boolean {
  for (const { triangle, cell } of ground.markedCells()) {
    const top = surfaceOf(cell);
    for (let i = 0; i < top.length; i++) {
      if (cell.before[i]! - top[i]! <= 1e-4) continue;
      if (is(triangle, cell.x[i]!, cell.y[i]!)) return true;
    }
  }
  return false;
}

function offSurvey(work: Work, what: string): Finding {
  return {
    level: "stop",
    code: "survey.too-small",
    where: work.id,
    text: `${work.name} ${what}, so its volume is short. Survey more points there or move it in.`,
    source: "geometry",
  };
}

function outsideBoundary(work: Work): Finding {
  return {
    level: "caution",
    code: "survey.outside-boundary",
    where: work.id,
    text: `${work.name} reaches ground outside the survey's boundary, where heights are only guessed between far points. Survey more points there or move it in.`,
    source: "geometry",
  };
}

type Edge = readonly [number, number, number, number];

/** Outer edges of the survey by the triangle that they belong to. */
function hullEdges(ground: LayeredGround): Map<number, Edge[]> {
  const { tin } = ground.base;
  const after = new Map<number, number>();
  tin.hull.forEach((v, i) => after.set(v, tin.hull[(i + 1) % tin.hull.length]!));
  const edges = new Map<number, Edge[]>();
  const seen = new Set<number>();
  for (const { triangle } of ground.markedCells()) {
    if (seen.has(triangle)) continue;
    seen.add(triangle);
    const found: Edge[] = [];
    for (let k = 0; k < 3; k++) {
      const p = tin.triangles[3 * triangle + k]!;
      const q = tin.triangles[3 * triangle + ((k + 1) % 3)]!;
      if (after.get(p) === q) found.push([tin.x[p]!, tin.y[p]!, tin.x[q]!, tin.y[q]!]);
    }
    if (found.length > 0) edges.set(triangle, found);
  }
  return edges;
}

function distanceTo([px, py, qx, qy]: Edge, x: number, y: number): number {
  const length = Math.hypot(qx - px, qy - py);
  return Math.abs(((qx - px) * (y - py) - (qy - py) * (x - px)) / length);
}
