import type { PipeRun } from "../dig/index.js";
import { FLOW_SETTINGS } from "./settings.js";
import { stretchesOf } from "./stretches.js";
import type { Rule } from "./rule.js";
import type { EndMove, OutletJoint, TankJoint } from "./types.js";

/** What a pipe is asked: the rules for its size, null where none is, and the joints at its ends. */
export interface Asked {
  leastFall: Rule | null;
  mostFall: Rule | null;
  leastCover: Rule;
  joints: readonly (TankJoint | OutletJoint)[];
}

/** One thing asked of the moves of a pipe's ends, m up: start × s + end × e ≤ most. */
export interface Limit {
  of: "fall" | "steep" | "cover" | "joint";
  start: number;
  end: number;
  most: number;
}

/** m, or m of drop: below this two amounts are the same to the arithmetic. */
const SAME = 1e-9;
/** As `SAME` for a crossing of two limits, which loses some digits. */
const SAME_AT_CROSSING = 1e-7;

/**
 * All that is asked of a pipe as limits on how far its ends may move. Moving an end tilts the pipe
 * about the other, so every check is linear in the two moves. What holds now, within its tolerance,
 * may go on doing so; what fails has to be met exactly. No limits for a pipe without length.
 */
export function limitsOn(run: PipeRun, asked: Asked): Limit[] {
  if (!(run.length > 0)) return [];
  return [
    ...fallLimits(run, asked),
    ...coverLimits(run, asked.leastCover.value),
    ...jointLimits(asked),
  ];
}

/** Whether a pipe as it lies keeps within all limits. */
export function keeps(limits: readonly Limit[]): boolean {
  return limits.every((limit) => limit.most >= -SAME);
}

function fallLimits(run: PipeRun, { leastFall, mostFall }: Asked): Limit[] {
  const { dropTolerance } = FLOW_SETTINGS;
  return stretchesOf(run).flatMap(({ fall, from, to }): Limit[] => {
    const share = (to - from) / run.length;
    const limits: Limit[] = [];
    if (leastFall !== null) {
      const most = eased((fall - leastFall.value) * (to - from), dropTolerance);
      limits.push({ of: "fall", start: -share, end: share, most });
    }
    if (mostFall !== null) {
      const most = eased((mostFall.value - fall) * (to - from), dropTolerance);
      limits.push({ of: "steep", start: share, end: -share, most });
    }
    return limits;
  });
}

function coverLimits(run: PipeRun, least: number): Limit[] {
  const covers = run.stations
    .filter((station) => !Number.isNaN(station.ground))
    .map((station) => ({ share: station.station / run.length, cover: coverAt(station, run) }));
  const thinnest = Math.min(...covers.map((each) => each.cover));
  return covers.map(({ share, cover }) => {
    // Where the ground steps, the dig knows of a thinner place than its stations show.
    const known = cover === thinnest ? Math.min(cover, run.cover.least) : cover;
    const most = eased(known - least, FLOW_SETTINGS.coverTolerance);
    return { of: "cover", start: 1 - share, end: share, most };
  });
}

function jointLimits({ joints }: Asked): Limit[] {
  return joints.flatMap(({ side, off }): Limit[] => {
    const slack = isOff(off) ? 0 : Math.max(Math.abs(off), FLOW_SETTINGS.jointTolerance / 2);
    const [start, end] = side === "inlet" ? [0, 1] : [1, 0];
    return [
      { of: "joint", start, end, most: slack - off },
      { of: "joint", start: -start, end: -end, most: slack + off },
    ];
  });
}

/** Whether a joint's two inverts differ by more than the tolerance; `off` in m, either sign. */
export function isOff(off: number): boolean {
  return Math.abs(off) > FLOW_SETTINGS.jointTolerance;
}

/** Ground above the pipe's top outside, m: the top is the invert plus bore and one wall. */
export function coverAt(station: PipeRun["stations"][number], run: PipeRun): number {
  return station.ground - station.invert - (run.outside + run.inside) / 2;
}

/** Room to a limit: with half the tolerance (never at its very edge) while kept, exact once not. */
function eased(room: number, tolerance: number): number {
  return room < -tolerance ? room : Math.max(0, room + tolerance / 2);
}

/**
 * The least move in one direction (up or down) that keeps all limits; undefined when none does or
 * none is needed. `[0, 1]` moves the far end, `[1, 0]` the near end, `[1, 1]` the whole pipe.
 */
export function leastMove(
  limits: readonly Limit[],
  [u, v]: readonly [number, number],
): EndMove | undefined {
  let low = -Infinity;
  let high = Infinity;
  for (const { start, end, most } of limits) {
    const rate = start * u + end * v;
    if (Math.abs(rate) < SAME) {
      if (most < -SAME) return undefined;
    } else if (rate > 0) high = Math.min(high, most / rate);
    else low = Math.max(low, most / rate);
  }
  if (low > high + SAME) return undefined;
  const by = Math.min(high, Math.max(low, 0));
  return Math.abs(by) < SAME ? undefined : { start: by * u, end: by * v };
}

/**
 * The moves of both ends, least in sum, that keep all limits; undefined when none do. The least
 * sum lies where two limits (or a limit and an unmoved end) cross, so all crossings are tried.
 */
export function leastMoves(limits: readonly Limit[]): EndMove | undefined {
  const lines = [...limits, { start: 1, end: 0, most: 0 }, { start: 0, end: 1, most: 0 }];
  let best: EndMove | undefined;
  lines.forEach((a, i) => {
    for (const b of lines.slice(i + 1)) {
      const move = crossing(a, b);
      if (move === undefined || !isWithin(limits, move)) continue;
      if (best === undefined || sumOf(move) < sumOf(best) - SAME) best = move;
    }
  });
  return best;
}

type Line = Pick<Limit, "start" | "end" | "most">;

function crossing(a: Line, b: Line): EndMove | undefined {
  const cross = a.start * b.end - a.end * b.start;
  if (Math.abs(cross) < SAME) return undefined;
  return {
    start: (a.most * b.end - a.end * b.most) / cross,
    end: (a.start * b.most - a.most * b.start) / cross,
  };
}

function isWithin(limits: readonly Limit[], move: EndMove): boolean {
  return limits.every(
    ({ start, end, most }) => start * move.start + end * move.end <= most + SAME_AT_CROSSING,
  );
}

function sumOf(move: EndMove): number {
  return Math.abs(move.start) + Math.abs(move.end);
}
