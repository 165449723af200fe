/** The pipe that a new trench comes with: its levels taken from what its ends meet. */
import { groundAt, levelToMeet } from "../estimate/index.js";
import { freshId } from "../site/index.js";
import type { Pipe, PlanPoint, Site } from "../site/index.js";
import { sizesToPlace } from "./sizes.js";
import { toCentimetre } from "./rounded.js";

/** Where a pipe is laid, and what it is made of. */
export interface NewPipe {
  site: Site;
  schemeId: string;
  name: string;
  size: Pick<Pipe, "inside" | "outside" | "material">;
  /** The trench's path, m. */
  path: readonly PlanPoint[];
  /** Ground as found at its start, m. */
  ground: number;
}

function lengthOf(path: readonly PlanPoint[]): number {
  return path.reduce((sum, [x, y], i) => {
    const before = path[i - 1];
    return before === undefined ? 0 : sum + Math.hypot(x - before[0], y - before[1]);
  }, 0);
}

/** The inverts that a path's ends meet, m; null where an end meets none that is known. */
function metBy({ site, schemeId, path }: NewPipe): { start: number | null; end: number | null } {
  const scheme = site.schemes.find((one) => one.id === schemeId);
  const [first, last] = [path[0], path.at(-1)];
  if (scheme === undefined || first === undefined || last === undefined) {
    return { start: null, end: null };
  }
  return { start: levelToMeet(first, "start", scheme), end: levelToMeet(last, "end", scheme) };
}

/**
 * A gravity drain between the inverts that its ends meet. With one of them known it falls 2% from or
 * to it; with none, from 0.6 m (2 ft) under the ground at the path's start. Known inverts are kept
 * exactly, the others to the centimetre.
 */
export function newDrain(pipe: NewPipe): Pipe {
  const { site, path, ground } = pipe;
  const { drainFall, invert } = sizesToPlace(site);
  const drop = drainFall * lengthOf(path);
  const met = metBy(pipe);
  const start = met.start ?? toCentimetre(met.end === null ? ground - invert : met.end + drop);
  const end = met.end ?? toCentimetre(start - drop);
  return laid(pipe, start, end);
}

/** m between the places at which the ground over a field's pipe is looked at. */
const STEP = 1;

/**
 * A field's distribution pipe, level: at the invert that its start meets, or as deep as the usual
 * cover asks under the lowest ground on its way, whichever is the lower.
 */
export function newFieldPipe(pipe: NewPipe): Pipe {
  const { site, path, ground, size } = pipe;
  const heights = placesAlong(path).flatMap((place) => groundAt(site, place) ?? []);
  const top = Math.min(ground, ...heights) - sizesToPlace(site).fieldCover;
  // The top outside lies a wall and the bore above the invert; down to the centimetre.
  const covered = Math.floor((top - (size.outside + size.inside) / 2) * 100) / 100;
  const level = Math.min(metBy(pipe).start ?? Infinity, covered);
  return laid(pipe, level, level);
}

function laid({ site, name, size }: NewPipe, start: number, end: number): Pipe {
  const grade = { by: "inverts", start, end } as const;
  return { id: freshId(site, "pipe"), name, service: "gravity", ...size, grade };
}

function placesAlong(path: readonly PlanPoint[]): PlanPoint[] {
  return path.flatMap((to, i): PlanPoint[] => {
    const from = path[i - 1];
    if (from === undefined) return [to];
    const count = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / STEP));
    return Array.from({ length: count }, (_, k) => {
      const share = (k + 1) / count;
      return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
    });
  });
}
