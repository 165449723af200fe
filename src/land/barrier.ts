/** The line of an erosion barrier below bare ground. */
import { elevationAt, slopeAt, type Tin } from "../ground/index.js";

/** m local. */
type Place = readonly [x: number, y: number];

/** m of each step of the line. */
const STEP = 0.25;
/** m that the line goes on beyond the bare ground on either side, where its ends turn uphill. */
const BEYOND = 1;
/** Rise per run under which ground counts as level: no line lies below another there. */
const LEVEL = 0.005;

/**
 * A line that keeps its height, `off` m downhill of the lowest place of an outline, from beyond one
 * side of the outline to beyond the other; m local. It ends early where the survey does, or where
 * the ground is level. Null where the outline's lowest place is on level ground or off the survey.
 */
export function barrierBelow(
  tin: Tin,
  outline: readonly Place[],
  off: number,
): readonly Place[] | null {
  const lowest = lowestOf(tin, outline);
  const slope = lowest === null ? null : slopeAt(tin, ...lowest);
  if (lowest === null || slope === null || slope.slope < LEVEL) return null;
  const down = (slope.fallsTowards * Math.PI) / 180;
  const start: Place = [lowest[0] + off * Math.sin(down), lowest[1] + off * Math.cos(down)];
  if (elevationAt(tin, ...start) === null) return null;
  const across: Place = [Math.cos(down), -Math.sin(down)];
  const [one, other] = [1, -1].map((side) => levelWalk(tin, start, outline, across, side));
  return [...(other ?? []).reverse(), start, ...(one ?? [])];
}

/** The corner of an outline that lies lowest on the ground; null when all are off the survey. */
export function lowestOf(tin: Tin, outline: readonly Place[]): Place | null {
  let best: { at: Place; z: number } | null = null;
  for (const at of outline) {
    const z = elevationAt(tin, ...at);
    if (z !== null && (best === null || z < best.z)) best = { at, z };
  }
  return best?.at ?? null;
}

/** Steps along the slope at one height, one way, until beyond the outline or the survey. */
function levelWalk(
  tin: Tin,
  start: Place,
  outline: readonly Place[],
  across: Place,
  side: number,
): Place[] {
  const along = ([x, y]: Place): number =>
    side * ((x - start[0]) * across[0] + (y - start[1]) * across[1]);
  const far = Math.max(...outline.map(along)) + BEYOND;
  const height = elevationAt(tin, ...start) ?? NaN;
  const places: Place[] = [];
  let at = start;
  const most = Math.ceil((4 * (Math.max(0, far) + 5)) / STEP);
  for (let step = 0; step < most && along(at) < far; step++) {
    const slope = slopeAt(tin, ...at);
    const z = elevationAt(tin, ...at);
    if (slope === null || z === null || slope.slope < LEVEL) break;
    const down = (slope.fallsTowards * Math.PI) / 180;
    const level: Place = [Math.cos(down), -Math.sin(down)];
    const way = Math.sign(level[0] * across[0] + level[1] * across[1]) * side || side;
    // Back to the height that it began at, by no more than a step.
    const drift = Math.min(STEP, Math.max(-STEP, (z - height) / slope.slope));
    const next: Place = [
      at[0] + STEP * way * level[0] + drift * Math.sin(down),
      at[1] + STEP * way * level[1] + drift * Math.cos(down),
    ];
    if (elevationAt(tin, ...next) === null) break;
    places.push(next);
    at = next;
  }
  return places;
}
