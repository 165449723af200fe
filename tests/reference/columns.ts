/**
 * Brute force: volumes by adding up columns of earth, written apart from the engine.
 *
 * Along a line of constant x every height is straight between places that can be listed (triangle
 * edges, outline edges, crossings of planes), so the integral along y is exact. Across x it is
 * Gauss's three-place rule on strips that are halved until halving changes too little; the sum of
 * those last changes is the error bound that is given back.
 */
import Delaunator from "delaunator";

/** A line in plan, a·x + b·y = c, across which something may break. */
export interface PlanLine {
  a: number;
  b: number;
  c: number;
}

/** A height that is one plane everywhere, z = a·x + b·y + c; others are min and max of these. */
export type Flat = PlanLine;

/** The ground as found: surface and tops of the lower layers at a place, or null off the survey. */
export interface Earth {
  lines: readonly PlanLine[];
  /** Heights of the layer tops from the surface down; the last layer has no bottom. */
  topsAt: (x: number, y: number) => number[] | null;
  /** Places whose x values the strips should not straddle. */
  corners: readonly (readonly [number, number])[];
}

export type Spot = readonly [x: number, y: number, z: number];

/** Line through two places. */
export function lineThrough(
  [px, py]: readonly [number, number],
  [qx, qy]: readonly [number, number],
): PlanLine {
  const [a, b] = [-(qy - py), qx - px];
  return { a, b, c: a * px + b * py };
}

/** Line through a place, square to the way to another. */
function lineAcross(
  [px, py]: readonly [number, number],
  [qx, qy]: readonly [number, number],
): PlanLine {
  const [a, b] = [qx - px, qy - py];
  return { a, b, c: a * px + b * py };
}

interface Facet {
  corners: readonly [Spot, Spot, Spot];
  west: number;
  east: number;
}

/** The triangles of a Delaunay triangulation of spots. */
export function facets(spots: readonly Spot[]): Facet[] {
  const { triangles } = Delaunator.from(spots.map(([x, y]): [number, number] => [x, y]));
  const out: Facet[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [spots[triangles[t]!]!, spots[triangles[t + 1]!]!, spots[triangles[t + 2]!]!];
    const xs = [a[0], b[0], c[0]];
    out.push({ corners: [a, b, c], west: Math.min(...xs), east: Math.max(...xs) });
  }
  return out;
}

/** Height on the facet that holds a place, by barycentric shares; null when none holds it. */
export function heightOn(all: readonly Facet[], x: number, y: number): number | null {
  for (const { corners, west, east } of all) {
    if (x < west - 1e-9 || x > east + 1e-9) continue;
    const [a, b, c] = corners;
    const whole = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
    const wb = ((x - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (y - a[1])) / whole;
    const wc = ((b[0] - a[0]) * (y - a[1]) - (x - a[0]) * (b[1] - a[1])) / whole;
    if (wb >= -1e-12 && wc >= -1e-12 && wb + wc <= 1 + 1e-12) {
      return a[2] + wb * (b[2] - a[2]) + wc * (c[2] - a[2]);
    }
  }
  return null;
}

/** A probe: place and thickness of each layer but the last. */
export type Probe = readonly [x: number, y: number, ...thickness: number[]];

/**
 * Thickness of the layers by the site file's rule, in its own words: one probe holds everywhere;
 * two are linear along their line and constant across and beyond; three or more are linear on
 * their triangulation and outside it take the value at the nearest place inside.
 */
export function thicknessRule(
  probes: readonly Probe[],
  layers: number,
): (x: number, y: number) => number[] {
  const each = Array.from({ length: layers - 1 }, (_, i) => i);
  if (probes.length === 0) return () => each.map(() => 0);
  if (probes.length === 1) return () => each.map((i) => probes[0]![i + 2]!);
  const spots = each.map((i) => probes.map((p): Spot => [p[0], p[1], p[i + 2]!]));
  if (inOneLine(probes)) return (x, y) => spots.map((layer) => onLine(layer, x, y));
  const surfaces = spots.map(facets);
  return (x, y) =>
    surfaces.map((surface) => heightOn(surface, x, y) ?? nearestOnEdges(surface, x, y));
}

function inOneLine(probes: readonly Probe[]): boolean {
  const [p, q] = [probes[0]!, probes[1]!];
  return probes.every(
    (r) => Math.abs((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])) < 1e-9,
  );
}

function onLine(spots: readonly Spot[], x: number, y: number): number {
  const [p, q] = [spots[0]!, spots[1]!];
  const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
  const along = ([sx, sy]: readonly [number, number, ...number[]]): number =>
    ((sx - p[0]) * (q[0] - p[0]) + (sy - p[1]) * (q[1] - p[1])) / length;
  const sorted = [...spots].sort((a, b) => along(a) - along(b));
  const at = along([x, y]);
  if (at <= along(sorted[0]!)) return sorted[0]![2];
  for (let i = 1; i < sorted.length; i++) {
    const [a, b] = [sorted[i - 1]!, sorted[i]!];
    if (at > along(b)) continue;
    return a[2] + ((at - along(a)) / (along(b) - along(a))) * (b[2] - a[2]);
  }
  return sorted[sorted.length - 1]![2];
}

/** Value at the place nearest to x, y on any edge of the triangulation (outside: its hull). */
function nearestOnEdges(surface: readonly Facet[], x: number, y: number): number {
  let [best, value] = [Infinity, NaN];
  for (const { corners } of surface) {
    corners.forEach((p, i) => {
      const q = corners[(i + 1) % 3]!;
      const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
      const raw = ((x - p[0]) * dx + (y - p[1]) * dy) / (dx * dx + dy * dy);
      const share = Math.min(1, Math.max(0, raw));
      const far = Math.hypot(p[0] + share * dx - x, p[1] + share * dy - y);
      if (far < best) [best, value] = [far, p[2] + share * (q[2] - p[2])];
    });
  }
  return value;
}

/** The ground from spot heights, the number of its layers and probes. */
export function earthOf(spots: readonly Spot[], layers: number, probes: readonly Probe[]): Earth {
  const ground = facets(spots);
  const lines: PlanLine[] = [];
  const addEdges = (all: readonly Facet[], across: boolean): void => {
    for (const { corners } of all) {
      corners.forEach((p, i) => {
        const [px, py] = p;
        const [qx, qy] = corners[(i + 1) % 3]!;
        lines.push(lineThrough([px, py], [qx, qy]));
        if (across) lines.push(lineAcross([px, py], [qx, qy]), lineAcross([qx, qy], [px, py]));
      });
    }
  };
  addEdges(ground, false);
  if (probes.length >= 3 && !inOneLine(probes)) {
    addEdges(facets(probes.map(([x, y]): Spot => [x, y, 0])), true);
  } else if (probes.length >= 2) {
    for (const p of probes) {
      const other = p === probes[0] ? probes[1]! : probes[0]!;
      lines.push(lineAcross([p[0], p[1]], [other[0], other[1]]));
    }
  }
  const thickness = thicknessRule(probes, layers);
  const topsAt = (x: number, y: number): number[] | null => {
    const surface = heightOn(ground, x, y);
    if (surface === null) return null;
    const tops = [surface];
    for (const thick of thickness(x, y)) tops.push(tops[tops.length - 1]! - thick);
    return tops;
  };
  return { lines, topsAt, corners: spots.map(([x, y]) => [x, y]) };
}

/** What is done to the ground, in plain words: heights at a place, and what they are made from. */
export interface Change {
  /** Lines across which the heights below may jump or bend. */
  lines: readonly PlanLine[];
  /** Planes of which all heights below are pieces, as far as they matter on a line of constant x. */
  planesOn: (x: number) => readonly Flat[];
  /** Places whose x values the strips should not straddle. */
  corners: readonly (readonly [number, number])[];
  /** Quantities per m² at a place, given the layer tops there; the same number at every place. */
  amounts: (x: number, y: number, tops: readonly number[]) => number[];
}

/** West, south, east, north: where the change can reach. */
export type Window = readonly [number, number, number, number];

/** What columns are added up to when nothing else is asked for, m³ (or m² for an area). */
export const COLUMN_TOLERANCE = 1e-5;

/** Gauss's three-place rule on a stretch of length 1: places from the middle, and weights. */
const GAUSS = [
  [-0.5 * Math.sqrt(0.6), 5 / 18],
  [0, 8 / 18],
  [0.5 * Math.sqrt(0.6), 5 / 18],
] as const;
const MOST_HALVINGS = 12;
/** Strips start no wider than this, m, so that nothing of a work's size slips between places. */
const WIDEST = 0.3;

export interface ColumnSums {
  /** Integrals of the amounts, in their order. */
  sums: number[];
  /** What the last halvings changed, all together: how far a sum may be off. */
  bound: number;
}

/** Integrals of a change's amounts over the window, to about `tolerance` (same unit) each. */
export function integrateColumns(
  earth: Earth,
  change: Change,
  [west, south, east, north]: Window,
  tolerance = COLUMN_TOLERANCE,
): ColumnSums {
  const lines = [...nearLines(earth.lines, [west, south, east, north]), ...change.lines];
  const strip = (from: number, to: number): number[] => {
    const sums: number[] = [];
    for (const [place, weight] of GAUSS) {
      const x = (from + to) / 2 + place * (to - from);
      alongStrip(earth, change, lines, x, [south, north], weight * (to - from), sums);
    }
    return sums;
  };
  const found: ColumnSums = { sums: [], bound: 0 };
  const halve = (from: number, to: number, whole: readonly number[], depth: number): void => {
    const mid = (from + to) / 2;
    const [left, right] = [strip(from, mid), strip(mid, to)];
    const both = plus(left, right);
    const off = Math.max(0, ...both.map((sum, i) => Math.abs(sum - (whole[i] ?? 0))));
    if (off < (tolerance * (to - from)) / (east - west) || depth === MOST_HALVINGS) {
      found.sums = plus(found.sums, both);
      found.bound += off;
      return;
    }
    halve(from, mid, left, depth + 1);
    halve(mid, to, right, depth + 1);
  };
  const marks = [...earth.corners, ...change.corners]
    .map(([x]) => x)
    .filter((x) => x > west && x < east)
    .sort((a, b) => a - b);
  const ends = [west, ...marks, east];
  for (let k = 1; k < ends.length; k++) {
    const [start, stop] = [ends[k - 1]!, ends[k]!];
    if (stop - start < 1e-9) continue;
    const count = Math.ceil((stop - start) / WIDEST);
    for (let i = 0; i < count; i++) {
      const from = start + (i * (stop - start)) / count;
      const to = start + ((i + 1) * (stop - start)) / count;
      halve(from, to, strip(from, to), 0);
    }
  }
  return found;
}

function plus(a: readonly number[], b: readonly number[]): number[] {
  const count = Math.max(a.length, b.length);
  return Array.from({ length: count }, (_, i) => (a[i] ?? 0) + (b[i] ?? 0));
}

function nearLines(lines: readonly PlanLine[], [w, s, e, n]: Window): PlanLine[] {
  const corners = [
    [w, s],
    [e, s],
    [e, n],
    [w, n],
  ] as const;
  return lines.filter(({ a, b, c }) => {
    const sides = corners.map(([x, y]) => Math.sign(a * x + b * y - c));
    return sides.some((side) => side !== sides[0]);
  });
}

function alongStrip(
  earth: Earth,
  change: Change,
  lines: readonly PlanLine[],
  x: number,
  [south, north]: readonly [number, number],
  width: number,
  sums: number[],
): void {
  const breaks: number[] = [south, north];
  const add = (y: number, low: number, high: number): void => {
    if (y > low && y < high) breaks.push(y);
  };
  for (const { a, b, c } of lines) if (b !== 0) add((c - a * x) / b, south, north);
  const planes = change.planesOn(x);
  for (let i = 0; i < planes.length; i++) {
    for (let j = i + 1; j < planes.length; j++) {
      const [p, q] = [planes[i]!, planes[j]!];
      if (p.b !== q.b) add(((q.a - p.a) * x + q.c - p.c) / (p.b - q.b), south, north);
    }
  }
  breaks.sort((p, q) => p - q);
  for (let k = 1; k < breaks.length; k++) {
    addPieces(earth, change, planes, x, breaks[k - 1]!, breaks[k]!, width, sums);
  }
}

/** Adds a stretch of a strip on which the ground is straight: cut again where planes meet it. */
function addPieces(
  earth: Earth,
  change: Change,
  planes: readonly Flat[],
  x: number,
  low: number,
  high: number,
  width: number,
  sums: number[],
): void {
  if (high - low < 1e-12) return;
  const [y1, y2] = [low + 0.25 * (high - low), low + 0.75 * (high - low)];
  const [tops1, tops2] = [earth.topsAt(x, y1), earth.topsAt(x, y2)];
  if (!tops1 || !tops2) return;
  const breaks = [low, high];
  tops1.forEach((top1, i) => {
    const rate = (tops2[i]! - top1) / (y2 - y1);
    for (const { a, b, c } of planes) {
      if (b === rate) continue;
      const y = (top1 - rate * y1 - a * x - c) / (b - rate);
      if (y > low && y < high) breaks.push(y);
    }
  });
  breaks.sort((p, q) => p - q);
  for (let k = 1; k < breaks.length; k++) {
    const [from, to] = [breaks[k - 1]!, breaks[k]!];
    const mid = (from + to) / 2;
    const tops = tops1.map((top, i) => top + ((tops2[i]! - top) * (mid - y1)) / (y2 - y1));
    change.amounts(x, mid, tops).forEach((amount, i) => {
      sums[i] = (sums[i] ?? 0) + amount * (to - from) * width;
    });
  }
}

/** Depth of each layer between the surface and a floor below it. */
export function cutOf(tops: readonly number[], floor: number): number[] {
  return tops.map((top, i) => {
    const bottom = tops[i + 1] ?? -Infinity;
    return Math.max(0, top - Math.max(floor, bottom));
  });
}
