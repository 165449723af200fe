/** Survey points that share a place made one vertex, and vertices sorted along a Hilbert curve. */
import type { Finding, SurveyPoint } from "../site/index.js";
import { markLength } from "../units/index.js";
import { closePairs } from "./closePairs.js";
import { frameOf, keysOf, orderOf, type Frame } from "./hilbert.js";
import { PlaceGrid } from "./placeGrid.js";
import type { Places, SurveyRows } from "./places.js";

/** Places that are all further apart than the reach, sorted along a Hilbert curve. */
export interface WeldedPlaces extends Places {
  /** The square that holds them all. */
  frame: Frame;
  /** Number of the survey point at each vertex. */
  points: Uint32Array;
  /** Number of the vertex of each survey point, also of points that were welded away. */
  vertices: Uint32Array;
  findings: Finding[];
}

/**
 * One vertex for each place: a point within `reach` (m) in plan of an earlier one that was kept is
 * dropped, and a finding says so.
 */
export function weldPlaces(
  points: readonly SurveyPoint[],
  { origin, rows }: SurveyRows,
  reach: number,
): WeldedPlaces {
  const frame = frameOf(rows);
  const keys = keysOf(frame, rows);
  const order = orderOf(keys);
  const sorted = sortedRows(rows, order);
  const pairs = closePairs(frame, sorted, keys, reach);
  const merged = pairs ? mergedPairs(pairs, order) : mergedByGrid(rows, frame, reach);
  const kept = withoutMerged(sorted, order, merged);
  // The keys have done their work, so their memory serves for the numbers of the vertices.
  const vertices = keys;
  for (let vertex = 0; vertex < kept.points.length; vertex++)
    vertices[kept.points[vertex]!] = vertex;
  const findings: Finding[] = [];
  for (const [late, first] of [...merged].sort(([a], [b]) => a - b)) {
    vertices[late] = vertices[first]!;
    const gap = Math.abs(rows[3 * late + 2]! - rows[3 * first + 2]!);
    findings.push(weldFinding(points[first]!, points[late]!, reach, gap));
  }
  return { origin, frame, ...kept, vertices, findings };
}

/** Places and their point numbers without the merged points, closed up in the same memory. */
function withoutMerged(
  { x, y, z }: Omit<Places, "origin">,
  points: Uint32Array,
  merged: ReadonlyMap<number, number>,
): Omit<Places, "origin"> & { points: Uint32Array } {
  if (merged.size === 0) return { x, y, z, points };
  let next = 0;
  for (let vertex = 0; vertex < points.length; vertex++) {
    const point = points[vertex]!;
    if (merged.has(point)) continue;
    x[next] = x[vertex]!;
    y[next] = y[vertex]!;
    z[next] = z[vertex]!;
    points[next++] = point;
  }
  return {
    x: x.subarray(0, next),
    y: y.subarray(0, next),
    z: z.subarray(0, next),
    points: points.subarray(0, next),
  };
}

/** The rows with some numbers, in their order, as columns. */
function sortedRows(rows: Float64Array, numbers: Uint32Array): Omit<Places, "origin"> {
  const count = numbers.length;
  const [x, y, z] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  for (let i = 0; i < count; i++) {
    const row = 3 * numbers[i]!;
    x[i] = rows[row]!;
    y[i] = rows[row + 1]!;
    z[i] = rows[row + 2]!;
  }
  return { x, y, z };
}

/** For each point to be dropped, the point that stands for its place: the first kept one in reach. */
function mergedPairs(pairs: readonly number[], order: Uint32Array): Map<number, number> {
  const links: [late: number, early: number][] = [];
  for (let i = 0; i < pairs.length; i += 2) {
    const [p, q] = [order[pairs[i]!]!, order[pairs[i + 1]!]!];
    links.push(p < q ? [q, p] : [p, q]);
  }
  links.sort(([late, early], [later, other]) => late - later || early - other);
  const merged = new Map<number, number>();
  for (const [late, early] of links) {
    if (!merged.has(late) && !merged.has(early)) merged.set(late, early);
  }
  return merged;
}

/** The same where many points lie close: slower, but its time does not grow with the pairs. */
function mergedByGrid(rows: Float64Array, frame: Frame, reach: number): Map<number, number> {
  const count = rows.length / 3;
  const [x, y] = [new Float64Array(count), new Float64Array(count)];
  for (let i = 0; i < count; i++) {
    x[i] = rows[3 * i]!;
    y[i] = rows[3 * i + 1]!;
  }
  const merged = new Map<number, number>();
  const grid = new PlaceGrid(x, y, frame, reach, count);
  for (let i = 0; i < count; i++) {
    const first = grid.near(x[i]!, y[i]!);
    if (first < 0) grid.add(i);
    else merged.set(i, first);
  }
  return merged;
}

function weldFinding(first: SurveyPoint, late: SurveyPoint, reach: number, gap: number): Finding {
  const differs = gap > 0.02;
  return {
    level: differs ? "caution" : "note",
    code: differs ? "survey.two-heights" : "survey.welded",
    where: late.id,
    at: [late.x, late.y],
    text: differs
      ? `Survey points ${first.id} and ${late.id} are at one place but ${markLength(gap)} apart in height; ${first.id} is used. Check which is right.`
      : `Survey point ${late.id} is at the place of ${first.id} and is counted once.`,
    source: `geometry: points within ${markLength(reach, "size")} in plan are one point`,
  };
}
