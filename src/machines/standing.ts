/** Places in plan where a machine may stand beside a work, and distances in plan, m. */
import type { Limit, PlanPoint } from "../site/index.js";

export type Ring = readonly (readonly [number, number])[];

/** m between neighbouring standing places along an edge: finer than a machine is placed. */
const STEP = 1;

/** Ground as found at a place, m; NaN beyond the survey. */
export type GroundAt = (place: PlanPoint) => number;

/** Distance in plan from a place to a line, m; Infinity for a line without points. */
export function distanceToLine(at: PlanPoint, line: Ring, closed: boolean): number {
  let least = Infinity;
  const count = edgeCount(line, closed);
  for (let i = 0; i < count; i++) {
    const a = line[i]!;
    const b = line[i + 1 < line.length ? i + 1 : 0]!;
    if (isFarther(at, a, b, least)) continue;
    least = Math.min(least, toSegment(at, a, b));
  }
  return least;
}

/** Distance in plan from a place to the nearest of some rings, m; 0 inside an outer one. */
export function distanceToRings(at: PlanPoint, rings: readonly Ring[]): number {
  if (insideRings(at, rings)) return 0;
  return Math.min(Infinity, ...rings.map((ring) => distanceToLine(at, ring, true)));
}

/** Whether a place lies inside rings (even–odd, so holes count as outside). */
export function insideRings([x, y]: PlanPoint, rings: readonly Ring[]): boolean {
  let inside = false;
  for (const ring of rings) {
    const count = edgeCount(ring, true);
    for (let i = 0; i < count; i++) {
      const a = ring[i]!;
      const b = ring[i + 1 < ring.length ? i + 1 : 0]!;
      if (a[1] > y === b[1] > y) continue;
      if (x < a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0])) inside = !inside;
    }
  }
  return inside;
}

/** Whether the straight line from one place to another crosses a line. */
export function crossesLine(from: PlanPoint, to: PlanPoint, line: Ring, closed = false): boolean {
  const count = edgeCount(line, closed);
  for (let i = 0; i < count; i++) {
    const a = line[i]!;
    const b = line[i + 1 < line.length ? i + 1 : 0]!;
    const parts = side(from, to, a) * side(from, to, b) < 0;
    if (parts && side(a, b, from) * side(a, b, to) < 0) return true;
  }
  return false;
}

/** Distance in plan from a place to a limit, m; Infinity for a limit that has no place. */
export function distanceToLimit(at: PlanPoint, { at: spot, path }: Limit): number {
  const toSpot = spot === undefined ? Infinity : Math.hypot(at[0] - spot[0], at[1] - spot[1]);
  return Math.min(toSpot, path === undefined ? Infinity : distanceToLine(at, path, false));
}

/** Whether a limit is an overhead power line: by its kind, or because it has a voltage. */
export function isOverheadLine({ kind, voltage }: Limit): boolean {
  if (/under|buried/i.test(kind)) return false;
  return voltage !== undefined || /overhead|power/i.test(kind);
}

/**
 * Standing places all round a hole, a metre apart along its top edge or less: `back` m outside it,
 * square to its side there. Places that come nearer to another part of the edge are left out.
 */
export function placesAround(edge: readonly Ring[], back: number): PlanPoint[] {
  const places: PlanPoint[] = [];
  for (const ring of edge) {
    const outwards = signedArea(ring) >= 0 ? 1 : -1;
    const edges = edgesOf(ring, true).map(([a, b]) => ({
      ...{ a, b, long: Math.hypot(b[0] - a[0], b[1] - a[1]) },
    }));
    const round = edges.reduce((sum, { long }) => sum + long, 0);
    // An edge of the ground's many triangles is cut up finely: steps are counted along it all.
    const step = round / Math.max(1, Math.ceil(round / STEP));
    let next = step / 2;
    for (const { a, b, long } of edges) {
      const [nx, ny] = [(outwards * (b[1] - a[1])) / long, (outwards * (a[0] - b[0])) / long];
      for (; next < long; next += step) {
        const t = next / long;
        places.push([a[0] + t * (b[0] - a[0]) + back * nx, a[1] + t * (b[1] - a[1]) + back * ny]);
      }
      next -= long;
    }
  }
  return places.filter((place) => distanceToRings(place, edge) >= back - 1e-6);
}

/** A place along a path, m, with the way that the path runs there. */
export interface Along {
  at: PlanPoint;
  way: PlanPoint;
}

/** Places along a path at most `step` m apart, with both ends of each straight; unit direction. */
export function placesAlong(path: Ring, step: number): Along[] {
  const places: Along[] = [];
  for (const [a, b] of edgesOf(path, false)) {
    const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (long < 1e-9) continue;
    const way: PlanPoint = [(b[0] - a[0]) / long, (b[1] - a[1]) / long];
    const steps = Math.max(1, Math.ceil(long / step));
    for (let i = 0; i <= steps; i++) {
      const s = (i / steps) * long;
      places.push({ at: [a[0] + s * way[0], a[1] + s * way[1]], way });
    }
  }
  return places;
}

/**
 * Steepest slope of the ground under a machine, rise per run: between places `half` m either side of
 * it, east to west and south to north. NaN where one of them is beyond the survey.
 */
export function slopeAt(groundAt: GroundAt, [x, y]: PlanPoint, half: number): number {
  const east = (groundAt([x + half, y]) - groundAt([x - half, y])) / (2 * half);
  const north = (groundAt([x, y + half]) - groundAt([x, y - half])) / (2 * half);
  return Math.hypot(east, north);
}

function edgesOf(line: Ring, closed: boolean): [PlanPoint, PlanPoint][] {
  const edges: [PlanPoint, PlanPoint][] = [];
  for (let i = 1; i < line.length; i++) edges.push([point(line[i - 1]!), point(line[i]!)]);
  const [first] = line;
  if (first !== undefined && (closed || line.length === 1)) {
    edges.push([point(line.at(-1)!), point(first)]);
  }
  return edges;
}

/** How many edges `edgesOf` gives: edge i runs from point i to the next, the last one back. */
function edgeCount(line: Ring, closed: boolean): number {
  if (line.length === 0) return 0;
  return closed || line.length === 1 ? line.length : line.length - 1;
}

/** Room for rounding, m. */
const SLACK = 1e-9;

/** A sure but not complete test: true where a segment lies farther from a place than `than`, m. */
function isFarther([x, y]: PlanPoint, a: Ring[number], b: Ring[number], than: number): boolean {
  const reach = than + SLACK;
  return (
    (a[0] > x + reach && b[0] > x + reach) ||
    (a[0] < x - reach && b[0] < x - reach) ||
    (a[1] > y + reach && b[1] > y + reach) ||
    (a[1] < y - reach && b[1] < y - reach)
  );
}

function point([x, y]: readonly [number, number]): PlanPoint {
  return [x, y];
}

function toSegment([x, y]: PlanPoint, a: Ring[number], b: Ring[number]): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : ((x - a[0]) * dx + (y - a[1]) * dy) / square;
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy);
}

function side(a: Ring[number], b: Ring[number], c: Ring[number]): number {
  return Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
}

function signedArea(ring: Ring): number {
  let twice = 0;
  for (const [a, b] of edgesOf(ring, true)) twice += a[0] * b[1] - b[0] * a[1];
  return twice / 2;
}
