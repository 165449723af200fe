/** A trench's path in plan and the ground along it. Local metres; stations from its start. */
import { profileAlong, type LayeredGround, type Place } from "../ground/index.js";
import type { GroundAt } from "./grade.js";

/** One straight piece of a path. */
export interface PathLeg {
  start: Place;
  /** Unit direction, and its left-hand normal. */
  u: Place;
  n: Place;
  length: number;
  /** Station of the start. */
  station: number;
}

/** The legs of a path, without those of no length. */
export function pathLegs(path: readonly Place[]): PathLeg[] {
  const legs: PathLeg[] = [];
  let station = 0;
  for (let i = 1; i < path.length; i++) {
    const [start, end] = [path[i - 1]!, path[i]!];
    const length = Math.hypot(end[0] - start[0], end[1] - start[1]);
    if (length < 1e-9) continue;
    const u: Place = [(end[0] - start[0]) / length, (end[1] - start[1]) / length];
    legs.push({ start, u, n: [-u[1], u[0]], length, station });
    station += length;
  }
  return legs;
}

/** Length of a path in plan, m. */
export function pathLength(legs: readonly PathLeg[]): number {
  const last = legs[legs.length - 1];
  return last ? last.station + last.length : 0;
}

/** Place at a station. */
export function placeAt(legs: readonly PathLeg[], station: number): Place {
  const leg = legs.find((l) => station <= l.station + l.length) ?? legs[legs.length - 1]!;
  const along = station - leg.station;
  return [leg.start[0] + along * leg.u[0], leg.start[1] + along * leg.u[1]];
}

/** A stretch of the path on which the surface is straight, m. */
export interface PathStretch {
  from: number;
  to: number;
  start: number;
  end: number;
  structure: boolean;
}

/** The surface along a path as stretches in order; gaps where it leaves the survey. */
export function surfaceAlong(ground: LayeredGround, legs: readonly PathLeg[]): PathStretch[] {
  return legs.flatMap((leg) => {
    const end: Place = [leg.start[0] + leg.length * leg.u[0], leg.start[1] + leg.length * leg.u[1]];
    return profileAlong(ground, leg.start, end).map((stretch) => ({
      ...stretch,
      from: stretch.from + leg.station,
      to: stretch.to + leg.station,
    }));
  });
}

/** The ground along a path where it is earth: the ends of it and every place where it breaks. */
export function groundPoints(stretches: readonly PathStretch[]): GroundAt[] {
  const points: GroundAt[] = [];
  for (const { from, to, start, end, structure } of stretches) {
    if (structure) continue;
    for (const point of [
      { station: from, ground: start },
      { station: to, ground: end },
    ]) {
      const [first, second] = points.slice(-2);
      if (first && second && inLine(first, second, point)) points.pop();
      points.push(point);
    }
  }
  return points;
}

/** True when the middle of three places along the ground adds nothing. */
function inLine(a: GroundAt, b: GroundAt, c: GroundAt): boolean {
  const span = c.station - a.station;
  if (span <= 0)
    return Math.abs(b.ground - a.ground) < 1e-9 && Math.abs(c.ground - b.ground) < 1e-9;
  const straight = a.ground + ((c.ground - a.ground) * (b.station - a.station)) / span;
  return Math.abs(straight - b.ground) < 1e-9;
}
