/** What a pipe's profile shows: layers under the ground and what there is along the pipe. */
import type { PipeCheck, TankJoint } from "../flow/index.js";
import type { PlanPoint } from "../site/index.js";
import type { FoundArea } from "./foundLayers.js";

/** A layer at one station, elevations in m. */
export interface LayerAt {
  material: string;
  top: number;
  bottom: number;
}

/** m that a reading at a corner is moved aside, so that it falls inside one piece. */
const ASIDE = 1e-6;

/** The layers at a station, from the top down; the last one ends at the drawing's foot. */
export function layersAt(areas: readonly FoundArea[], station: number, length: number): LayerAt[] {
  const at = Math.min(Math.max(station + ASIDE, ASIDE), length - ASIDE);
  return areas
    .flatMap(({ material, outline, holes }) => {
      const heights = [outline, ...holes]
        .flatMap((ring) => crossed(ring, at))
        .sort((a, b) => b - a);
      const layers: LayerAt[] = [];
      for (let i = 0; i + 1 < heights.length; i += 2) {
        layers.push({ material, top: heights[i]!, bottom: heights[i + 1]! });
      }
      return layers;
    })
    .filter(({ top, bottom }) => top - bottom > 1e-9)
    .sort((a, b) => b.top - a.top);
}

/** Elevations at which a closed ring crosses a station. */
function crossed(ring: readonly (readonly [number, number])[], at: number): number[] {
  return ring.flatMap(([s, z], i) => {
    const [t, w] = ring[(i + 1) % ring.length] ?? [s, z];
    return s < at === t < at ? [] : [z + ((at - s) / (t - s)) * (w - z)];
  });
}

/** Something along a pipe that has a number in its profile. */
export interface ProfileEvent {
  kind: "cleanout" | "bend" | "crossing" | "joint";
  /** m in plan along the pipe. */
  station: number;
  /** This pipe's invert there, m. */
  invert: number;
  /** The other pipe's invert at a crossing, the tank's at a joint; else null. */
  other: number | null;
  /** Inside diameter of the other pipe at a crossing, m; else 0. */
  otherInside: number;
  /** Turn of a bend, degrees; m clear at a crossing; m that a joint's pipe lies above; else 0. */
  measure: number;
  /** The other pipe, the tank; else empty. */
  name: string;
  /** At a crossing, whether this pipe is the upper one; at a joint, whether it enters a tank. */
  over: boolean;
}

interface Along {
  check: PipeCheck;
  /** Stations of its cleanouts. */
  cleanouts: readonly number[];
  joints: readonly TankJoint[];
  pipes: readonly PipeCheck[];
  nameOf: (work: string) => string;
}

/** Everything along a pipe by station: tanks it meets, cleanouts, bends, pipes that it crosses. */
export function profileEvents({ check, cleanouts, joints, pipes, nameOf }: Along): ProfileEvent[] {
  const invert = (station: number): number => invertAt(check, station);
  const plain = { other: null, otherInside: 0, measure: 0, name: "", over: false };
  const events: ProfileEvent[] = [
    ...joints
      .filter((joint) => joint.pipe === check.id)
      .map((joint): ProfileEvent => ({
        kind: "joint",
        station: joint.side === "inlet" ? check.length : 0,
        invert: joint.pipeInvert,
        other: joint.tankInvert,
        otherInside: 0,
        measure: joint.off,
        name: nameOf(joint.tank),
        over: joint.side === "inlet",
      })),
    ...cleanouts
      .filter((station) => station <= check.length)
      .map((station): ProfileEvent => ({
        kind: "cleanout",
        station,
        invert: invert(station),
        ...plain,
      })),
    ...check.bends.map(({ station, angle }): ProfileEvent => ({
      kind: "bend",
      station,
      invert: invert(station),
      ...plain,
      measure: angle,
    })),
    ...check.crossings.map((one): ProfileEvent => {
      const other = pipes.find((pipe) => pipe.id === one.pipe);
      return {
        kind: "crossing",
        station: one.station,
        invert: invert(one.station),
        other: other === undefined ? null : invertNear(other, placeAt(check, one.station)),
        otherInside: other?.inside ?? 0,
        measure: one.clear,
        name: one.name,
        over: one.above,
      };
    }),
  ];
  return events.sort((a, b) => a.station - b.station);
}

type Leg = { from: PipeCheck["stations"][number]; to: PipeCheck["stations"][number] };

function legsOf({ stations }: PipeCheck): Leg[] {
  return stations.slice(1).map((to, i) => ({ from: stations[i]!, to }));
}

/** The leg that holds a station and how far along it that is, 0 to 1. */
function legAt(check: PipeCheck, station: number): (Leg & { share: number }) | null {
  const legs = legsOf(check);
  const leg = legs.find(({ to }) => station <= to.station) ?? legs.at(-1);
  if (leg === undefined) return null;
  const run = leg.to.station - leg.from.station;
  return { ...leg, share: run > 0 ? Math.min(1, (station - leg.from.station) / run) : 1 };
}

/** Invert of a pipe at a station, m; NaN for a pipe without stations. */
function invertAt(check: PipeCheck, station: number): number {
  const leg = legAt(check, station);
  return leg === null ? NaN : leg.from.invert + leg.share * (leg.to.invert - leg.from.invert);
}

function placeAt(check: PipeCheck, station: number): PlanPoint {
  const leg = legAt(check, station);
  if (leg === null) return [NaN, NaN];
  const [from, to] = [leg.from.at, leg.to.at];
  return [from[0] + leg.share * (to[0] - from[0]), from[1] + leg.share * (to[1] - from[1])];
}

/** Invert of a pipe where it comes nearest to a place in plan. */
function invertNear(check: PipeCheck, [x, y]: PlanPoint): number | null {
  let best: { away: number; invert: number } | null = null;
  for (const { from, to } of legsOf(check)) {
    const [dx, dy] = [to.at[0] - from.at[0], to.at[1] - from.at[1]];
    const square = dx * dx + dy * dy;
    const along = square > 0 ? ((x - from.at[0]) * dx + (y - from.at[1]) * dy) / square : 0;
    const share = Math.min(1, Math.max(0, along));
    const away = Math.hypot(from.at[0] + share * dx - x, from.at[1] + share * dy - y);
    if (best === null || away < best.away) {
      best = { away, invert: from.invert + share * (to.invert - from.invert) };
    }
  }
  return best?.invert ?? null;
}
