/** The setbacks asked of a scheme as bands about its limits, and the nearest limit of each part. */
import type { WorkQuantities } from "../dig/index.js";
import type { PlanShape } from "../flow/index.js";
import type { Limit, PlanPoint, Scheme, Setback, Site } from "../site/index.js";
import { offsetPieces, type Core, type OffsetPiece } from "./offset.js";
import {
  askedBetween,
  boundsOf,
  reservesOf,
  setbacksOf,
  type Bound,
  type SetbackKept,
} from "./setbacks.js";
import { bodiesOf, digsOf, type Part } from "./shapes.js";

/** The edge of all that is nearer to a limit than a setback. */
export interface SetbackBand {
  /** Id and name of the limit, or of a building of the scheme. */
  to: string;
  toName: string;
  /** m in plan. */
  distance: number;
  /** Parts that have to keep it. */
  parts: readonly Setback["from"][];
  /** Whether it is the limit's own setback. */
  own: boolean;
  /** Lines of its edge in site coordinates, m, in no order. */
  pieces: readonly OffsetPiece[];
  /** A place on it for its label. */
  label: PlanPoint;
}

/** m: setbacks that differ by less are one band. */
const SAME = 0.0005;

/** The bands of every limit for the parts that a scheme has; for all parts while it has none. */
export function setbackBands(
  site: Pick<Site, "limits" | "setbacks">,
  scheme: Scheme,
): SetbackBand[] {
  const present = new Set(bodiesOf(scheme).map(({ from }) => from));
  return boundsOf(site, scheme).flatMap((bound) => {
    const asked = askedOf(bound, setbacksOf(site), present);
    return asked.flatMap(({ distance, parts, own }) => {
      const pieces = bandPieces(bound, distance);
      const label = labelPlace(pieces);
      if (label === null) return [];
      return [{ to: bound.id, toName: bound.name, distance, parts, own, pieces, label }];
    });
  });
}

/** A distance, m, and the parts that it is asked of. */
export interface Asked {
  distance: number;
  parts: Setback["from"][];
  own: boolean;
}

/**
 * The distances asked of a limit, each with the parts that it is asked of; while a scheme has no
 * parts, of every part that the table names, and the limit's own with none.
 */
export function askedOf(
  bound: Bound,
  rows: readonly Setback[],
  present: ReadonlySet<Setback["from"]>,
): Asked[] {
  const named = rows.filter(({ to }) => to === bound.kind).map(({ from }) => from);
  const inOrder = [...named.filter((from) => present.has(from)), ...present];
  const bare = present.size === 0 && (bound.setback ?? 0) > 0;
  const asked: Asked[] = bare ? [{ distance: bound.setback ?? 0, parts: [], own: true }] : [];
  for (const from of new Set(present.size === 0 ? named : inOrder)) {
    const one = askedBetween(from, bound, rows);
    if (one === null || (bare && one.own)) continue;
    const known = asked.find(({ distance }) => Math.abs(distance - one.wanted) < SAME);
    if (known === undefined) asked.push({ distance: one.wanted, parts: [from], own: one.own });
    else known.parts.push(from);
  }
  return asked;
}

/** The band's edge: about an area outside it, of a lot line that closes inside it. */
function bandPieces({ shapes, kind, limit }: Bound, distance: number): OffsetPiece[] {
  if (limit?.at !== undefined && limit.path === undefined) {
    const far = distance + (limit.radius ?? 0);
    return offsetPieces([{ a: limit.at, b: limit.at, distance: far }]);
  }
  const cores = shapes.flatMap((shape) => coresOf(shape, distance));
  const lot = kind === "lot-line" && isRing(limit);
  const areas = shapes.filter(({ closed, points }) => closed && points.length > 2);
  const hides = (place: PlanPoint): boolean =>
    lot ? !inside(limit?.path ?? [], place) : areas.some(({ points }) => inside(points, place));
  return offsetPieces(cores, hides);
}

/** Whether a limit is an area with an edge that closes. */
export const isRing = (limit: Limit | null): boolean =>
  limit?.closed === true && (limit.path?.length ?? 0) > 2;

/** The stretches of a shape's edge, each with the distance. */
export function coresOf({ points, closed }: PlanShape, distance: number): Core[] {
  const [first] = points;
  if (first === undefined) return [];
  if (points.length === 1) return [{ a: first, b: first, distance }];
  const ring = closed && points.length > 2 ? [...points, first] : points;
  return ring.slice(1).map((b, i) => ({ a: ring[i]!, b, distance }));
}

/** Whether a place lies within a ring, by the even–odd rule. */
function inside(ring: readonly PlanPoint[], [x, y]: PlanPoint): boolean {
  return ring.reduce((odd, [ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length]!;
    if (ay > y === by > y) return odd;
    return x < ax + ((y - ay) / (by - ay)) * (bx - ax) ? !odd : odd;
  }, false);
}

/** The middle of the longest piece. */
function labelPlace(pieces: readonly OffsetPiece[]): PlanPoint | null {
  let [best, longest]: [PlanPoint | null, number] = [null, -1];
  for (const piece of pieces) {
    const length = piece
      .slice(1)
      .reduce((sum, [x, y], i) => sum + Math.hypot(x - piece[i]![0], y - piece[i]![1]), 0);
    if (length <= longest) continue;
    const half = Math.floor((piece.length - 1) / 2);
    const [a, b] = [piece[half]!, piece[half + 1] ?? piece[half]!];
    longest = length;
    best = piece.length % 2 === 0 ? [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] : a;
  }
  return best;
}

/** The shortest line from a part of a work to the limit that is nearest to it. */
export interface SetbackLine {
  kept: SetbackKept;
  from: PlanPoint;
  to: PlanPoint;
}

/** For each tank and field the line to the nearest of what it has to keep off, m. */
export function nearestLimits(
  site: Pick<Site, "limits" | "setbacks">,
  scheme: Scheme,
  setbacks: readonly SetbackKept[],
): SetbackLine[] {
  const bounds = new Map(boundsOf(site, scheme).map((bound) => [bound.id, bound]));
  return bodiesOf(scheme).flatMap((part) => {
    if (part.from !== "tank" && part.from !== "field") return [];
    const kept = nearestOf(part, setbacks);
    const bound = kept === null ? undefined : bounds.get(kept.to);
    if (kept === null || bound === undefined || kept.distance === 0) return [];
    const ends = nearestPlaces(part.shapes, bound.shapes);
    return ends === null ? [] : [{ kept, ...ends }];
  });
}

/**
 * For every distance that is asked for the shortest line between the true shapes, in the order of
 * `kept`; none for a pair that touches, crosses or lies beyond the lot.
 */
export function setbackLines(
  site: Pick<Site, "limits" | "setbacks">,
  scheme: Scheme,
  dug: readonly WorkQuantities[],
  kept: readonly SetbackKept[],
): SetbackLine[] {
  const bounds = new Map(boundsOf(site, scheme).map((bound) => [bound.id, bound]));
  const parts = [...bodiesOf(scheme), ...digsOf(dug)];
  const reserves = reservesOf(site);
  return kept.flatMap((one) => {
    const part = (one.reserve === true ? reserves : parts).find(
      ({ work, from }) => work === one.work && from === one.from,
    );
    const bound = bounds.get(one.to);
    if (part === undefined || bound === undefined || one.distance === 0) return [];
    const ends = nearestPlaces(part.shapes, bound.shapes);
    return ends === null ? [] : [{ kept: one, ...ends }];
  });
}

function nearestOf(part: Part, setbacks: readonly SetbackKept[]): SetbackKept | null {
  return setbacks.reduce<SetbackKept | null>(
    (best, one) =>
      one.reserve !== true &&
      one.work === part.work &&
      one.from === part.from &&
      (best === null || one.distance < best.distance)
        ? one
        : best,
    null,
  );
}

/** The two nearest places of shapes that lie apart, m; null for shapes without points. */
export function nearestPlaces(
  some: readonly PlanShape[],
  others: readonly PlanShape[],
): { from: PlanPoint; to: PlanPoint } | null {
  const [ours, theirs] = [some, others].map((shapes) => shapes.flatMap((one) => coresOf(one, 0)));
  let best: { from: PlanPoint; to: PlanPoint } | null = null;
  let least = Infinity;
  const take = (from: PlanPoint, to: PlanPoint): void => {
    const far = Math.hypot(from[0] - to[0], from[1] - to[1]);
    if (far >= least) return;
    [least, best] = [far, { from, to }];
  };
  for (const one of ours ?? []) {
    for (const other of theirs ?? []) {
      // Stretches that lie apart are nearest at an end of one of them.
      for (const end of [one.a, one.b]) take(end, onCore(end, other));
      for (const end of [other.a, other.b]) take(onCore(end, one), end);
    }
  }
  return best;
}

function onCore([x, y]: PlanPoint, { a, b }: Core): PlanPoint {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : ((x - a[0]) * dx + (y - a[1]) * dy) / square;
  const t = Math.min(1, Math.max(0, along));
  return [a[0] + t * dx, a[1] + t * dy];
}
