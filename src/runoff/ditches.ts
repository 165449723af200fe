/**
 * Ditches that a site draws. They are no part of its survey, so the ground does not show them: each
 * is taken to carry all that runs into it to its lower end, and to let it go there.
 */
import { elevationAt, type Tin } from "../ground/index.js";
import type { Limit } from "../site/index.js";
import { boxOf, type Drainage, type SampledWay } from "./drainage.js";
import type { WayPoint } from "./trace.js";

/** m local. */
type Place = readonly [number, number];
type Box = SampledWay["box"];

/** A drawn ditch on the ground as found, m local, its lower end last. */
interface Ditch {
  path: readonly WayPoint[];
  box: Box;
}

const made = new WeakMap<Drainage, { key: string; led: Drainage }>();

/** A way as the ditches among these limits lead it on. */
export function followDitches(
  path: readonly WayPoint[],
  drainage: Drainage,
  tin: Tin,
  limits: readonly Limit[] | undefined,
): readonly WayPoint[] {
  const ditches = drawnOf(limits).flatMap((drawn) => ditchOn(tin, drawn) ?? []);
  return led({ path, box: boxOf(path) }, ditches, drainage) ?? path;
}

function drawnOf(limits: readonly Limit[] | undefined): NonNullable<Limit["path"]>[] {
  return (limits ?? []).flatMap(({ kind, path }) => (kind === "ditch" && path ? [path] : []));
}

/** Where water runs when the ditches among these limits lead it; the same when there are none. */
export function ledByDitches(
  drainage: Drainage,
  tin: Tin,
  limits: readonly Limit[] | undefined,
): Drainage {
  const drawn = drawnOf(limits);
  if (drawn.length === 0) return drainage;
  const key = JSON.stringify(drawn);
  const known = made.get(drainage);
  if (known?.key === key) return known.led;
  const ditches = drawn.flatMap((path) => ditchOn(tin, path) ?? []);
  const ways = drainage.ways.map((way) => {
    const path = led(way, ditches, drainage);
    return path === null ? way : { ...way, path, box: boxOf(path) };
  });
  const { flood, tracer, each } = drainage;
  const result: Drainage = { flood, tracer, each, ways };
  made.set(drainage, { key, led: result });
  return result;
}

/** A drawn line on the ground; null off the survey, and where its ends are level: it leads nowhere. */
function ditchOn(tin: Tin, drawn: readonly Place[]): Ditch | null {
  const path: WayPoint[] = [];
  for (const [x, y] of drawn) {
    const at: Place = [x - tin.origin[0], y - tin.origin[1]];
    const z = elevationAt(tin, ...at);
    if (z === null) return null;
    path.push([...at, z]);
  }
  const [first, last] = [path[0], path.at(-1)];
  if (first === undefined || last === undefined || first[2] === last[2]) return null;
  return { path: first[2] > last[2] ? path : path.reverse(), box: boxOf(path) };
}

/** The way with every ditch that it meets followed to its lower end, each once; null: it meets none. */
function led(
  way: Pick<SampledWay, "path" | "box">,
  ditches: readonly Ditch[],
  drainage: Drainage,
): WayPoint[] | null {
  const gone: WayPoint[] = [];
  let path = way.path;
  let { box } = way;
  let left = ditches;
  for (;;) {
    const near = left.filter((ditch) => overlap(box, ditch.box));
    const met = near.length === 0 ? null : firstMet(path, near);
    if (met === null) return gone.length === 0 ? null : [...gone, ...path];
    const { ditch, leg, at, side } = met;
    gone.push(...path.slice(0, leg + 1), at, ...ditch.path.slice(side + 1));
    left = left.filter((one) => one !== ditch);
    const end = ditch.path.at(-1);
    const on = end === undefined ? null : drainage.tracer.from(end[0], end[1]);
    if (on === null) return gone;
    path = on.path;
    box = boxOf(path);
  }
}

interface Met {
  ditch: Ditch;
  /** Leg of the way, and where on it. */
  leg: number;
  at: WayPoint;
  /** Stretch of the ditch. */
  side: number;
}

function firstMet(path: readonly WayPoint[], ditches: readonly Ditch[]): Met | null {
  for (let leg = 0; leg + 1 < path.length; leg++) {
    const [a, b] = [path[leg]!, path[leg + 1]!];
    let least = Infinity;
    let met: Met | null = null;
    const box = boxOf([a, b]);
    for (const ditch of ditches) {
      const on = overlap(box, ditch.box) ? metBy(a, b, ditch) : null;
      if (on === null || on.share >= least) continue;
      least = on.share;
      met = { ...on, ditch, leg };
    }
    if (met !== null) return met;
  }
  return null;
}

/** Where a leg first meets a ditch, and at which of its stretches. */
function metBy(
  a: WayPoint,
  b: WayPoint,
  { path }: Ditch,
): { share: number; side: number; at: WayPoint } | null {
  let first: { share: number; side: number } | null = null;
  for (let side = 0; side + 1 < path.length; side++) {
    const share = crossing(a, b, path[side]!, path[side + 1]!);
    if (share !== null && (first === null || share < first.share)) first = { share, side };
  }
  if (first === null) return null;
  const { share } = first;
  const between = (k: 0 | 1 | 2): number => a[k] + share * (b[k] - a[k]);
  return { ...first, at: [between(0), between(1), between(2)] };
}

/** Share of the leg a–b at which it meets c–d; null when it does not. */
function crossing(a: WayPoint, b: WayPoint, c: WayPoint, d: WayPoint): number | null {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const [ex, ey] = [d[0] - c[0], d[1] - c[1]];
  const across = dx * ey - dy * ex;
  if (across === 0) return null;
  const far = ((c[0] - a[0]) * ey - (c[1] - a[1]) * ex) / across;
  const along = ((c[0] - a[0]) * dy - (c[1] - a[1]) * dx) / across;
  return far < 0 || far > 1 || along < 0 || along > 1 ? null : far;
}

function overlap(a: Box, b: Box): boolean {
  return a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];
}
