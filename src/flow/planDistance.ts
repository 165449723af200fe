import type { PlanPoint } from "../site/index.js";

/** A thing in plan, m: an area with its inside (`closed`), or a line; one point is a place. */
export interface PlanShape {
  /** At least one; the last edge of a closed shape runs back to the first and is not repeated. */
  points: readonly PlanPoint[];
  closed: boolean;
}

/**
 * The corners of a rectangle in plan, m, counter-clockwise.
 * `bearing` is that of the long side (`length`), degrees clockwise from north (+y).
 */
export function rectangleInPlan(body: {
  at: PlanPoint;
  bearing: number;
  length: number;
  width: number;
}): PlanShape {
  const turn = (body.bearing * Math.PI) / 180;
  const along: PlanPoint = [(Math.sin(turn) * body.length) / 2, (Math.cos(turn) * body.length) / 2];
  const across: PlanPoint = [(Math.cos(turn) * body.width) / 2, (-Math.sin(turn) * body.width) / 2];
  const corner = (a: number, b: number): PlanPoint => [
    body.at[0] + a * along[0] + b * across[0],
    body.at[1] + a * along[1] + b * across[1],
  ];
  return { points: [corner(-1, -1), corner(-1, 1), corner(1, 1), corner(1, -1)], closed: true };
}

/**
 * Least distance in plan between two shapes, m; 0 where they touch, cross, or one lies in the
 * other. Exact planar geometry (segment to segment), no grid. Throws on a shape without points.
 */
export function planDistance(a: PlanShape, b: PlanShape): number {
  const firstA = a.points[0];
  const firstB = b.points[0];
  if (firstA === undefined || firstB === undefined) {
    throw new Error(
      `planDistance: got ${a.points.length} and ${b.points.length} points, expected 1+`,
    );
  }
  if (contains(a, firstB) || contains(b, firstA)) return 0;
  let least = Infinity;
  const others = edgesOf(b);
  for (const [p, q] of edgesOf(a)) {
    for (const [r, s] of others) least = Math.min(least, squareBetween(p, q, r, s));
  }
  return Math.sqrt(least);
}

/** Least distance between the segments pq and rs, m; either may be a single place. */
export function segmentDistance(p: PlanPoint, q: PlanPoint, r: PlanPoint, s: PlanPoint): number {
  return Math.sqrt(squareBetween(p, q, r, s));
}

/** The square of the least distance between the segments pq and rs, m². */
function squareBetween(p: PlanPoint, q: PlanPoint, r: PlanPoint, s: PlanPoint): number {
  if (cross(p, q, r, s)) return 0;
  return Math.min(
    squareToSegment(p, r, s),
    squareToSegment(q, r, s),
    squareToSegment(r, p, q),
    squareToSegment(s, p, q),
  );
}

/** The square of the distance from a place to the segment ab, m². */
function squareToSegment(place: PlanPoint, a: PlanPoint, b: PlanPoint): number {
  const [px, py] = [place[0] - a[0], place[1] - a[1]];
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : (px * dx + py * dy) / square;
  const t = Math.min(1, Math.max(0, along));
  const [offX, offY] = [px - t * dx, py - t * dy];
  return offX * offX + offY * offY;
}

/** Whether pq and rs cross at a place inside both; mere touching is left to the end distances. */
function cross(p: PlanPoint, q: PlanPoint, r: PlanPoint, s: PlanPoint): boolean {
  return side(p, q, r) * side(p, q, s) < 0 && side(r, s, p) * side(r, s, q) < 0;
}

/** Sign of the turn a → b → c: 1 left, −1 right, 0 straight. */
function side(a: PlanPoint, b: PlanPoint, c: PlanPoint): number {
  return Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
}

/** Whether a place lies inside a closed shape (even–odd rule, concave outlines included). */
function contains(shape: PlanShape, place: PlanPoint): boolean {
  if (!shape.closed || shape.points.length < 3) return false;
  let inside = false;
  for (const [a, b] of edgesOf(shape)) {
    if (a[1] > place[1] === b[1] > place[1]) continue;
    const x = a[0] + ((place[1] - a[1]) / (b[1] - a[1])) * (b[0] - a[0]);
    if (place[0] < x) inside = !inside;
  }
  return inside;
}

/** The shape's edges in order; a single place is one edge without length. */
function edgesOf({ points, closed }: PlanShape): [PlanPoint, PlanPoint][] {
  const edges: [PlanPoint, PlanPoint][] = [];
  const [first] = points;
  if (first === undefined) return edges;
  for (let i = 1; i < points.length; i++) edges.push([points[i - 1]!, points[i]!]);
  if (closed || points.length === 1) edges.push([points.at(-1)!, first]);
  return edges;
}
