/** One point of a maker's curve: m³/s, m of head, and W taken from the supply where known. */
export interface PumpPoint {
  flow: number;
  head: number;
  power?: number | undefined;
}

/** A pump's curve, smooth between its points. */
export interface PumpCurve {
  /** Head at no flow, m: the first point's when it is at no flow, else carried level to there. */
  shutOff: number;
  /** The largest flow that the curve gives, m³/s. */
  most: number;
  /** Head, m. Below no flow it is `shutOff`; past `most` the last slope goes on. */
  headAt: (flow: number) => number;
  /** Slope of the head, m per m³/s: never above 0. */
  slopeAt: (flow: number) => number;
  /** W from the supply at a flow within the curve; null where the points do not say. */
  powerAt: (flow: number) => number | null;
  points: readonly PumpPoint[];
}

/** Why points are no pump curve: the row at fault, counted from 0, or null for the whole. */
export interface CurveProblem {
  row: number | null;
  text: string;
  mend: string;
}

/**
 * The curve through a maker's points by monotone cubic pieces, so that it passes every point and
 * rises nowhere between them. Source: Fritsch and Butland, A Method for Constructing Local Monotone
 * Piecewise Cubic Interpolants, SIAM J. Sci. Stat. Comput. 5 (1984). Points in any order; a curve
 * whose head rises with flow, that has fewer than two points, or two heads at one flow, is refused.
 */
export function pumpCurve(given: readonly PumpPoint[]): PumpCurve | CurveProblem {
  const problem = curveProblem(given);
  if (problem !== null) return problem;
  const points = [...given].sort((a, b) => a.flow - b.flow);
  const flows = points.map((point) => point.flow);
  const head = cubic(
    flows,
    points.map((point) => point.head),
  );
  const powers = points.map((point) => point.power).filter((power) => power !== undefined);
  const power = powers.length === points.length ? cubic(flows, powers) : null;
  const first = flows[0]!;
  const most = flows[flows.length - 1]!;
  return {
    shutOff: head.at(first),
    most,
    headAt: (flow) => head.at(Math.max(flow, first)),
    slopeAt: (flow) => (flow < first ? 0 : Math.min(0, head.slope(flow))),
    powerAt: (flow) => (power === null || flow > most ? null : power.at(Math.max(flow, first))),
    points,
  };
}

/** Whether making a curve failed. */
export function isCurveProblem(made: PumpCurve | CurveProblem): made is CurveProblem {
  return "mend" in made;
}

function curveProblem(given: readonly PumpPoint[]): CurveProblem | null {
  if (given.length < 2) {
    const text = `has ${given.length} point${given.length === 1 ? "" : "s"}`;
    return { row: null, text, mend: "give two points or more" };
  }
  const rows = given.map((point, row) => ({ ...point, row }));
  for (const { flow, head, row } of rows) {
    if (!(flow >= 0 && head >= 0 && Number.isFinite(flow + head))) {
      const text = `has flow ${flow} and head ${head}`;
      return { row, text, mend: "give both as numbers that are not below zero" };
    }
  }
  rows.sort((a, b) => a.flow - b.flow);
  for (let i = 1; i < rows.length; i += 1) {
    const [before, here] = [rows[i - 1]!, rows[i]!];
    if (here.flow === before.flow) {
      return { row: here.row, text: "is a second point at one flow", mend: "keep one of the two" };
    }
    if (here.head > before.head) {
      const text = "has more head than the point at the next smaller flow";
      return { row: here.row, text, mend: "check it: a pump's head falls as its flow grows" };
    }
  }
  return null;
}

interface Cubic {
  at: (x: number) => number;
  slope: (x: number) => number;
}

/** Fritsch and Butland's cubic through points in order of x; beyond the ends it goes on straight. */
function cubic(x: readonly number[], y: readonly number[]): Cubic {
  const last = x.length - 1;
  const secant = (i: number): number => (y[i + 1]! - y[i]!) / (x[i + 1]! - x[i]!);
  const slopes = x.map((_, i) => {
    if (i === 0) return endSlope(x, y, 0, 1, 2);
    if (i === last) return endSlope(x, y, last, last - 1, last - 2);
    const [before, after] = [secant(i - 1), secant(i)];
    if (before * after <= 0) return 0;
    const [near, far] = [x[i]! - x[i - 1]!, x[i + 1]! - x[i]!];
    const [a, b] = [2 * far + near, far + 2 * near];
    return (a + b) / (a / before + b / after);
  });
  const piece = (at: number): number => {
    let i = 0;
    while (i < last - 1 && at > x[i + 1]!) i += 1;
    return i;
  };
  const at = (where: number): number => {
    if (where >= x[last]!) return y[last]! + slopes[last]! * (where - x[last]!);
    const i = piece(where);
    const wide = x[i + 1]! - x[i]!;
    const t = (where - x[i]!) / wide;
    const u = 1 - t;
    return (
      y[i]! * u * u * (1 + 2 * t) +
      y[i + 1]! * t * t * (3 - 2 * t) +
      wide * t * u * (slopes[i]! * u - slopes[i + 1]! * t)
    );
  };
  const slope = (where: number): number => {
    if (where >= x[last]!) return slopes[last]!;
    const i = piece(where);
    const wide = x[i + 1]! - x[i]!;
    const t = (where - x[i]!) / wide;
    const turn = 6 * t * (1 - t);
    return (
      (turn * (y[i + 1]! - y[i]!)) / wide +
      slopes[i]! * (1 - 4 * t + 3 * t * t) +
      slopes[i + 1]! * (3 * t * t - 2 * t)
    );
  };
  return { at, slope };
}

/** Three-point slope at an end, kept to the sign of the end's secant and three times it at most. */
function endSlope(
  x: readonly number[],
  y: readonly number[],
  end: number,
  next: number,
  after: number,
): number {
  const near = (y[next]! - y[end]!) / (x[next]! - x[end]!);
  if (x[after] === undefined) return near;
  const far = (y[after]! - y[next]!) / (x[after] - x[next]!);
  const [h, k] = [x[next]! - x[end]!, x[after] - x[next]!];
  const slope = ((2 * h + k) * near - h * far) / (h + k);
  if (slope * near <= 0) return 0;
  if (near * far < 0 && Math.abs(slope) > 3 * Math.abs(near)) return 3 * near;
  return slope;
}

/** Where a pump meets a system. */
export type OperatingPoint =
  | { kind: "meets"; flow: number; head: number }
  /** The system wants more than the pump's head at no flow, by `short` m. */
  | { kind: "below-shut-off"; short: number }
  /** The pump still has head to spare, `over` m, at the largest flow that its curve gives. */
  | { kind: "off-curve"; most: number; over: number };

/**
 * The flow at which a pump gives the head that a system wants; `systemHead` (m at m³/s) must not
 * fall with flow. Found by halving, to 1e-12 of the curve's largest flow.
 */
export function operatingPoint(
  curve: PumpCurve,
  systemHead: (flow: number) => number,
): OperatingPoint {
  const spare = (flow: number): number => curve.headAt(flow) - systemHead(flow);
  if (spare(0) < 0) return { kind: "below-shut-off", short: -spare(0) };
  if (spare(curve.most) > 0)
    return { kind: "off-curve", most: curve.most, over: spare(curve.most) };
  let [low, high] = [0, curve.most];
  while (high - low > 1e-12 * curve.most) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (spare(middle) > 0) low = middle;
    else high = middle;
  }
  return { kind: "meets", flow: low, head: curve.headAt(low) };
}
