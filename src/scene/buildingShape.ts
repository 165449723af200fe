import type { PlanPoint } from "../site/index.js";
import { signedArea } from "./picking.js";

/** Triangles as x y z per corner, three corners each; scene frame. */
export type Triangles = number[];

type Corner = readonly [number, number, number];

/** Upright walls round an outline from `bottom` to `top`. */
export function wallTriangles(
  outline: readonly PlanPoint[],
  bottom: number,
  top: number,
): Triangles {
  const round = counterClockwise(outline);
  return round.flatMap((a, i) => {
    const b = round[(i + 1) % round.length] ?? a;
    return quad([...a, bottom], [...b, bottom], [...b, top], [...a, top]);
  });
}

/**
 * A simple roof from the eaves at `eaves`: a gable along the longer way of a four-cornered outline,
 * else a low hip to the middle. `overhang` m beyond the walls; the rise is a drawing's, not a design.
 */
export function roofTriangles(
  outline: readonly PlanPoint[],
  eaves: number,
  overhang: number,
): { triangles: Triangles; top: number } {
  const round = counterClockwise(outline);
  const [p, q, r, s] = round;
  if (round.length === 4 && p && q && r && s) return gable([p, q, r, s], eaves, overhang);
  const n = Math.max(1, round.length);
  const middle: PlanPoint = [
    round.reduce((sum, at) => sum + at[0], 0) / n,
    round.reduce((sum, at) => sum + at[1], 0) / n,
  ];
  const top = eaves + 0.12 * Math.sqrt(Math.abs(signedArea(round)));
  const peak: Corner = [...middle, top];
  const triangles = round.flatMap((a, i) => {
    const b = round[(i + 1) % round.length] ?? a;
    return [...a, eaves, ...b, eaves, ...peak];
  });
  return { triangles, top };
}

type Four = readonly [PlanPoint, PlanPoint, PlanPoint, PlanPoint];

function gable(
  corners: Four,
  eaves: number,
  overhang: number,
): { triangles: Triangles; top: number } {
  const long = apart(corners[0], corners[1]) >= apart(corners[1], corners[2]);
  // Turned so that a→b and c→d are the eaves and b→c, d→a the gables.
  const turned: Four = long ? corners : [corners[1], corners[2], corners[3], corners[0]];
  const wide = spread(turned, overhang);
  const [a, b, c, d] = wide;
  const half = Math.min(apart(turned[1], turned[2]), apart(turned[3], turned[0])) / 2;
  const pitch = 0.46;
  // The slab lies clear of the walls, so that their edges do not show through it.
  const clear = 0.12;
  const top = eaves + half * pitch + clear;
  const low = eaves - overhang * pitch + clear;
  const end: Corner = [...between(b, c), top];
  const start: Corner = [...between(d, a), top];
  const [ta, tb, tc, td] = turned;
  const gables = [
    ...tb,
    eaves,
    ...tc,
    eaves,
    ...between(tb, tc),
    top - clear,
    ...td,
    eaves,
    ...ta,
    eaves,
    ...between(td, ta),
    top - clear,
  ];
  const slab = [
    ...quad([...a, low], [...b, low], end, start),
    ...quad([...c, low], [...d, low], start, end),
  ];
  return { triangles: [...slab, ...gables], top };
}

function spread(four: Four, by: number): Four {
  const mx = four.reduce((sum, p) => sum + p[0], 0) / 4;
  const my = four.reduce((sum, p) => sum + p[1], 0) / 4;
  const out = (p: PlanPoint): PlanPoint => {
    const size = Math.hypot(p[0] - mx, p[1] - my);
    const share = size === 0 ? 1 : (size + by * Math.SQRT2) / size;
    return [mx + (p[0] - mx) * share, my + (p[1] - my) * share];
  };
  return [out(four[0]), out(four[1]), out(four[2]), out(four[3])];
}

function counterClockwise(outline: readonly PlanPoint[]): readonly PlanPoint[] {
  return signedArea(outline) < 0 ? [...outline].reverse() : outline;
}

function quad(a: Corner, b: Corner, c: Corner, d: Corner): Triangles {
  return [...a, ...b, ...c, ...a, ...c, ...d];
}

function apart(a: PlanPoint, b: PlanPoint): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}

function between(a: PlanPoint, b: PlanPoint): PlanPoint {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}
