/** Which ditch above a work to offer: one that leads its water past every other work, if any does. */
import { elevationAt, type Tin } from "../ground/index.js";
import { ditchesAbove, type Clear } from "./ditch.js";
import type { LimitMeeting } from "./ditchLimits.js";
import { meetsOutline, type Drainage } from "./drainage.js";
import type { WayPoint } from "./trace.js";

/** m local. */
type Place = readonly [number, number];

/** A work that a ditch would meet: its line goes through it, or the water that it lets go runs there. */
export interface DitchMeeting {
  /** Id of the work. */
  work: string;
  how: "crosses" | "lets-go";
}

/** A ditch and what it would meet. */
export interface DitchOffer {
  /** Its middle on the ground as found, m local, the higher end first. */
  line: readonly WayPoint[];
  meets: readonly DitchMeeting[];
  limits: readonly LimitMeeting[];
}

/** Works that a ditch should keep clear of, with their edges, m local. */
export type Standing = readonly { id: string; outline: readonly Place[] }[];

/** The way of water down the ground, and how drawn ditches lead a way on. */
export interface Leading extends Pick<Drainage, "tracer"> {
  follow: (way: readonly WayPoint[]) => readonly WayPoint[];
  /** The limits that a line and the way of its water meet. */
  limitsOf: (line: readonly WayPoint[], letGo: readonly WayPoint[]) => readonly LimitMeeting[];
}

/**
 * What is tried, nearest first: a ditch close above the work, then longer ones that let go farther
 * aside, then closer and farther ones. Our choice, no source: whoever digs it knows the lot.
 */
const TRIED: readonly Clear[] = [
  { off: 3, beyond: 2 },
  { off: 3, beyond: 6 },
  { off: 3, beyond: 12 },
  { off: 1.5, beyond: 2 },
  { off: 1.5, beyond: 6 },
  { off: 8, beyond: 6 },
  { off: 8, beyond: 12 },
];

/**
 * The ditch above an outline that meets the fewest of the works, of those the one that meets the
 * fewest limits, and the first tried of those that are alike. The water that it lets go is followed down the ground, and along ditches that are drawn.
 * Null where none can be drawn.
 */
export function ditchOffer(
  tin: Tin,
  outline: readonly Place[],
  fall: number,
  works: Standing,
  { tracer, follow, limitsOf }: Leading,
): DitchOffer | null {
  let best: DitchOffer | null = null;
  for (const clear of TRIED) {
    for (const places of ditchesAbove(tin, outline, fall, clear)) {
      const line = onGround(tin, places);
      const end = line?.at(-1);
      if (line === null || end === undefined) continue;
      const on = tracer.from(end[0], end[1]);
      const letGo = on === null ? [end] : follow(on.path);
      const meets = metBy(line, letGo, works);
      if (best !== null && meets.length > best.meets.length) continue;
      const offer = { line, meets, limits: limitsOf(line, letGo) };
      if (best === null || fewer(offer, best)) best = offer;
    }
    if (best?.meets.length === 0 && best.limits.length === 0) break;
  }
  return best;
}

function fewer(one: DitchOffer, other: DitchOffer): boolean {
  if (one.meets.length !== other.meets.length) return one.meets.length < other.meets.length;
  return one.limits.length < other.limits.length;
}

function metBy(
  line: readonly WayPoint[],
  letGo: readonly WayPoint[],
  works: Standing,
): DitchMeeting[] {
  return works.flatMap(({ id, outline }): DitchMeeting[] => {
    if (meetsOutline(line, outline)) return [{ work: id, how: "crosses" }];
    return meetsOutline(letGo, outline) ? [{ work: id, how: "lets-go" }] : [];
  });
}

function onGround(tin: Tin, places: readonly Place[]): WayPoint[] | null {
  const line: WayPoint[] = [];
  for (const [x, y] of places) {
    const z = elevationAt(tin, x, y);
    if (z === null) return null;
    line.push([x, y, z]);
  }
  return line;
}
