/** The line about something at one distance from it: its true offset, with round ends and corners. */
import type { PlanPoint } from "../site/index.js";

/** A stretch or a place (both ends alike) and how far the offset lies from it, m. */
export interface Core {
  a: PlanPoint;
  b: PlanPoint;
  distance: number;
}

/** A piece of the offset: a straight line of two places, or an arc in small steps; m. */
export type OffsetPiece = readonly PlanPoint[];

/** Greatest turn between neighbouring places of an arc, radians. */
const STEP = Math.PI / 36;
/** Share of the distance by which a place may seem nearer by rounding alone. */
const ROUNDING = 1e-9;
/** Share of a line by which another may seem to miss its end by rounding alone. */
const SLACK = 1e-9;

interface Line {
  a: PlanPoint;
  b: PlanPoint;
}
interface Round {
  at: PlanPoint;
  radius: number;
}

/**
 * The edge of all places nearer to any core than its distance: of every line beside a core and every
 * circle about its ends, the parts that no core comes nearer to. Each place kept lies exactly as far
 * from its core as asked, and none nearer to another than that one asks. `hides` drops pieces whose
 * middle lies where nothing is to be drawn. Pieces are in no order.
 */
export function offsetPieces(
  cores: readonly Core[],
  hides: (place: PlanPoint) => boolean = () => false,
): OffsetPiece[] {
  const lines = cores.flatMap(sidesOf);
  const rounds = cores.flatMap(({ a, b, distance }): Round[] =>
    distance <= 0
      ? []
      : same(a, b)
        ? [{ at: a, radius: distance }]
        : [
            { at: a, radius: distance },
            { at: b, radius: distance },
          ],
  );
  const unlike = rounds.filter(
    (one, i) =>
      rounds.findIndex((other) => same(one.at, other.at) && one.radius === other.radius) === i,
  );
  const isKept = (place: PlanPoint): boolean =>
    !hides(place) &&
    cores.every(
      (core) => distanceTo(place, core) >= core.distance - ROUNDING * Math.max(1, core.distance),
    );
  return [
    ...lines.flatMap((line) => partsOfLine(line, lines, unlike, isKept)),
    ...unlike.flatMap((round) => partsOfRound(round, lines, unlike, isKept)),
  ];
}

/** The two lines beside a core at its distance. */
function sidesOf({ a, b, distance }: Core): Line[] {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const length = Math.hypot(dx, dy);
  if (length === 0 || distance <= 0) return [];
  const [nx, ny] = [(-dy / length) * distance, (dx / length) * distance];
  return [
    { a: [a[0] + nx, a[1] + ny], b: [b[0] + nx, b[1] + ny] },
    { a: [a[0] - nx, a[1] - ny], b: [b[0] - nx, b[1] - ny] },
  ];
}

function partsOfLine(
  line: Line,
  lines: readonly Line[],
  rounds: readonly Round[],
  isKept: (place: PlanPoint) => boolean,
): OffsetPiece[] {
  const cuts = [
    0,
    1,
    ...lines.flatMap((other) => meetLines(line, other)),
    ...rounds.flatMap((round) => meetRound(line, round)),
  ]
    .filter((t) => t >= 0 && t <= 1)
    .sort((one, other) => one - other);
  const at = (t: number): PlanPoint => [
    line.a[0] + t * (line.b[0] - line.a[0]),
    line.a[1] + t * (line.b[1] - line.a[1]),
  ];
  return between(cuts).flatMap(([from, to]) =>
    isKept(at((from + to) / 2)) ? [[at(from), at(to)]] : [],
  );
}

function partsOfRound(
  round: Round,
  lines: readonly Line[],
  rounds: readonly Round[],
  isKept: (place: PlanPoint) => boolean,
): OffsetPiece[] {
  const angles = [
    ...lines.flatMap((line) =>
      meetRound(line, round).flatMap((t) =>
        t < -SLACK || t > 1 + SLACK
          ? []
          : [
              Math.atan2(
                line.a[1] + t * (line.b[1] - line.a[1]) - round.at[1],
                line.a[0] + t * (line.b[0] - line.a[0]) - round.at[0],
              ),
            ],
      ),
    ),
    ...rounds.flatMap((other) => meetRounds(round, other)),
  ].sort((one, other) => one - other);
  const [first] = angles;
  const cuts = first === undefined ? [-Math.PI, Math.PI] : [...angles, first + 2 * Math.PI];
  const at = (turn: number): PlanPoint => [
    round.at[0] + round.radius * Math.cos(turn),
    round.at[1] + round.radius * Math.sin(turn),
  ];
  return between(cuts).flatMap(([from, to]) => {
    if (!isKept(at((from + to) / 2))) return [];
    const steps = Math.max(1, Math.ceil((to - from) / STEP));
    return [Array.from({ length: steps + 1 }, (_, k) => at(from + ((to - from) * k) / steps))];
  });
}

/** Neighbours in a list of cuts, without those that are one. */
function between(cuts: readonly number[]): [number, number][] {
  return cuts.slice(1).flatMap((to, i): [number, number][] => {
    const from = cuts[i]!;
    return to - from > 1e-12 ? [[from, to]] : [];
  });
}

/** Where along a line another crosses it, 0 to 1 within; where they run together, its ends. */
function meetLines(one: Line, other: Line): number[] {
  const [ux, uy] = [one.b[0] - one.a[0], one.b[1] - one.a[1]];
  const [vx, vy] = [other.b[0] - other.a[0], other.b[1] - other.a[1]];
  const [wx, wy] = [other.a[0] - one.a[0], other.a[1] - one.a[1]];
  const cross = ux * vy - uy * vx;
  if (Math.abs(cross) > 1e-12 * Math.hypot(ux, uy) * Math.hypot(vx, vy)) {
    const s = (wx * uy - wy * ux) / cross;
    return s < -SLACK || s > 1 + SLACK ? [] : [(wx * vy - wy * vx) / cross];
  }
  const square = ux * ux + uy * uy;
  return [other.a, other.b].map((p) => ((p[0] - one.a[0]) * ux + (p[1] - one.a[1]) * uy) / square);
}

/** Where along a line a circle meets it, 0 to 1 within the line. */
function meetRound({ a, b }: Line, { at, radius }: Round): number[] {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const [fx, fy] = [a[0] - at[0], a[1] - at[1]];
  const A = dx * dx + dy * dy;
  const half = fx * dx + fy * dy;
  const rest = half * half - A * (fx * fx + fy * fy - radius * radius);
  // A line that touches is cut where it touches: rounding leaves the rest near nothing, either way,
  // and its root would set the cut off by far more.
  if (Math.abs(rest) <= 1e-9 * A * radius * radius) return [-half / A];
  if (rest < 0) return [];
  const root = Math.sqrt(rest);
  return [(-half - root) / A, (-half + root) / A];
}

/** Directions from the middle of one circle to where another meets it, radians. */
function meetRounds(one: Round, other: Round): number[] {
  const [dx, dy] = [other.at[0] - one.at[0], other.at[1] - one.at[1]];
  const far = Math.hypot(dx, dy);
  if (far === 0 || far > one.radius + other.radius) return [];
  if (far < Math.abs(one.radius - other.radius)) return [];
  const cosine = (far * far + one.radius ** 2 - other.radius ** 2) / (2 * far * one.radius);
  const spread = Math.acos(Math.min(1, Math.max(-1, cosine)));
  const middle = Math.atan2(dy, dx);
  return [middle - spread, middle + spread].map((turn) =>
    Math.atan2(Math.sin(turn), Math.cos(turn)),
  );
}

function distanceTo([x, y]: PlanPoint, { a, b }: Core): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : ((x - a[0]) * dx + (y - a[1]) * dy) / square;
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy);
}

function same(a: PlanPoint, b: PlanPoint): boolean {
  return a[0] === b[0] && a[1] === b[1];
}
