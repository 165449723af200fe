import type { PipeRun } from "../dig/index.js";
import type { Scheme, Tank } from "../site/index.js";
import { isOff, keeps, leastMove, leastMoves, limitsOn, type Asked, type Limit } from "./settle.js";
import { stretchesOf } from "./stretches.js";
import { tankAt } from "./tankAt.js";
import { placeOf, tankOf } from "./tankJoints.js";
import type { EndMove, Mend, TankJoint } from "./types.js";
import type { Wording } from "./wording.js";

/** What a mend is looked for in: the pipe, what is asked of it, and what else is at its tanks. */
export interface Mending {
  run: PipeRun;
  asked: Asked;
  /** Every pipe of the scheme, and every joint. */
  runs: readonly PipeRun[];
  joints: readonly TankJoint[];
  scheme: Scheme;
  words: Wording;
}

/**
 * The changes that mend what is wrong with a pipe's fall, cover and joints, each tried against all
 * of these together: single ones, or else one of both ends, or else none. Too much fall, which no
 * rule forbids, may stay as it is where nothing mends it too, and in a pipe that follows the
 * ground. None when nothing is wrong.
 */
export function mendsFor(mending: Mending): Mend[] {
  const { run, asked } = mending;
  if (!Number.isFinite(run.drop)) return [];
  const all = limitsOn(run, asked);
  if (keeps(all)) return [];
  const others = all.map(asSteepAsNow);
  const onlySteep = keeps(others);
  const tries = [() => singles(mending, all), () => bothEnds(mending, all)];
  if (isEven(run)) {
    if (!onlySteep)
      tries.push(
        () => singles(mending, others),
        () => bothEnds(mending, others),
      );
  } else if (onlySteep) tries.pop();
  else tries.splice(1, 0, () => singles(mending, others));
  for (const tried of tries) {
    const mends = tried();
    if (mends.length > 0) return mends;
  }
  return [];
}

function asSteepAsNow(limit: Limit): Limit {
  return limit.of === "steep" ? { ...limit, most: Math.max(limit.most, 0) } : limit;
}

function singles(mending: Mending, limits: readonly Limit[]): Mend[] {
  return [
    ...gradeMends(mending, limits),
    ...tankMends(mending, limits),
    ...shortenMend(mending, limits),
  ];
}

/** Whether a pipe has one grade from end to end, so that its ends can be moved on their own. */
function isEven(run: PipeRun): boolean {
  return stretchesOf(run).length === 1;
}

function gradeMends(mending: Mending, limits: readonly Limit[]): Mend[] {
  const whole = wholeMend(mending, limits);
  if (mending.run.service !== "gravity" || onlyCover(limits)) {
    if (whole.length > 0 || mending.run.service !== "gravity") return whole;
  }
  const ends = isEven(mending.run) ? endMends(mending, limits) : evenGrade(mending);
  return ends.length > 0 ? ends : whole;
}

function wholeMend(mending: Mending, limits: readonly Limit[]): Mend[] {
  const move = leastMove(limits, [1, 1]);
  if (move === undefined) return [];
  const by = Math.abs(move.start);
  const tank = toTheTank(mending, move);
  const amount = amountOf(by, tank, mending.words);
  const text = `lay it ${amount} ${move.start < 0 ? "deeper" : "higher"}${tank}`;
  return [{ kind: move.start < 0 ? "lay-deeper" : "lay-higher", by, text, move }];
}

/** To a tank's invert an amount is as its finding prints it; else it is never rounded down. */
function amountOf(by: number, tank: string, words: Wording): string {
  return tank === "" ? words.atLeast(by) : words.length(by);
}

function onlyCover(limits: readonly Limit[]): boolean {
  return limits.every((limit) => limit.of === "cover" || limit.most >= 0);
}

function endMends(mending: Mending, limits: readonly Limit[]): Mend[] {
  const mends: Mend[] = [];
  const far = leastMove(limits, [0, 1]);
  const near = leastMove(limits, [1, 0]);
  if (far !== undefined) {
    const kind = far.end < 0 ? "lower-end" : "raise-end";
    mends.push({ kind, by: Math.abs(far.end), text: endsPhrase(mending, far), move: far });
  }
  if (near !== undefined) {
    const kind = near.start < 0 ? "lower-start" : "raise-start";
    mends.push({ kind, by: Math.abs(near.start), text: endsPhrase(mending, near), move: near });
  }
  return mends;
}

/** What each end does, and the tank that this brings it to; "" when neither moves. */
function endsPhrase(mending: Mending, { start, end }: EndMove): string {
  const { words } = mending;
  const phrases: string[] = [];
  if (Math.abs(start) >= LEAST_SHOWN) {
    const tank = toTheTank(mending, { start, end: 0 });
    phrases.push(`${verb(start)} the near end ${amountOf(Math.abs(start), tank, words)}${tank}`);
  }
  if (Math.abs(end) >= LEAST_SHOWN) {
    const tank = toTheTank(mending, { start: 0, end });
    phrases.push(`${verb(end)} the far end ${amountOf(Math.abs(end), tank, words)}${tank}`);
  }
  return phrases.join(" and ");
}

function verb(by: number): string {
  return by < 0 ? "lower" : "raise";
}

/** ", to the inlet of Tank 1" where a move brings an end that is off to its tank's or outlet's invert. */
function toTheTank({ asked, scheme }: Mending, move: EndMove): string {
  const met = asked.joints.filter(
    ({ side, off }) => isOff(off) && !isOff(off + (side === "inlet" ? move.end : move.start)),
  );
  return met.map((joint) => `, to ${placeOf(joint, scheme)}`).join(" and");
}

/** One straight grade between the ends as they are, if that keeps everything. */
function evenGrade(mending: Mending): Mend[] {
  const even = straightened(mending.run);
  const by = furthestFrom(mending.run, even);
  if (!keeps(limitsOn(even, mending.asked))) return [];
  const text = `${evenPhrase(even, mending.words)}, which moves it by up to ${mending.words.atLeast(by)}`;
  return [{ kind: "even-grade", by, text, move: { start: 0, end: 0 } }];
}

function evenPhrase(even: PipeRun, words: Wording): string {
  return `give it one even grade of ${words.share(even.drop / even.length)} from end to end`;
}

function bothEnds(mending: Mending, limits: readonly Limit[]): Mend[] {
  const { run, words } = mending;
  if (run.service !== "gravity") return [];
  const move = leastMoves(isEven(run) ? limits : limitsOn(straightened(run), mending.asked));
  if (move === undefined) return [];
  const ends = endsPhrase(mending, move);
  if (isEven(run)) {
    const by = Math.max(Math.abs(move.start), Math.abs(move.end));
    return [{ kind: "both-ends", by, text: ends, move }];
  }
  const even = straightened(run, move);
  const text = ends === "" ? evenPhrase(even, words) : `${evenPhrase(even, words)}, and ${ends}`;
  return [{ kind: "even-grade", by: furthestFrom(run, even), text, move }];
}

/** m: a move below this is rounding of the arithmetic. */
const LEAST_SHOWN = 1e-6;

/** The same pipe on one grade between its ends, these moved by `move`. */
function straightened(run: PipeRun, move: EndMove = { start: 0, end: 0 }): PipeRun {
  const start = (run.stations[0]?.invert ?? Number.NaN) + move.start;
  const drop = run.drop + move.start - move.end;
  const stations = run.stations.map((station) => ({
    ...station,
    invert: start - (drop * station.station) / run.length,
  }));
  const top = (run.outside + run.inside) / 2;
  const covers = stations
    .map((station) => station.ground - station.invert - top)
    .filter((cover) => !Number.isNaN(cover));
  const cover = { least: Math.min(...covers), most: Math.max(...covers) };
  return { ...run, drop, fall: drop / run.length, stations, cover };
}

function furthestFrom(run: PipeRun, other: PipeRun): number {
  return run.stations.reduce((most, { invert }, i) => {
    return Math.max(most, Math.abs(invert - (other.stations[i]?.invert ?? invert)));
  }, 0);
}

/**
 * The tank up or down: with the far end where the two meet, or to it where they do not. Not where
 * another gravity pipe has a joint at the tank, which would then be off.
 */
function tankMends(mending: Mending, limits: readonly Limit[]): Mend[] {
  const { run, asked, joints, scheme, words } = mending;
  const inlet = asked.joints.find((joint): joint is TankJoint => joint.side === "inlet");
  if (inlet === undefined || !isEven(run)) return [];
  if (joints.some((joint) => joint.tank === inlet.tank && joint.pipe !== run.id)) return [];
  const tank = tankOf(inlet, scheme);
  const free = limits.filter((limit) => limit.of !== "joint" || limit.start !== 0);
  const move = keeps(free) ? { start: 0, end: 0 } : leastMove(free, [0, 1]);
  if (move === undefined) return [];
  const up = isOff(inlet.off) ? inlet.off + move.end : move.end;
  // The far end alone does it, which is said already.
  if (!isOff(up) && isOff(inlet.off)) return [];
  return [
    {
      kind: "move-tank",
      by: Math.abs(up),
      text: tankText(tank, up, move.end, isOff(inlet.off), words),
      move,
      tank: { id: tank.id, up },
    },
  ];
}

function tankText(tank: Tank, up: number, end: number, apart: boolean, words: Wording): string {
  if (!apart)
    return `${verb(up)} ${tank.name} and the far end with it ${words.atLeast(Math.abs(up))}`;
  const moved = `${verb(up)} ${tank.name} ${words.length(Math.abs(up))}`;
  if (Math.abs(end) < LEAST_SHOWN) return `${moved}, to the pipe`;
  return `${verb(end)} the far end ${words.atLeast(Math.abs(end))} and ${moved}, to meet it`;
}

/**
 * The length at which the present drop is enough: drop ÷ least fall. Only where fall is all that is
 * wrong; a tank at the far end comes with it, so only where no other pipe is at that tank.
 */
function shortenMend(mending: Mending, limits: readonly Limit[]): Mend[] {
  const { run, asked, runs, scheme, words } = mending;
  const least = asked.leastFall?.value ?? 0;
  const wrong = limits.filter((limit) => limit.most < 0);
  if (!(run.drop > 0 && least > 0 && isEven(run))) return [];
  if (wrong.length === 0 || wrong.some((limit) => limit.of !== "fall")) return [];
  const last = run.stations.at(-1);
  const tank = last === undefined ? undefined : tankAt(last.at, scheme);
  if (tank !== undefined && runs.some((each) => each.id !== run.id && isAt(tank, each, scheme))) {
    return [];
  }
  const enough = run.drop / least;
  const how = tank === undefined ? "" : ` by moving ${tank.name} nearer`;
  const text = `shorten the run from ${words.distance(run.length)} to ${words.atMost(enough)}${how}`;
  return [{ kind: "shorten", by: run.length - enough, text }];
}

function isAt(tank: Tank, run: PipeRun, scheme: Scheme): boolean {
  return [run.stations[0], run.stations.at(-1)].some(
    (station) => station !== undefined && tankAt(station.at, scheme, true)?.id === tank.id,
  );
}
