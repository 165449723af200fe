import type { SurveyPoint } from "../site/index.js";
import type { SurveyProblem } from "./types.js";

/** A point and the line that it came from. */
export interface PlacedPoint {
  point: SurveyPoint;
  line: number;
}

/** A point this many times further off than the middle one of the distances is asked about. */
const FAR_TIMES = 20;
/** A survey narrower than this both ways is too small to be a site; in the table's unit. */
const TINY_SPREAD = 1;
/** Points are in one line when none is further off it than this share of its length. */
const STRAIGHT = 1e-6;

/**
 * What is wrong with the points as a whole: too few, all in a line, degrees for lengths, one far from
 * the rest, an elevation that cannot be. `metres` is the size of the table's unit, m; `degreesNamed`
 * when the header says latitude or longitude.
 */
export function layoutProblems(
  placed: readonly PlacedPoint[],
  degreesNamed: boolean,
  metres: number,
): SurveyProblem[] {
  if (placed.length < 3) {
    const text = `only ${placed.length} usable ${placed.length === 1 ? "point" : "points"}`;
    const mend = "the ground needs 3 or more, not all in one line";
    return [{ code: "too-few-points", stops: true, text, mend }];
  }
  if (degreesNamed || looksLikeDegrees(placed, metres)) {
    const text = "the coordinates look like longitude and latitude in degrees";
    const mend = "bring them as metres or feet in a plane, such as UTM or state plane";
    return [{ code: "degrees", stops: true, text, mend }];
  }
  if (inOneLine(placed)) {
    const text = "all points lie in one line";
    const mend = "add points to both sides of it, or check which columns are easting and northing";
    return [{ code: "one-line", stops: true, text, mend }];
  }
  const middle = middleOf(placed);
  return [
    ...tinySpread(placed, metres),
    ...farPoints(placed, middle),
    ...oddElevations(placed, middle, metres),
  ];
}

function spread(values: Float64Array): number {
  let least = Infinity;
  let most = -Infinity;
  for (const value of values) {
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return most - least;
}

/** One coordinate of every point; filled by hand, since `Float64Array.from` is slow. */
function alongAxis(placed: readonly PlacedPoint[], axis: "x" | "y" | "z"): Float64Array {
  const values = new Float64Array(placed.length);
  placed.forEach(({ point }, at) => {
    values[at] = point[axis];
  });
  return values;
}

/** Sorts what it is given. */
function median(values: Float64Array): number {
  values.sort();
  return values[Math.floor(values.length / 2)] ?? 0;
}

/**
 * Both under 1 apart, within ±180 and ±90, one of them over 1, and to more decimals than anyone
 * measures a length: degrees, not a place in a plane.
 */
function looksLikeDegrees(placed: readonly PlacedPoint[], metres: number): boolean {
  const xs = alongAxis(placed, "x").map((value) => value / metres);
  const ys = alongAxis(placed, "y").map((value) => value / metres);
  if (spread(xs) >= TINY_SPREAD || spread(ys) >= TINY_SPREAD) return false;
  const x = Math.abs(xs[0] ?? 0);
  const y = Math.abs(ys[0] ?? 0);
  const within = Math.max(x, y) <= 180 && Math.min(x, y) <= 90 && Math.max(x, y) > 1;
  const both = [...xs, ...ys];
  const fine = both.filter((value) => Math.abs(value * 1000 - Math.round(value * 1000)) > 1e-6);
  return within && fine.length * 2 > both.length;
}

function furthestFrom(placed: readonly PlacedPoint[], from: SurveyPoint): SurveyPoint {
  let far = from;
  let most = 0;
  for (const { point } of placed) {
    const away = (point.x - from.x) ** 2 + (point.y - from.y) ** 2;
    if (away <= most) continue;
    far = point;
    most = away;
  }
  return far;
}

function inOneLine(placed: readonly PlacedPoint[]): boolean {
  const start = placed[0]?.point;
  if (start === undefined) return true;
  const one = furthestFrom(placed, start);
  const other = furthestFrom(placed, one);
  const dx = other.x - one.x;
  const dy = other.y - one.y;
  const long = Math.hypot(dx, dy);
  if (long === 0) return true;
  return placed.every(({ point }) => {
    const off = Math.abs((point.x - one.x) * dy - (point.y - one.y) * dx) / long;
    return off <= Math.max(long * STRAIGHT, 1e-9);
  });
}

function tinySpread(placed: readonly PlacedPoint[], metres: number): SurveyProblem[] {
  const wide = Math.max(spread(alongAxis(placed, "x")), spread(alongAxis(placed, "y")));
  if (wide >= TINY_SPREAD * metres) return [];
  const text = `all points lie within ${(wide / metres).toPrecision(2)} of each other, as the table counts`;
  return [{ code: "tiny", stops: false, text, mend: "check the unit and the columns" }];
}

/** The middle of a survey by medians, which one wild point does not move; m. */
interface Middle {
  z: number;
  /** Distance of each point from the middle in plan, and the middle one of these. */
  away: Float64Array;
  usual: number;
}

function middleOf(placed: readonly PlacedPoint[]): Middle {
  const x = median(alongAxis(placed, "x"));
  const y = median(alongAxis(placed, "y"));
  const z = median(alongAxis(placed, "z"));
  // Not Math.hypot, which is several times slower and guards against sizes that no survey has.
  const away = new Float64Array(placed.length);
  placed.forEach(({ point }, at) => {
    away[at] = Math.sqrt((point.x - x) ** 2 + (point.y - y) ** 2);
  });
  return { z, away, usual: median(away.slice()) };
}

/** Points so far from the rest that a digit or a column is likely wrong. */
function farPoints(placed: readonly PlacedPoint[], middle: Middle): SurveyProblem[] {
  const problems: SurveyProblem[] = [];
  for (const [at, { point, line }] of placed.entries()) {
    const times = (middle.away[at] ?? 0) / middle.usual;
    if (middle.usual === 0 || times <= FAR_TIMES) continue;
    const text = `point ${point.id} is ${Math.round(times)} times as far from the middle as most`;
    const mend = "check its coordinates, or leave it out";
    problems.push({ code: "far-point", stops: false, text, mend, lines: [line] });
  }
  return problems;
}

/** Elevations further from the middle one than the survey is wide: a zero, or a slipped column. */
function oddElevations(
  placed: readonly PlacedPoint[],
  middle: Middle,
  metres: number,
): SurveyProblem[] {
  const wide = 4 * middle.usual;
  const problems: SurveyProblem[] = [];
  for (const { point, line } of placed) {
    const off = Math.abs(point.z - middle.z);
    if (wide === 0 || off <= wide) continue;
    const text = `point ${point.id} is ${(off / metres).toFixed(1)} above or below most others, as the table counts`;
    const mend = "check its elevation, or leave it out";
    problems.push({ code: "odd-elevation", stops: false, text, mend, lines: [line] });
  }
  return problems;
}
