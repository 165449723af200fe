/** Survey points as flat arrays of local coordinates, checked and sorted. */
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

/** The survey's points about a whole-metre origin near their middle, in file order. */
export function localPlaces(
  points: readonly SurveyPoint[],
): { places: Places } | { problem: SurveyProblem } {
  const count = points.length;
  if (count < 3) return { problem: tooFew(count) };
  const [x, y, z] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  for (let i = 0; i < count; i++) {
    const point = points[i]!;
    x[i] = point.x;
    y[i] = point.y;
    z[i] = point.z;
    if (!Number.isFinite(point.x + point.y + point.z)) return { problem: notANumber(point) };
  }
  const [wide, deep, high] = [rangeOf(x), rangeOf(y), rangeOf(z)];
  const spread = Math.max(wide.size, deep.size);
  // Heights count from zero: ground a thousand kilometres up is as absurd as a cliff of that height.
  const height = Math.max(high.most, 0) - Math.min(high.least, 0);
  if (spread > WIDEST || height > HIGHEST) return { problem: absurd(Math.max(spread, height)) };
  const origin = [wide.middle, deep.middle, high.middle] as const;
  shift(x, origin[0]);
  shift(y, origin[1]);
  shift(z, origin[2]);
  return { places: { origin, x, y, z } };
}

/** Least and greatest value, their difference, and the whole number nearest to their middle. */
export function rangeOf(values: Float64Array): {
  least: number;
  most: number;
  size: number;
  middle: number;
} {
  let [least, most] = [Infinity, -Infinity];
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return { least, most, size: most - least, middle: Math.round((least + most) / 2) };
}

function shift(values: Float64Array, by: number): void {
  for (let i = 0; i < values.length; i++) values[i]! -= by;
}

/** What arithmetic alone may be wrong by, m: 1e-12 of the largest local coordinate or height. */
export function roundingOf({ x, y, z }: Places): number {
  let far = 0;
  for (const values of [x, y, z]) {
    const { least, most } = rangeOf(values);
    far = Math.max(far, -least, most);
  }
  return 1e-12 * far;
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
