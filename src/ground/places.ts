/** Survey points as flat arrays of local coordinates, checked. */
import type { SurveyPoint } from "../site/index.js";

/** Places with heights, local m (site = origin + local). */
export interface Places {
  origin: readonly [number, number, number];
  x: Float64Array;
  y: Float64Array;
  z: Float64Array;
}

/** Why no ground can be built from the survey. */
export interface SurveyProblem {
  code: "too-few-points" | "in-line" | "not-a-number" | "absurd-spread" | "breakline";
  text: string;
  mend: string;
}

/** Surveys wider or higher than this are mistakes of units or digits, m. */
const WIDEST = 1e7;
const HIGHEST = 1e6;

/** The survey's points in file order: x, y, z of the first, of the second …, local m. */
export interface SurveyRows {
  origin: readonly [number, number, number];
  rows: Float64Array;
  /** What arithmetic alone may be wrong by, m: 1e-12 of the largest local coordinate or height. */
  rounding: number;
}

/** The survey's points about a whole-metre origin near their middle. */
export function localRows(
  points: readonly SurveyPoint[],
): { survey: SurveyRows } | { problem: SurveyProblem } {
  const count = points.length;
  if (count < 3) return { problem: tooFew(count) };
  const rows = new Float64Array(3 * count);
  for (let i = 0; i < count; i++) {
    const point = points[i]!;
    const { x, y, z } = point;
    if (!Number.isFinite(x + y + z)) return { problem: notANumber(point) };
    rows[3 * i] = x;
    rows[3 * i + 1] = y;
    rows[3 * i + 2] = z;
  }
  const [east, north, up] = [rangeOf(rows, 0, 3), rangeOf(rows, 1, 3), rangeOf(rows, 2, 3)];
  const spread = Math.max(east.most - east.least, north.most - north.least);
  // Heights count from zero: ground a thousand kilometres up is as absurd as a cliff of that height.
  const height = Math.max(up.most, 0) - Math.min(up.least, 0);
  if (spread > WIDEST || height > HIGHEST) return { problem: absurd(Math.max(spread, height)) };
  const origin = [middleOf(east), middleOf(north), middleOf(up)] as const;
  const [ox, oy, oz] = origin;
  let far = 0;
  for (let i = 0; i < 3 * count; i += 3) {
    const x = rows[i]! - ox;
    const y = rows[i + 1]! - oy;
    const z = rows[i + 2]! - oz;
    rows[i] = x;
    rows[i + 1] = y;
    rows[i + 2] = z;
    far = Math.max(far, Math.abs(x), Math.abs(y), Math.abs(z));
  }
  return { survey: { origin, rows, rounding: 1e-12 * far } };
}

interface Range {
  least: number;
  most: number;
}

/** Least and greatest of every `step`th value. */
export function rangeOf(values: Float64Array, first = 0, step = 1): Range {
  let [least, most] = [Infinity, -Infinity];
  for (let i = first; i < values.length; i += step) {
    const value = values[i]!;
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return { least, most };
}

function middleOf({ least, most }: Range): number {
  return Math.round((least + most) / 2);
}

/** True when every place lies within `tolerance` (m) of one line. */
export function onOneLine({ x, y }: Pick<Places, "x" | "y">, tolerance: number): boolean {
  let [far, most] = [0, 0];
  for (let i = 1; i < x.length; i++) {
    const squared = (x[i]! - x[0]!) ** 2 + (y[i]! - y[0]!) ** 2;
    if (squared > most) [far, most] = [i, squared];
  }
  const length = Math.sqrt(most);
  const dx = (x[far]! - x[0]!) / length;
  const dy = (y[far]! - y[0]!) / length;
  for (let i = 1; i < x.length; i++) {
    const off = dx * (y[i]! - y[0]!) - dy * (x[i]! - x[0]!);
    if (Math.abs(off) > tolerance) return false;
  }
  return true;
}

/** The problem of a survey with only so many points at different places. */
export function tooFew(count: number): SurveyProblem {
  return {
    code: "too-few-points",
    text: `the survey has ${count} point${count === 1 ? "" : "s"} at different places`,
    mend: "give three or more, not all in one line",
  };
}

/** The problem of a survey whose points all lie in one line. */
export const IN_LINE: SurveyProblem = {
  code: "in-line",
  text: "all survey points lie in one line",
  mend: "add a point off that line",
};

function notANumber(point: SurveyPoint): SurveyProblem {
  return {
    code: "not-a-number",
    text: `survey point ${point.id} has a coordinate that is not a number`,
    mend: "correct it or leave the point out",
  };
}

function absurd(spread: number): SurveyProblem {
  return {
    code: "absurd-spread",
    text: `the survey points spread over ${Math.round(spread / 1000)} km`,
    mend: "look for a point with a digit too many, or for degrees in place of metres",
  };
}
