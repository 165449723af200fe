import type { PlacedPoint } from "./points.js";
import type { SurveyProblem } from "./types.js";

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
  return [...tinySpread(placed, metres), ...farPoints(placed), ...oddElevations(placed)];
}

function spread(values: readonly number[]): number {
  let least = Infinity;
  let most = -Infinity;
  for (const value of values) {
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return most - least;
}

function median(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

/** Both under 1 apart, within ±180 and ±90, one of them over 1: degrees, not a place in a plane. */
function looksLikeDegrees(placed: readonly PlacedPoint[], metres: number): boolean {
  const xs = placed.map(({ point }) => point.x / metres);
  const ys = placed.map(({ point }) => point.y / metres);
  const far = (values: readonly number[]) => Math.max(...values.slice(0, 3).map(Math.abs));
  const within = far(xs) <= 180 && far(ys) <= 180 && Math.min(far(xs), far(ys)) <= 90;
  const small = spread(xs) < TINY_SPREAD && spread(ys) < TINY_SPREAD;
  return within && small && Math.max(far(xs), far(ys)) > 1 && manyDecimals([...xs, ...ys]);
}

/** Most are given to more than three decimals, as no one measures a length. */
function manyDecimals(values: readonly number[]): boolean {
  const fine = values.filter((value) => Math.abs(value * 1000 - Math.round(value * 1000)) > 1e-6);
  return fine.length * 2 > values.length;
}

function inOneLine(placed: readonly PlacedPoint[]): boolean {
  const start = placed[0]?.point;
  if (start === undefined) return true;
  const furthestFrom = (from: { x: number; y: number }) =>
    placed.reduce((far, { point }) => {
      const closer = Math.hypot(point.x - from.x, point.y - from.y);
      return closer > Math.hypot(far.x - from.x, far.y - from.y) ? point : far;
    }, start);
  const one = furthestFrom(start);
  const other = furthestFrom(one);
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
  const wide = Math.max(
    spread(placed.map(({ point }) => point.x)),
    spread(placed.map(({ point }) => point.y)),
  );
  if (wide >= TINY_SPREAD * metres) return [];
  const text = `all points lie within ${wide.toPrecision(2)} m of each other`;
  return [{ code: "tiny", stops: false, text, mend: "check the unit and the columns" }];
}

/** Points so far from the rest that a digit or a column is likely wrong. */
function farPoints(placed: readonly PlacedPoint[]): SurveyProblem[] {
  const x = median(placed.map(({ point }) => point.x));
  const y = median(placed.map(({ point }) => point.y));
  const away = placed.map(({ point }) => Math.hypot(point.x - x, point.y - y));
  const usual = median(away);
  if (usual === 0) return [];
  return placed.flatMap(({ point, line }, at): SurveyProblem[] => {
    const times = (away[at] ?? 0) / usual;
    if (times <= FAR_TIMES) return [];
    const text = `point ${point.id} is ${Math.round(times)} times as far from the middle as most`;
    const mend = "check its coordinates, or leave it out";
    return [{ code: "far-point", stops: false, text, mend, lines: [line] }];
  });
}

/** Elevations further from the middle one than the survey is wide: a zero, or a slipped column. */
function oddElevations(placed: readonly PlacedPoint[]): SurveyProblem[] {
  const x = median(placed.map(({ point }) => point.x));
  const y = median(placed.map(({ point }) => point.y));
  const wide = 4 * median(placed.map(({ point }) => Math.hypot(point.x - x, point.y - y)));
  const middle = median(placed.map(({ point }) => point.z));
  return placed.flatMap(({ point, line }): SurveyProblem[] => {
    const off = Math.abs(point.z - middle);
    if (wide === 0 || off <= wide) return [];
    const text = `point ${point.id} is ${off.toFixed(1)} m above or below most others`;
    const mend = "check its elevation, or leave it out";
    return [{ code: "odd-elevation", stops: false, text, mend, lines: [line] }];
  });
}
