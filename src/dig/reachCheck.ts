/** Findings about works that leave the ground that the survey may be trusted for. */
import {
  elevationAt,
  minus,
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
  const dug = [...ground.markedCells()].flatMap(({ triangle, cell }) => {
    const depth = minus(cell.before, surfaceOf(cell));
    return cell.x.map((x, i) => ({ triangle, x, y: cell.y[i]!, depth: depth[i]! }));
  });
  // Where a wall comes to daylight the depth is nothing: those corners may lie on the edge.
  const deep = dug.filter((corner) => corner.depth > 1e-4);
  const runsOff = deep.some(({ triangle, x, y }) =>
    edges.get(triangle)?.some((edge) => distanceTo(edge, x, y) < 1e-6),
  );
  if (runsOff) return [offSurvey(work, "is cut off at the edge of the survey")];
  const untrusted = deep.some(({ x, y }) => !trusted(ground.base, x, y));
  return untrusted ? [outsideBoundary(work)] : [];
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
  const outer = new Set<string>();
  tin.hull.forEach((v, i) => outer.add(`${v},${tin.hull[(i + 1) % tin.hull.length]!}`));
  const edges = new Map<number, Edge[]>();
  for (const { triangle } of ground.markedCells()) {
    if (edges.has(triangle)) continue;
    const found: Edge[] = [];
    for (let k = 0; k < 3; k++) {
      const p = tin.triangles[3 * triangle + k]!;
      const q = tin.triangles[3 * triangle + ((k + 1) % 3)]!;
      if (outer.has(`${p},${q}`)) found.push([tin.x[p]!, tin.y[p]!, tin.x[q]!, tin.y[q]!]);
    }
    edges.set(triangle, found);
  }
  return edges;
}

function distanceTo([px, py, qx, qy]: Edge, x: number, y: number): number {
  const length = Math.hypot(qx - px, qy - py);
  return Math.abs(((qx - px) * (y - py) - (qy - py) * (x - px)) / length);
}
