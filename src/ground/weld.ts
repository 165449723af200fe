/** Survey points and breaklines made fit for triangulating: welded, split, local. */
import type { Finding, Site, SurveyPoint } from "../site/index.js";

interface WeldedPoints {
  origin: readonly [number, number, number];
  x: number[];
  y: number[];
  z: number[];
  ids: string[];
  /** Vertex of each survey id, also of ids that were welded away. */
  vertexOf: Map<string, number>;
  findings: Finding[];
}

/**
 * One vertex for each place: points within `tolerance` (m) of an earlier one in plan are dropped,
 * and a finding says so. The local origin is a whole-metre point near the middle.
 */
export function weldPoints(points: readonly SurveyPoint[], tolerance: number): WeldedPoints {
  const origin = middleOf(points);
  const welded: WeldedPoints = {
    origin,
    x: [],
    y: [],
    z: [],
    ids: [],
    vertexOf: new Map(),
    findings: [],
  };
  const near = neighbours(points, tolerance);
  points.forEach((point, i) => {
    const [x, y, z] = [point.x - origin[0], point.y - origin[1], point.z - origin[2]];
    const earlier = near.get(i)?.find((j) => welded.vertexOf.has(points[j]!.id));
    const kept = earlier === undefined ? undefined : welded.vertexOf.get(points[earlier]!.id);
    if (kept !== undefined && Math.hypot(welded.x[kept]! - x, welded.y[kept]! - y) <= tolerance) {
      welded.vertexOf.set(point.id, kept);
      welded.findings.push(weldFinding(point, welded, kept, z));
      return;
    }
    welded.vertexOf.set(point.id, welded.x.length);
    welded.x.push(x);
    welded.y.push(y);
    welded.z.push(z);
    welded.ids.push(point.id);
  });
  return welded;
}

/** For each point that has any: the earlier points within the tolerance of it in plan. */
function neighbours(points: readonly SurveyPoint[], tolerance: number): Map<number, number[]> {
  const x = Float64Array.from(points, (point) => point.x);
  const order = Uint32Array.from(points, (_, i) => i).sort((i, j) => x[i]! - x[j]!);
  const near = new Map<number, number[]>();
  for (let a = 0; a < order.length; a++) {
    const i = order[a]!;
    for (let b = a + 1; b < order.length && x[order[b]!]! - x[i]! <= tolerance; b++) {
      const j = order[b]!;
      if (Math.hypot(x[j]! - x[i]!, points[j]!.y - points[i]!.y) > tolerance) continue;
      const [early, late] = i < j ? [i, j] : [j, i];
      near.set(
        late,
        [...(near.get(late) ?? []), early].sort((p, q) => p - q),
      );
    }
  }
  return near;
}

function weldFinding(point: SurveyPoint, welded: WeldedPoints, near: number, z: number): Finding {
  const gap = Math.abs(z - welded.z[near]!);
  const first = welded.ids[near]!;
  return {
    level: gap > 0.02 ? "caution" : "note",
    code: gap > 0.02 ? "survey.two-heights" : "survey.welded",
    where: point.id,
    text:
      gap > 0.02
        ? `Survey points ${first} and ${point.id} are at one place but ${gap.toFixed(2)} m apart in height; ${first} is used. Check which is right.`
        : `Survey point ${point.id} is at the place of ${first} and is counted once.`,
    source: "geometry: points within 1 mm in plan are one point",
  };
}

function middleOf(points: readonly SurveyPoint[]): [number, number, number] {
  const middle = (pick: (point: SurveyPoint) => number): number => {
    let low = Infinity;
    let high = -Infinity;
    for (const point of points) {
      low = Math.min(low, pick(point));
      high = Math.max(high, pick(point));
    }
    return Math.round((low + high) / 2);
  };
  return [middle((p) => p.x), middle((p) => p.y), middle((p) => p.z)];
}

/** Welded points with the edges that triangles must follow, none crossing another or a point. */
export interface LinedPoints extends WeldedPoints {
  edges: [number, number][];
}

interface Leg {
  from: number;
  to: number;
  /** Vertices on the leg with their share of its length. */
  on: { share: number; vertex: number }[];
}

/**
 * Turns breaklines (chains of point ids) into edges between vertices. A leg that passes within
 * `tolerance` of a point is split there; where two legs cross, a vertex is added at the mean of
 * their heights, and a finding tells when those heights differ.
 */
export function splitBreaklines(
  points: WeldedPoints,
  breaklines: NonNullable<Site["survey"]["breaklines"]>,
  tolerance: number,
): LinedPoints {
  const lined: LinedPoints = { ...points, edges: [] };
  const legs: Leg[] = [];
  for (const chain of breaklines) {
    for (let i = 1; i < chain.length; i++) {
      const from = points.vertexOf.get(chain[i - 1]!);
      const to = points.vertexOf.get(chain[i]!);
      if (from === undefined || to === undefined || from === to) continue;
      legs.push({ from, to, on: [] });
    }
  }
  for (const leg of legs) addPassedVertices(lined, leg, tolerance);
  for (let i = 0; i < legs.length; i++) {
    for (let j = i + 1; j < legs.length; j++) addCrossing(lined, legs, [i, j], tolerance);
  }
  lined.edges = uniqueEdges(legs);
  return lined;
}

function addPassedVertices(points: LinedPoints, leg: Leg, tolerance: number): void {
  for (let vertex = 0; vertex < points.x.length; vertex++) {
    if (vertex === leg.from || vertex === leg.to) continue;
    const share = shareOn(points, leg, points.x[vertex]!, points.y[vertex]!, tolerance);
    if (share !== null) attach(leg, vertex, share);
  }
}

/** Share of the leg's length at which a place lies on it, or null when it does not. */
function shareOn(
  points: LinedPoints,
  leg: Leg,
  x: number,
  y: number,
  tolerance: number,
): number | null {
  const ax = points.x[leg.from]!;
  const ay = points.y[leg.from]!;
  const dx = points.x[leg.to]! - ax;
  const dy = points.y[leg.to]! - ay;
  const length = Math.hypot(dx, dy);
  const off = (dx * (y - ay) - dy * (x - ax)) / length;
  const along = (dx * (x - ax) + dy * (y - ay)) / length;
  if (Math.abs(off) > tolerance || along <= tolerance || along >= length - tolerance) return null;
  return along / length;
}

function addCrossing(
  points: LinedPoints,
  legs: readonly Leg[],
  [i, j]: readonly [number, number],
  tolerance: number,
): void {
  const [one, two] = [legs[i]!, legs[j]!];
  const crossing = crossingOf(points, one, two);
  if (!crossing) return;
  const known = points.x.findIndex(
    (x, v) => Math.hypot(x - crossing.x, points.y[v]! - crossing.y) <= tolerance,
  );
  if (known >= 0) {
    // A third line through a place where two have crossed already shares their vertex.
    attach(one, known, crossing.shareOne);
    attach(two, known, crossing.shareTwo);
    return;
  }
  const heightOne = heightOn(points, one, crossing.shareOne);
  const heightTwo = heightOn(points, two, crossing.shareTwo);
  const vertex = points.x.length;
  points.x.push(crossing.x);
  points.y.push(crossing.y);
  points.z.push((heightOne + heightTwo) / 2);
  points.ids.push("");
  attach(one, vertex, crossing.shareOne);
  attach(two, vertex, crossing.shareTwo);
  for (const leg of legs) {
    const share = shareOn(points, leg, crossing.x, crossing.y, tolerance);
    if (share !== null) attach(leg, vertex, share);
  }
  points.findings.push(crossingFinding(points, one, two, Math.abs(heightOne - heightTwo)));
}

/** Puts a vertex on a leg, unless it is one of its ends or there already. */
function attach(leg: Leg, vertex: number, share: number): void {
  if (vertex === leg.from || vertex === leg.to) return;
  if (leg.on.some((passed) => passed.vertex === vertex)) return;
  leg.on.push({ share, vertex });
}

function crossingFinding(points: LinedPoints, one: Leg, two: Leg, gap: number): Finding {
  const name = (leg: Leg): string => `${points.ids[leg.from]!}–${points.ids[leg.to]!}`;
  return {
    level: gap > 0.05 ? "caution" : "note",
    code: "survey.breaklines-cross",
    where: points.ids[one.from]!,
    text: `Breaklines ${name(one)} and ${name(two)} cross; a point was added there at their mean height (they differ by ${gap.toFixed(2)} m).`,
    source: "geometry",
  };
}

function heightOn(points: LinedPoints, leg: Leg, share: number): number {
  return points.z[leg.from]! + share * (points.z[leg.to]! - points.z[leg.from]!);
}

function crossingOf(
  points: LinedPoints,
  one: Leg,
  two: Leg,
): { x: number; y: number; shareOne: number; shareTwo: number } | null {
  const px = points.x[one.from]!;
  const py = points.y[one.from]!;
  const rx = points.x[one.to]! - px;
  const ry = points.y[one.to]! - py;
  const qx = points.x[two.from]!;
  const qy = points.y[two.from]!;
  const sx = points.x[two.to]! - qx;
  const sy = points.y[two.to]! - qy;
  const denominator = rx * sy - ry * sx;
  if (denominator === 0) return null;
  const shareOne = ((qx - px) * sy - (qy - py) * sx) / denominator;
  const shareTwo = ((qx - px) * ry - (qy - py) * rx) / denominator;
  if (shareOne <= 0 || shareOne >= 1 || shareTwo <= 0 || shareTwo >= 1) return null;
  return { x: px + shareOne * rx, y: py + shareOne * ry, shareOne, shareTwo };
}

function uniqueEdges(legs: readonly Leg[]): [number, number][] {
  const edges = new Map<string, [number, number]>();
  for (const leg of legs) {
    const between = [...leg.on].sort((a, b) => a.share - b.share).map((p) => p.vertex);
    const chain = [leg.from, ...between, leg.to];
    for (let i = 1; i < chain.length; i++) {
      const from = chain[i - 1]!;
      const to = chain[i]!;
      if (from !== to) edges.set(`${Math.min(from, to)},${Math.max(from, to)}`, [from, to]);
    }
  }
  return [...edges.values()];
}
