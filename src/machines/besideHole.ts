/** Places beside a tank's hole where a crane may be stood to begin with. */
import type { PlanPoint, Tank } from "../site/index.js";
import { distanceToRings } from "./standing.js";
import type { Ring } from "./standing.js";

/** m: stands are put down in whole steps of this, so that their fields read plainly. */
const STEP = 0.1;
/** m: a hole wider than this from its tank's centre is no tank's. */
const FARTHEST = 100;

/** A tank's hole, as the dig gives it. */
export interface HoleBeside {
  /** Rings in plan where the hole comes to daylight. */
  edge: readonly Ring[];
  /** m that the pads keep off it. */
  keepOff: number;
}

/**
 * Four places round a tank, along its bearing and across it (ahead, right, behind, left): each the
 * nearest to the tank from which pads `spread` m apart keep off the hole's edge, in plan, m.
 * Without an edge, the distance is kept from the tank itself. A side on which no place is found is
 * left out.
 */
export function placesBeside(
  { at, bearing, body }: Pick<Tank, "at" | "bearing" | "body">,
  { edge, keepOff }: HoleBeside,
  spread: number,
): PlanPoint[] {
  const keep = keepOff + spread / Math.SQRT2;
  const least = edge.length > 0 ? 0 : Math.hypot(body.length, body.width) / 2 + keep;
  return [0, 90, 180, 270].flatMap((turn) => {
    const way = ((bearing + turn) * Math.PI) / 180;
    const place = (radius: number): PlanPoint => [
      at[0] + radius * Math.sin(way),
      at[1] + radius * Math.cos(way),
    ];
    let radius = least;
    // The gap to the edge grows no faster than the radius: a step of what is missing skips nothing.
    for (;;) {
      if (radius > FARTHEST) return [];
      const missing = edge.length === 0 ? 0 : keep - distanceToRings(place(radius), edge);
      if (missing <= 1e-9) break;
      radius = Math.ceil((radius + missing) / STEP - 1e-9) * STEP;
    }
    return [place(radius)];
  });
}

/**
 * The two places to begin with out of `placesBeside`: the nearer along the bearing and the nearer
 * across it, of those that `fits` (on the survey, in no other hole); any two where none does.
 */
export function firstPlaces(
  tank: Pick<Tank, "at" | "bearing" | "body">,
  hole: HoleBeside,
  spread: number,
  fits: (at: PlanPoint) => boolean,
): PlanPoint[] {
  const all = placesBeside(tank, hole, spread);
  const near = (a: PlanPoint, b: PlanPoint): number => away(tank.at, a) - away(tank.at, b);
  const fitting = all.filter(fits);
  if (fitting.length < 2) return all.toSorted(near).slice(0, 2);
  const isAlong = (at: PlanPoint): boolean => {
    const way = (tank.bearing * Math.PI) / 180;
    const [east, north] = [at[0] - tank.at[0], at[1] - tank.at[1]];
    return (
      Math.abs(east * Math.sin(way) + north * Math.cos(way)) >
      Math.abs(east * Math.cos(way) - north * Math.sin(way))
    );
  };
  const along = fitting.filter(isAlong).toSorted(near);
  const across = fitting.filter((at) => !isAlong(at)).toSorted(near);
  return [...along.slice(0, 1), ...across.slice(0, 1), ...along.slice(1), ...across.slice(1)].slice(
    0,
    2,
  );
}

function away(from: PlanPoint, to: PlanPoint): number {
  return Math.hypot(to[0] - from[0], to[1] - from[1]);
}
