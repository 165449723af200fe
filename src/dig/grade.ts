/** Inverts of a pipe along a trench's path. Stations are m in plan from the path's start. */
import type { Pipe } from "../site/index.js";

/** The ground along a path at one station, m. Several may share a station where it steps. */
export interface GroundAt {
  station: number;
  ground: number;
}

export interface InvertAt {
  station: number;
  invert: number;
}

/** Thickness of a pipe's wall, m. */
export function wallOf(pipe: Pipe): number {
  return (pipe.outside - pipe.inside) / 2;
}

/**
 * Inverts of a pipe from one end of its path to the other, straight between the given stations.
 *
 * By inverts or by fall the grade is uniform. By cover the pipe's top keeps `depth` below the
 * ground, breaking where the ground breaks; a gravity pipe never rises on its way, so where the
 * ground rises it runs level, and deeper.
 */
export function invertsAlong(pipe: Pipe, length: number, ground: readonly GroundAt[]): InvertAt[] {
  const { grade } = pipe;
  if (grade.by === "inverts") return straight(length, grade.start, grade.end);
  if (grade.by === "fall") return straight(length, grade.start, grade.start - grade.fall * length);
  const below = grade.depth + wallOf(pipe) + pipe.inside;
  const wanted = lowestAtSteps(ground).map(({ station, ground: z }) => ({
    station,
    invert: z - below,
  }));
  const whole = heldToEnds(wanted, length);
  return pipe.service === "gravity" ? neverRising(whole) : whole;
}

function straight(length: number, start: number, end: number): InvertAt[] {
  return [
    { station: 0, invert: start },
    { station: length, invert: end },
  ];
}

/** Where the ground steps, the lower side decides, so that the cover is kept on both. */
function lowestAtSteps(ground: readonly GroundAt[]): GroundAt[] {
  const kept: GroundAt[] = [];
  for (const at of ground) {
    const last = kept[kept.length - 1];
    if (last && Math.abs(last.station - at.station) < 1e-9) {
      if (at.ground < last.ground) kept[kept.length - 1] = at;
    } else kept.push(at);
  }
  return kept;
}

/** Beyond the survey the last known invert is held; a finding elsewhere says so. */
function heldToEnds(inverts: readonly InvertAt[], length: number): InvertAt[] {
  const first = inverts[0];
  const last = inverts[inverts.length - 1];
  if (!first || !last) return straight(length, 0, 0);
  const whole = [...inverts];
  if (first.station > 1e-9) whole.unshift({ station: 0, invert: first.invert });
  if (last.station < length - 1e-9) whole.push({ station: length, invert: last.invert });
  return whole;
}

function neverRising(inverts: readonly InvertAt[]): InvertAt[] {
  const out: InvertAt[] = [];
  let lowest = Infinity;
  inverts.forEach((here, i) => {
    const last = inverts[i - 1];
    if (last && last.invert > lowest && here.invert < lowest) {
      const share = (last.invert - lowest) / (last.invert - here.invert);
      out.push({ station: last.station + share * (here.station - last.station), invert: lowest });
    }
    lowest = Math.min(lowest, here.invert);
    out.push({ station: here.station, invert: lowest });
  });
  return out;
}

/** Invert at a station, straight between its neighbours, m. */
export function invertAt(inverts: readonly InvertAt[], station: number): number {
  for (let i = 1; i < inverts.length; i++) {
    const before = inverts[i - 1]!;
    const after = inverts[i]!;
    if (station > after.station && i < inverts.length - 1) continue;
    const gap = after.station - before.station;
    if (gap <= 0) return after.invert;
    const share = (station - before.station) / gap;
    return before.invert + share * (after.invert - before.invert);
  }
  throw new Error(`pipe has ${inverts.length} inverts, expected at least 2`);
}
