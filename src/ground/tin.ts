import { orient2d } from "robust-predicates";
import Flatbush from "flatbush";
import type { Finding, Site } from "../site/index.js";
import { splitBreaklines, weldPoints } from "./weld.js";
import { triangulate } from "./delaunay.js";

/** Points nearer to each other than this in plan are one point, m. */
export const WELD_TOLERANCE = 0.001;

/**
 * The ground as found: triangles between the survey points. All coordinates are local, m:
 * site = origin + local. The arrays are never written after construction.
 */
export interface Tin {
  origin: readonly [number, number, number];
  x: Float64Array;
  y: Float64Array;
  z: Float64Array;
  /** Survey id of each vertex; "" for one added where two breaklines cross. */
  ids: readonly string[];
  /** Vertex indices, three per triangle, counter-clockwise. */
  triangles: Uint32Array;
  /** Vertex indices around the outside, counter-clockwise. */
  hull: Uint32Array;
  /** Boxes of the triangles in plan, in triangle order. */
  index: Flatbush;
  /** Lowest and highest vertex, m local. */
  lowest: number;
  highest: number;
}

/** Why no ground can be built from the survey. */
export interface SurveyProblem {
  code: "too-few-points" | "in-line" | "not-a-number" | "absurd-spread" | "breakline";
  text: string;
  mend: string;
}

/**
 * Builds the triangulated ground from a site's survey: welds points that share a place, splits
 * breaklines where they cross or pass through a point, triangulates, and indexes the triangles.
 */
export function buildTin(
  survey: Site["survey"],
): { tin: Tin; findings: Finding[] } | { problem: SurveyProblem } {
  const problem = spreadProblem(survey.points);
  if (problem) return { problem };
  const welded = weldPoints(survey.points, WELD_TOLERANCE);
  if (welded.x.length < 3) return { problem: tooFew(welded.x.length) };
  const lined = splitBreaklines(welded, survey.breaklines ?? [], WELD_TOLERANCE);
  const xy = new Float64Array(lined.x.length * 2);
  lined.x.forEach((x, i) => (xy[2 * i] = x));
  lined.y.forEach((y, i) => (xy[2 * i + 1] = y));
  const made = triangulate(xy, lined.edges);
  if ("failed" in made) {
    return { problem: made.failed === "in-line" ? inLine : breaklineProblem(made.text) };
  }
  if (onOneLine(xy)) return { problem: inLine };
  return { tin: indexed(lined, made.triangles, made.hull), findings: lined.findings };
}

function indexed(
  points: ReturnType<typeof splitBreaklines>,
  triangles: Uint32Array,
  hull: Uint32Array,
): Tin {
  const x = Float64Array.from(points.x);
  const y = Float64Array.from(points.y);
  const z = Float64Array.from(points.z);
  const index = new Flatbush(triangles.length / 3);
  let lowest = Infinity;
  let highest = -Infinity;
  for (const height of z) {
    lowest = Math.min(lowest, height);
    highest = Math.max(highest, height);
  }
  for (let t = 0; t < triangles.length; t += 3) {
    const a = triangles[t]!;
    const b = triangles[t + 1]!;
    const c = triangles[t + 2]!;
    index.add(
      Math.min(x[a]!, x[b]!, x[c]!),
      Math.min(y[a]!, y[b]!, y[c]!),
      Math.max(x[a]!, x[b]!, x[c]!),
      Math.max(y[a]!, y[b]!, y[c]!),
    );
  }
  index.finish();
  const { origin, ids } = points;
  return { origin, x, y, z, ids, triangles, hull, index, lowest, highest };
}

/**
 * Number of the triangle that holds a place (m, local), or -1 outside the hull. A place on an edge
 * belongs to one of its triangles. The side tests are exact (robust orientation).
 */
export function triangleAt(tin: Tin, x: number, y: number): number {
  let found = -1;
  tin.index.search(x, y, x, y, (t) => {
    if (found < 0 && holds(tin, t, x, y)) found = t;
    return false;
  });
  return found;
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
  const [a, b, c] = corners(tin, t);
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

function spreadProblem(points: Site["survey"]["points"]): SurveyProblem | null {
  if (points.length < 3) return tooFew(points.length);
  let [low, high] = [Infinity, -Infinity];
  for (const point of points) {
    if (!Number.isFinite(point.x + point.y + point.z)) {
      return {
        code: "not-a-number",
        text: `survey point ${point.id} has a coordinate that is not a number`,
        mend: "correct it or leave the point out",
      };
    }
    low = Math.min(low, point.z, 0);
    high = Math.max(high, point.z, 0);
  }
  const xs = span(points.map((point) => point.x));
  const ys = span(points.map((point) => point.y));
  if (Math.max(xs, ys) > 1e6 || high - low > 1e5) {
    return {
      code: "absurd-spread",
      text: `the survey points spread over ${Math.round(Math.max(xs, ys, high - low) / 1000)} km`,
      mend: "look for a point with a digit too many, or for degrees in place of metres",
    };
  }
  return null;
}

function span(values: readonly number[]): number {
  let low = Infinity;
  let high = -Infinity;
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return high - low;
}

/** True when every point lies within the weld tolerance of one line. */
function onOneLine(xy: Float64Array): boolean {
  let far = 0;
  for (let i = 2; i < xy.length; i += 2) {
    if (distanceSquared(xy, 0, i) > distanceSquared(xy, 0, far)) far = i;
  }
  const length = Math.sqrt(distanceSquared(xy, 0, far));
  const dx = (xy[far]! - xy[0]!) / length;
  const dy = (xy[far + 1]! - xy[1]!) / length;
  for (let i = 2; i < xy.length; i += 2) {
    const off = dx * (xy[i + 1]! - xy[1]!) - dy * (xy[i]! - xy[0]!);
    if (Math.abs(off) > WELD_TOLERANCE) return false;
  }
  return true;
}

function distanceSquared(xy: Float64Array, i: number, j: number): number {
  return (xy[i]! - xy[j]!) ** 2 + (xy[i + 1]! - xy[j + 1]!) ** 2;
}

function tooFew(count: number): SurveyProblem {
  return {
    code: "too-few-points",
    text: `the survey has ${count} point${count === 1 ? "" : "s"} at different places`,
    mend: "give three or more, not all in one line",
  };
}

const inLine: SurveyProblem = {
  code: "in-line",
  text: "all survey points lie in one line",
  mend: "add a point off that line",
};

function breaklineProblem(text: string): SurveyProblem {
  return {
    code: "breakline",
    text: `a breakline cannot be followed (${text})`,
    mend: "remove the breakline or one of its points",
  };
}
