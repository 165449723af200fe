/** Layer thickness between and beyond the probes, as pieces of the plane on which it is linear. */
import type { Site } from "../site/index.js";
import { triangulate } from "./delaunay.js";

/** A half-plane in plan, local m: the side where nx·x + ny·y ≤ d. */
interface Side {
  nx: number;
  ny: number;
  d: number;
}

/** A convex region of the plane with the thickness of each layer as a linear function on it. */
export interface ProbeRegion {
  sides: readonly Side[];
  /** For each layer but the last, from the top down: thickness = a·x + b·y + c. */
  thickness: readonly { a: number; b: number; c: number }[];
}

interface Spot {
  x: number;
  y: number;
  thickness: readonly number[];
}

/**
 * The contract's rule: no probe, all ground is the last layer; one, its thickness everywhere; two
 * (or more in one line), linear along the line, constant across it and beyond its ends; three or
 * more, linear on their triangulation and outside it the value at the nearest place inside. Each
 * region is convex, so the part of a survey triangle in it is a cell.
 */
export function probeRegions(
  ground: Site["ground"],
  origin: readonly [number, number, number],
): ProbeRegion[] {
  const spots = distinctSpots(ground.probes, origin);
  const layers = ground.layers.length - 1;
  if (spots.length === 0) return [constantRegion([], new Array<number>(layers).fill(0))];
  if (spots.length === 1) return [constantRegion([], spots[0]!.thickness)];
  const x = Float64Array.from(spots, (spot) => spot.x);
  const y = Float64Array.from(spots, (spot) => spot.y);
  if (inLine(spots)) return lineRegions(spots);
  const made = triangulate(x, y);
  if ("failed" in made || made.triangles.length === 0) return lineRegions(spots);
  return [...triangleRegions(spots, made.triangles), ...outsideRegions(spots, made.hull)];
}

/**
 * Thickness at a place (local m) of each layer but the last, from the top down, m. Where rounding
 * leaves a place in no region, the one that it is least outside of counts.
 */
export function thicknessAt(regions: readonly ProbeRegion[], x: number, y: number): number[] {
  let best = regions[0]!;
  let least = Infinity;
  for (const region of regions) {
    const outside = region.sides.reduce(
      (most, { nx, ny, d }) => Math.max(most, nx * x + ny * y - d),
      0,
    );
    if (outside >= least) continue;
    [best, least] = [region, outside];
    if (outside === 0) break;
  }
  return best.thickness.map(({ a, b, c }) => Math.max(0, a * x + b * y + c));
}

function distinctSpots(
  probes: Site["ground"]["probes"],
  origin: readonly [number, number, number],
): Spot[] {
  const spots: Spot[] = [];
  for (const probe of probes) {
    const spot = { x: probe.x - origin[0], y: probe.y - origin[1], thickness: probe.thickness };
    if (!spots.some((s) => Math.hypot(s.x - spot.x, s.y - spot.y) < 1e-6)) spots.push(spot);
  }
  return spots;
}

/**
 * True when every probe lies within a millionth of their spread of the line through the
 * two that are farthest apart: a line of boreholes is no triangulation, however it was turned.
 */
function inLine(spots: readonly Spot[]): boolean {
  const first = spots[0]!;
  const apart = (one: Spot, two: Spot): number => Math.hypot(two.x - one.x, two.y - one.y);
  const end = spots.reduce((far, spot) => (apart(first, spot) > apart(first, far) ? spot : far));
  const start = spots.reduce((far, spot) => (apart(end, spot) > apart(end, far) ? spot : far));
  const length = apart(start, end);
  const [dx, dy] = [(end.x - start.x) / length, (end.y - start.y) / length];
  const slack = 1e-6 * length;
  return spots.every(
    (spot) => Math.abs(dx * (spot.y - start.y) - dy * (spot.x - start.x)) <= slack,
  );
}

function constantRegion(sides: readonly Side[], thickness: readonly number[]): ProbeRegion {
  return { sides, thickness: thickness.map((c) => ({ a: 0, b: 0, c })) };
}

function triangleRegions(spots: readonly Spot[], triangles: Uint32Array): ProbeRegion[] {
  const regions: ProbeRegion[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const a = spots[triangles[t]!]!;
    const b = spots[triangles[t + 1]!]!;
    const c = spots[triangles[t + 2]!]!;
    regions.push({
      sides: [rightOf(b, a), rightOf(c, b), rightOf(a, c)],
      thickness: a.thickness.map((_, i) => throughThree(a, b, c, i)),
    });
  }
  return regions;
}

/** The half-plane to the right of the way from p to q. */
function rightOf(p: Spot, q: Spot): Side {
  const nx = -(q.y - p.y);
  const ny = q.x - p.x;
  const length = Math.hypot(nx, ny);
  return { nx: nx / length, ny: ny / length, d: (nx * p.x + ny * p.y) / length };
}

function throughThree(p: Spot, q: Spot, r: Spot, i: number): { a: number; b: number; c: number } {
  const ux = q.x - p.x;
  const uy = q.y - p.y;
  const vx = r.x - p.x;
  const vy = r.y - p.y;
  const uz = q.thickness[i]! - p.thickness[i]!;
  const vz = r.thickness[i]! - p.thickness[i]!;
  const area = ux * vy - vx * uy;
  const a = (uz * vy - vz * uy) / area;
  const b = (ux * vz - vx * uz) / area;
  return { a, b, c: p.thickness[i]! - a * p.x - b * p.y };
}

/** Strips outside the hull's edges and wedges outside its corners: the nearest place inside. */
function outsideRegions(spots: readonly Spot[], hull: Uint32Array): ProbeRegion[] {
  const regions: ProbeRegion[] = [];
  const count = hull.length;
  for (let i = 0; i < count; i++) {
    const before = spots[hull[(i + count - 1) % count]!]!;
    const here = spots[hull[i]!]!;
    const after = spots[hull[(i + 1) % count]!]!;
    regions.push({
      sides: [rightOf(here, after), ...between(here, after)],
      thickness: alongLine(here, after),
    });
    regions.push(constantRegion([beyond(before, here), beyond(after, here)], here.thickness));
  }
  return regions;
}

/** The strip between the perpendiculars to p–q at its two ends. */
function between(p: Spot, q: Spot): Side[] {
  return [flipped(beyond(q, p)), flipped(beyond(p, q))];
}

/** The half-plane past q, on the way from p. */
function beyond(p: Spot, q: Spot): Side {
  const length = Math.hypot(q.x - p.x, q.y - p.y);
  const nx = (p.x - q.x) / length;
  const ny = (p.y - q.y) / length;
  return { nx, ny, d: nx * q.x + ny * q.y };
}

function flipped(side: Side): Side {
  return { nx: -side.nx, ny: -side.ny, d: -side.d };
}

/** Linear from p to q, constant across. */
function alongLine(p: Spot, q: Spot): { a: number; b: number; c: number }[] {
  const dx = q.x - p.x;
  const dy = q.y - p.y;
  const squared = dx * dx + dy * dy;
  return p.thickness.map((start, i) => {
    const rate = (q.thickness[i]! - start) / squared;
    return { a: rate * dx, b: rate * dy, c: start - rate * (dx * p.x + dy * p.y) };
  });
}

function lineRegions(spots: readonly Spot[]): ProbeRegion[] {
  // Along the line through the first and the farthest: two close ones could point anywhere.
  const one = spots[0]!;
  const from = (spot: Spot): number => Math.hypot(spot.x - one.x, spot.y - one.y);
  const far = spots.reduce((best, spot) => (from(spot) > from(best) ? spot : best));
  const [dx, dy] = [far.x - one.x, far.y - one.y];
  const inOrder = [...spots].sort((p, q) => dx * (p.x - q.x) + dy * (p.y - q.y));
  const regions: ProbeRegion[] = [];
  for (let i = 0; i + 1 < inOrder.length; i++) {
    const [p, q] = [inOrder[i]!, inOrder[i + 1]!];
    regions.push({ sides: between(p, q), thickness: alongLine(p, q) });
  }
  const [first, second] = [inOrder[0]!, inOrder[1]!];
  const [last, lastButOne] = [inOrder[inOrder.length - 1]!, inOrder[inOrder.length - 2]!];
  regions.push(constantRegion([beyond(second, first)], first.thickness));
  regions.push(constantRegion([beyond(lastButOne, last)], last.thickness));
  return regions;
}
