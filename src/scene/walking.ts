/** The path of the eye of someone who walks over the ground. Scene frame; pure. */
import type { PlanPoint } from "../site/index.js";
import type { ScenePoint } from "./frame.js";

/** m of a standing person's eyes above the ground. Common practice, no source. */
export const EYE_HEIGHT = 1.65;
/** m/s: a brisk walk, and a run for crossing a large lot. */
const PACE = { walk: 2.2, run: 6.6 };
/** Degrees a second that Q and E turn. */
const TURN_PACE = 75;
/** Degrees that the eye may be raised or lowered from the level. */
const MOST_PITCH = 80;
/** s in which the eye makes up about two thirds of a step in the ground. */
const STEP_TIME = 0.13;
/** m that the eye stays above the ground while it rises at a bank steeper than a step. */
const LEAST_CLEARANCE = 0.5;
/** m within which the eye has arrived. */
const ARRIVED = 0.002;

/** What is walked on. */
export interface Terrain {
  /** The ground or low thing to stand on at a place in plan; null beyond the survey. */
  heightAt: (x: number, y: number) => number | null;
  /** True where something stands in the way of a person whose feet are at `z`. */
  isBlocked: (x: number, y: number, z: number) => boolean;
}

export interface Walker {
  eye: ScenePoint;
  /** The way that the eye looks, degrees clockwise from north. */
  heading: number;
  /** Its angle above the level, degrees. */
  pitch: number;
}

/** What the keys and buttons that are held down ask for: each from -1 to 1. */
export interface Going {
  ahead: number;
  aside: number;
  /** Clockwise. */
  turn: number;
  /** Upwards. */
  tilt: number;
  runs: boolean;
}

/** The walker after `seconds` of what is held down. `smooth` false: the eye is at its height at once. */
export function stepWalker(
  walker: Walker,
  going: Going,
  seconds: number,
  terrain: Terrain,
  smooth = true,
): Walker {
  const turned = lookRound(walker, going.turn * TURN_PACE * seconds, going.tilt * 45 * seconds);
  const size = Math.hypot(going.ahead, going.aside);
  const far = size === 0 ? 0 : (going.runs ? PACE.run : PACE.walk) * seconds;
  const h = (turned.heading * Math.PI) / 180;
  const [ahead, aside] = size === 0 ? [0, 0] : [going.ahead / size, going.aside / size];
  const by: PlanPoint = [
    (Math.sin(h) * ahead + Math.cos(h) * aside) * far,
    (Math.cos(h) * ahead - Math.sin(h) * aside) * far,
  ];
  const [x, y] = walkTo(turned.eye, by, terrain);
  const ground = terrain.heightAt(x, y);
  if (ground === null) return turned;
  return { ...turned, eye: [x, y, eyeHeight(turned.eye[2], ground, smooth ? seconds : Infinity)] };
}

/** The walker looking further round: degrees clockwise and upwards. */
export function lookRound(walker: Walker, clockwise: number, upwards: number): Walker {
  const heading = (((walker.heading + clockwise) % 360) + 360) % 360;
  const pitch = Math.min(MOST_PITCH, Math.max(-MOST_PITCH, walker.pitch + upwards));
  return { ...walker, heading, pitch };
}

/** True when the eye is not where it will come to rest above the ground. */
export function isSettling(walker: Walker, terrain: Terrain): boolean {
  const ground = terrain.heightAt(walker.eye[0], walker.eye[1]);
  return ground !== null && Math.abs(ground + EYE_HEIGHT - walker.eye[2]) > ARRIVED;
}

/** The eye's height `seconds` after it was at `z`, over ground at `ground`; never below the ground. */
export function eyeHeight(z: number, ground: number, seconds: number): number {
  const rest = ground + EYE_HEIGHT;
  const eased = rest + (z - rest) * Math.exp(-seconds / STEP_TIME);
  if (Math.abs(eased - rest) <= ARRIVED) return rest;
  return Math.max(eased, ground + LEAST_CLEARANCE);
}

/** As far as the way is free: straight, else along the edge or wall that is in the way. */
function walkTo([x, y, z]: ScenePoint, by: PlanPoint, terrain: Terrain): PlanPoint {
  if (by[0] === 0 && by[1] === 0) return [x, y];
  const free = (dx: number, dy: number): boolean =>
    terrain.heightAt(x + dx, y + dy) !== null && !terrain.isBlocked(x + dx, y + dy, z - EYE_HEIGHT);
  if (free(by[0], by[1])) return [x + by[0], y + by[1]];
  // Ever further to either side, each turn shortening the step: so a slanting edge is followed.
  for (const degrees of [20, 40, 60, 80]) {
    for (const side of [1, -1]) {
      const a = (side * degrees * Math.PI) / 180;
      const share = Math.cos(a);
      const dx = (by[0] * Math.cos(a) - by[1] * Math.sin(a)) * share;
      const dy = (by[0] * Math.sin(a) + by[1] * Math.cos(a)) * share;
      if (free(dx, dy)) return [x + dx, y + dy];
    }
  }
  return [x, y];
}

/** The walker standing at a place and looking at another; null where nobody can stand. */
export function standingAt(at: PlanPoint, look: ScenePoint, terrain: Terrain): Walker | null {
  const ground = terrain.heightAt(at[0], at[1]);
  if (ground === null || terrain.isBlocked(at[0], at[1], ground)) return null;
  return lookAt({ eye: [at[0], at[1], ground + EYE_HEIGHT], heading: 0, pitch: 0 }, look);
}

/** The walker turned to look at a place. */
export function lookAt(walker: Walker, at: ScenePoint): Walker {
  const [dx, dy, dz] = [
    at[0] - walker.eye[0],
    at[1] - walker.eye[1],
    at[2] - walker.eye[2],
  ] as const;
  const pitch = (Math.atan2(dz, Math.hypot(dx, dy)) * 180) / Math.PI;
  return lookRound(
    { ...walker, heading: (Math.atan2(dx, dy) * 180) / Math.PI, pitch: 0 },
    0,
    pitch,
  );
}

/**
 * Where a walk begins beside a thing: `off` m from its middle, on its low side if one can stand there
 * on ground that is about as high as it was found, else the next free way round; null for nowhere.
 */
export function besideThing(
  thing: { at: ScenePoint; off: number },
  uphill: number,
  terrain: Terrain,
  isDug: (x: number, y: number) => boolean,
): Walker | null {
  const [x, y] = thing.at;
  for (const off of [thing.off, thing.off * 1.6, thing.off * 0.7]) {
    for (const degrees of [0, 30, -30, 60, -60, 90, -90, 120, -120, 150, -150, 180]) {
      const b = ((uphill + degrees) * Math.PI) / 180;
      const at: PlanPoint = [x - Math.sin(b) * off, y - Math.cos(b) * off];
      const walker = isDug(at[0], at[1]) ? null : standingAt(at, thing.at, terrain);
      if (walker !== null) return walker;
    }
  }
  return null;
}

/** Where a walk begins with nothing picked: at the lot's low edge, looking up the hill. */
export function atLowEdge(
  centre: ScenePoint,
  reach: number,
  uphill: number,
  terrain: Terrain,
): Walker | null {
  const b = (uphill * Math.PI) / 180;
  // m kept from the edge, so that there is ground under the feet to see.
  const inset = 1.5;
  for (let off = reach * 1.5; off >= 0; off -= Math.max(0.25, reach / 200)) {
    const [x, y] = [centre[0] - Math.sin(b) * off, centre[1] - Math.cos(b) * off];
    if (terrain.heightAt(x, y) === null) continue;
    const at: PlanPoint = [x + Math.sin(b) * inset, y + Math.cos(b) * inset];
    const ahead: ScenePoint = [at[0] + Math.sin(b) * 20, at[1] + Math.cos(b) * 20, 0];
    const rise = terrain.heightAt(ahead[0], ahead[1]) ?? terrain.heightAt(at[0], at[1]) ?? 0;
    const walker = standingAt(at, [ahead[0], ahead[1], rise + EYE_HEIGHT], terrain);
    if (walker !== null) return walker;
  }
  return null;
}
