/** Outlines in plan: a work's own, and whether one is a simple polygon. */
import type { PlanPoint, Work } from "./schema.js";

/**
 * The outline in plan of a work that has an area, m: of a pad or building its corners as written, of
 * a tank or bed its body (without the overdig). Null for any other kind.
 */
export function areaOutline(work: Work): PlanPoint[] | null {
  switch (work.kind) {
    case "pad":
    case "building":
      return work.outline.map(([x, y]): PlanPoint => [x, y]);
    case "tank":
      return rectangle(work.at, work.bearing, work.body.length, work.body.width);
    case "bed":
      return rectangle(work.at, work.bearing, work.length, work.width);
    default:
      return null;
  }
}

/**
 * Centre of area of an outline in plan, in either direction of its corners; the mean of the corners
 * where it has no area.
 */
export function centreOfArea(outline: readonly PlanPoint[]): PlanPoint {
  const count = Math.max(1, outline.length);
  const [mx, my] = outline.reduce<PlanPoint>(
    ([sx, sy], [x, y]) => [sx + x / count, sy + y / count],
    [0, 0],
  );
  let [twice, cx, cy] = [0, 0, 0];
  outline.forEach(([x, y], i) => {
    const [nx, ny] = outline[(i + 1) % count]!;
    const [ax, ay, bx, by] = [x - mx, y - my, nx - mx, ny - my];
    const cross = ax * by - bx * ay;
    twice += cross;
    cx += (ax + bx) * cross;
    cy += (ay + by) * cross;
  });
  return Math.abs(twice) < 1e-12 ? [mx, my] : [mx + cx / (3 * twice), my + cy / (3 * twice)];
}

/** Corners of a rectangle, counter-clockwise; `bearing` (degrees from north) is of its length. */
function rectangle(at: PlanPoint, bearing: number, length: number, width: number): PlanPoint[] {
  const turn = (bearing * Math.PI) / 180;
  const [ax, ay] = [(Math.sin(turn) * length) / 2, (Math.cos(turn) * length) / 2];
  const [bx, by] = [(Math.cos(turn) * width) / 2, (-Math.sin(turn) * width) / 2];
  const corner = (along: number, across: number): PlanPoint => [
    at[0] + along * ax + across * bx,
    at[1] + along * ay + across * by,
  ];
  return [corner(-1, 1), corner(1, 1), corner(1, -1), corner(-1, -1)];
}

/** What is wrong with an outline, in words, or null when it is a simple polygon with an area. */
export function outlineProblem(outline: readonly PlanPoint[]): string | null {
  const places = outline.filter((place, i) => !same(place, outline[(i + 1) % outline.length]!));
  if (places.length < 3) return "has fewer than 3 corners at different places";
  const [first, second] = [places[0]!, places[1]!];
  if (places.every((place) => turn(first, second, place) === 0)) return "lies in one line";
  for (let i = 0; i < places.length; i++) {
    for (let j = i + 1; j < places.length; j++) {
      if (same(places[i]!, places[j]!)) return `touches itself at corner ${j + 1}`;
      if (sidesMeet(places, i, j)) return `crosses itself: side ${i + 1} meets side ${j + 1}`;
    }
  }
  if (Math.abs(areaOf(places)) < 1e-9) return "has no area";
  return null;
}

function sidesMeet(places: readonly PlanPoint[], i: number, j: number): boolean {
  const count = places.length;
  const neighbours = j === i + 1 || (i === 0 && j === count - 1);
  const [a, b] = [places[i]!, places[(i + 1) % count]!];
  const [c, d] = [places[j]!, places[(j + 1) % count]!];
  if (neighbours) return foldsBack(a, b, c, d);
  const [t1, t2] = [turn(a, b, c), turn(a, b, d)];
  const [t3, t4] = [turn(c, d, a), turn(c, d, b)];
  if (t1 * t2 < 0 && t3 * t4 < 0) return true;
  return (
    (t1 === 0 && within(a, b, c)) ||
    (t2 === 0 && within(a, b, d)) ||
    (t3 === 0 && within(c, d, a)) ||
    (t4 === 0 && within(c, d, b))
  );
}

/** Neighbouring sides may share their corner only, not run back over each other. */
function foldsBack(a: PlanPoint, b: PlanPoint, c: PlanPoint, d: PlanPoint): boolean {
  const [from, corner, to] = same(b, c) ? [a, b, d] : [b, a, c];
  const straight = turn(from, corner, to) === 0;
  const back =
    (from[0] - corner[0]) * (to[0] - corner[0]) + (from[1] - corner[1]) * (to[1] - corner[1]) > 0;
  return straight && back;
}

function within(a: PlanPoint, b: PlanPoint, p: PlanPoint): boolean {
  return (
    Math.min(a[0], b[0]) <= p[0] &&
    p[0] <= Math.max(a[0], b[0]) &&
    Math.min(a[1], b[1]) <= p[1] &&
    p[1] <= Math.max(a[1], b[1])
  );
}

function turn(a: PlanPoint, b: PlanPoint, c: PlanPoint): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

function same(a: PlanPoint, b: PlanPoint): boolean {
  return a[0] === b[0] && a[1] === b[1];
}

function areaOf(places: readonly PlanPoint[]): number {
  const [x0, y0] = places[0]!;
  let twice = 0;
  places.forEach(([x, y], i) => {
    const [nx, ny] = places[(i + 1) % places.length]!;
    twice += (x - x0) * (ny - y0) - (nx - x0) * (y - y0);
  });
  return twice / 2;
}
