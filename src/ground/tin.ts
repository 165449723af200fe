import { orient2d } from "robust-predicates";
import type { Finding, Site } from "../site/index.js";
import { BLOCK_SIZE, blocksIn, blocksOf, sortedByVertex, type Blocks } from "./blocks.js";
import { splitBreaklines, type LinedPlaces } from "./breaklines.js";
import { triangulate, type TriangulationFailure } from "./delaunay.js";
import { IN_LINE, localRows, onOneLine, rangeOf, tooFew, type SurveyProblem } from "./places.js";
import { weldPlaces } from "./weld.js";

export type { SurveyProblem } from "./places.js";

/** Points nearer to each other than this in plan are one point unless the survey says otherwise, m. */
export const WELD_TOLERANCE = 0.001;

/**
 * The ground as found: triangles between the survey points. All coordinates are local, m:
 * site = origin + local. Vertices and triangles are sorted along a Hilbert curve, so that what is
 * near in plan is near in memory. The arrays are never written after construction.
 */
export interface Tin extends TinParts {
  /** Survey id of each vertex; "" for one added where two breaklines cross. Made when first read. */
  readonly ids: readonly string[];
}

/** All of a Tin but the names of its vertices. */
export interface TinParts {
  origin: readonly [number, number, number];
  x: Float64Array;
  y: Float64Array;
  z: Float64Array;
  /** Number of the survey point at each vertex; vertices added at crossings follow without one. */
  points: Uint32Array;
  /** Vertex indices, three per triangle, counter-clockwise. */
  triangles: Uint32Array;
  /**
   * For side k of triangle t, from its corner k to its corner k + 1 (mod 3), at 3t + k: the number
   * 3u + j of the same side seen from the triangle beyond, or -1 where the ground ends.
   */
  twins: Int32Array;
  /** Vertex indices around the outside, counter-clockwise. */
  hull: Uint32Array;
  /** Boxes of every BLOCK_SIZE consecutive triangles; see `blocksIn` and `trianglesIn`. */
  blocks: Blocks;
  /** Lowest and highest vertex, m local. */
  lowest: number;
  highest: number;
  /** What arithmetic alone may be wrong by, m: 1e-12 of the largest local coordinate or height. */
  rounding: number;
  /** Points nearer than this in plan were made one, m: set by the person, not by arithmetic. */
  tolerance: number;
}

/** What buildTin is at. */
export type BuildStep = "welding" | "triangulating" | "breaklines" | "indexing";

/**
 * Told how far the building has come: the share done, 0 to 1, and the step that starts. What it
 * throws passes through `buildTin`, so throw BuildCancelled to give up.
 */
export type BuildProgress = (share: number, step: BuildStep) => void;

/** Thrown by a BuildProgress to give up building. */
export class BuildCancelled extends Error {
  override name = "BuildCancelled";
}

/**
 * Builds the triangulated ground from a site's survey: welds points that share a place, splits
 * breaklines where they cross or pass through a point, triangulates, and sorts the triangles.
 *
 * Points nearer than `survey.tolerance` are one point, and so is a breakline with what it passes;
 * that is for the person to say. What arithmetic may be wrong by, `Tin.rounding`, follows from the
 * size of the survey and is far less.
 */
export function buildTin(
  survey: Site["survey"],
  onProgress: BuildProgress = () => undefined,
): { tin: Tin; findings: Finding[] } | { problem: SurveyProblem } {
  const read = vertexPlaces(survey, onProgress);
  if ("problem" in read) return read;
  const { lined, points, findings, rounding, tolerance } = read;

  onProgress(0.3, "triangulating");
  const sliver = Math.max(tolerance, rounding) / 1000;
  const made = triangulate(lined.x, lined.y, lined.edges, sliver, read.spare);
  if ("failed" in made) {
    return { problem: failureProblem(made, (vertex) => idAt(survey.points, points, vertex)) };
  }
  onProgress(0.85, "indexing");
  const { origin, x, y, z } = lined;
  const { triangles, twins } = sortedByVertex(made, x.length, read.spare.buffer);
  const { hull } = made;
  const { least: lowest, most: highest } = rangeOf(z);
  const blocks = blocksOf(x, y, z, triangles);
  const shape = { origin, x, y, z, points, triangles, twins, hull, blocks };
  const tin = tinOf({ ...shape, lowest, highest, rounding, tolerance }, survey.points);
  onProgress(1, "indexing");
  return { tin, findings };
}

/** What triangles are made from. */
interface VertexPlaces {
  lined: LinedPlaces;
  points: Uint32Array;
  findings: Finding[];
  rounding: number;
  tolerance: number;
  /** Memory that has done its work, two numbers or more for each vertex. */
  spare: Float64Array;
}

/** Vertices of the ground and the edges to follow. What it needs on the way is then let go. */
function vertexPlaces(
  survey: Site["survey"],
  onProgress: BuildProgress,
): VertexPlaces | { problem: SurveyProblem } {
  onProgress(0, "welding");
  const read = localRows(survey.points);
  if ("problem" in read) return read;
  const { rounding } = read.survey;
  const tolerance = survey.tolerance ?? WELD_TOLERANCE;
  const reach = Math.max(tolerance, rounding);
  const welded = weldPlaces(survey.points, read.survey, reach);
  if (welded.x.length < 3) return { problem: tooFew(welded.x.length) };
  if (onOneLine(welded, reach)) return { problem: IN_LINE };
  onProgress(0.2, "breaklines");
  const lined = splitBreaklines(survey, welded, reach);
  const findings = [...welded.findings, ...lined.findings];
  const { rows } = read.survey;
  const spare = rows.length >= 2 * lined.x.length ? rows : new Float64Array(2 * lined.x.length);
  return { lined, points: welded.points, findings, rounding, tolerance, spare };
}

/** A Tin of its parts and the survey points that they were made from. */
export function tinOf(parts: TinParts, points: Site["survey"]["points"]): Tin {
  let ids: readonly string[] | null = null;
  return {
    ...parts,
    get ids() {
      return (ids ??= Array.from(parts.x, (_, vertex) => idAt(points, parts.points, vertex)));
    },
  };
}

function idAt(points: Site["survey"]["points"], numbers: Uint32Array, vertex: number): string {
  const point = numbers[vertex];
  return point === undefined ? "" : points[point]!.id;
}

/**
 * Number of the triangle that holds a place (m, local), or -1 outside the hull. A place on an edge
 * belongs to one of its triangles. The side tests are exact (robust orientation).
 */
export function triangleAt(tin: Tin, x: number, y: number): number {
  const count = tin.triangles.length / 3;
  for (const block of blocksIn(tin, [x, y, x, y])) {
    const end = Math.min(count, BLOCK_SIZE * (block + 1));
    for (let t = BLOCK_SIZE * block; t < end; t++) if (holds(tin, t, x, y)) return t;
  }
  return -1;
}

/** Elevation of the ground as found at a place, m, all local; null outside the hull. */
export function elevationAt(tin: Tin, x: number, y: number): number | null {
  const t = triangleAt(tin, x, y);
  if (t < 0) return null;
  const [a, b, c] = corners(tin, t);
  const area = cross(tin, a, b, tin.x[c]!, tin.y[c]!);
  if (area === 0) return tin.z[a]!;
  const wb = cross(tin, c, a, x, y) / area;
  const wc = cross(tin, a, b, x, y) / area;
  return tin.z[a]! + wb * (tin.z[b]! - tin.z[a]!) + wc * (tin.z[c]! - tin.z[a]!);
}

/** Slope of the ground as found at a place: rise per run, and the bearing it falls towards. */
export function slopeAt(
  tin: Tin,
  x: number,
  y: number,
): { slope: number; fallsTowards: number } | null {
  const t = triangleAt(tin, x, y);
  if (t < 0) return null;
  const [a, b, c] = corners(tin, t);
  const area = cross(tin, a, b, tin.x[c]!, tin.y[c]!);
  if (area === 0) return null;
  const ux = tin.x[b]! - tin.x[a]!;
  const uy = tin.y[b]! - tin.y[a]!;
  const uz = tin.z[b]! - tin.z[a]!;
  const vx = tin.x[c]! - tin.x[a]!;
  const vy = tin.y[c]! - tin.y[a]!;
  const vz = tin.z[c]! - tin.z[a]!;
  const gx = (uz * vy - vz * uy) / area;
  const gy = (ux * vz - vx * uz) / area;
  const bearing = (Math.atan2(-gx, -gy) * 180) / Math.PI;
  return { slope: Math.hypot(gx, gy), fallsTowards: (bearing + 360) % 360 };
}

/** Vertex indices of a triangle, counter-clockwise. */
export function corners(tin: Tin, triangle: number): [number, number, number] {
  const t = 3 * triangle;
  return [tin.triangles[t]!, tin.triangles[t + 1]!, tin.triangles[t + 2]!];
}

function holds(tin: Tin, t: number, x: number, y: number): boolean {
  const { x: xs, y: ys, triangles } = tin;
  const [a, b, c] = [triangles[3 * t]!, triangles[3 * t + 1]!, triangles[3 * t + 2]!];
  // Most triangles of a block are told by their box, long before the exact tests.
  if (x < xs[a]! && x < xs[b]! && x < xs[c]!) return false;
  if (x > xs[a]! && x > xs[b]! && x > xs[c]!) return false;
  if (y < ys[a]! && y < ys[b]! && y < ys[c]!) return false;
  if (y > ys[a]! && y > ys[b]! && y > ys[c]!) return false;
  return leftOf(tin, a, b, x, y) && leftOf(tin, b, c, x, y) && leftOf(tin, c, a, x, y);
}

function leftOf(tin: Tin, a: number, b: number, x: number, y: number): boolean {
  // orient2d takes y downward, so its sign is the reverse of ours.
  return orient2d(tin.x[a]!, tin.y[a]!, tin.x[b]!, tin.y[b]!, x, y) <= 0;
}

function cross(tin: Tin, a: number, b: number, x: number, y: number): number {
  const ax = tin.x[a]!;
  const ay = tin.y[a]!;
  return (tin.x[b]! - ax) * (y - ay) - (tin.y[b]! - ay) * (x - ax);
}

function failureProblem(
  failure: TriangulationFailure,
  nameOf: (vertex: number) => string,
): SurveyProblem {
  if (failure.failed === "in-line") return IN_LINE;
  const { from, to, fault } = failure;
  const why = fault === "crosses" ? "it crosses another" : "an end of it is in no triangle";
  return {
    code: "breakline",
    text: `the breakline at ${nameOf(from)}–${nameOf(to)} cannot be followed (${why})`,
    mend: "remove the breakline or one of its points",
  };
}
