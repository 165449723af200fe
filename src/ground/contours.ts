/** Contour lines of the ground as found. */
import { corners, type Tin } from "./tin.js";

/** One contour line in plan, local m. A closed line repeats its first place at the end. */
export interface Contour {
  /** Elevation, m, site. */
  elevation: number;
  closed: boolean;
  line: (readonly [number, number])[];
}

interface Crossing {
  /** Key of the triangle edge that is crossed. */
  edge: string;
  place: readonly [number, number];
}

/**
 * Joined contour lines at every multiple of `step` (m, site elevations). A level that passes
 * exactly through a vertex is taken a hair above it, so that lines never branch.
 */
export function contourLines(tin: Tin, step: number): Contour[] {
  const contours: Contour[] = [];
  const first = Math.ceil((tin.lowest + tin.origin[2]) / step);
  const last = Math.floor((tin.highest + tin.origin[2]) / step);
  for (let k = first; k <= last; k++) {
    const elevation = k * step;
    const legs = legsAt(tin, elevation - tin.origin[2]);
    for (const line of joinLegs(legs)) contours.push({ elevation, ...line });
  }
  return contours;
}

function legsAt(tin: Tin, height: number): [Crossing, Crossing][] {
  const legs: [Crossing, Crossing][] = [];
  for (let t = 0; t < tin.triangles.length / 3; t++) {
    const [a, b, c] = corners(tin, t);
    const crossings: Crossing[] = [];
    for (const [p, q] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      const crossing = crossingOn(tin, p, q, height);
      if (crossing) crossings.push(crossing);
    }
    if (crossings.length === 2) legs.push([crossings[0]!, crossings[1]!]);
  }
  return legs;
}

function crossingOn(tin: Tin, p: number, q: number, height: number): Crossing | null {
  const above = (v: number): boolean => tin.z[v]! > height;
  if (above(p) === above(q)) return null;
  const [low, high] = p < q ? [p, q] : [q, p];
  const share = (height - tin.z[low]!) / (tin.z[high]! - tin.z[low]!);
  const x = tin.x[low]! + share * (tin.x[high]! - tin.x[low]!);
  const y = tin.y[low]! + share * (tin.y[high]! - tin.y[low]!);
  return { edge: `${low},${high}`, place: [x, y] };
}

function joinLegs(legs: readonly [Crossing, Crossing][]): Omit<Contour, "elevation">[] {
  const at = new Map<string, number[]>();
  legs.forEach(([a, b], i) => {
    for (const end of [a, b]) at.set(end.edge, [...(at.get(end.edge) ?? []), i]);
  });
  const used = new Set<number>();
  const walk = (start: number, from: Crossing, to: Crossing): Crossing[] => {
    const path = [from, to];
    used.add(start);
    for (;;) {
      const end = path[path.length - 1]!;
      const next = at.get(end.edge)!.find((i) => !used.has(i));
      if (next === undefined) return path;
      used.add(next);
      const [a, b] = legs[next]!;
      path.push(a.edge === end.edge ? b : a);
    }
  };
  const lines: Omit<Contour, "elevation">[] = [];
  const add = (path: Crossing[]): void => {
    const closed = path.length > 2 && path[0]!.edge === path[path.length - 1]!.edge;
    lines.push({ closed, line: path.map((crossing) => crossing.place) });
  };
  legs.forEach(([a, b], i) => {
    if (used.has(i)) return;
    // Open lines start at the edge of the survey, so that each is walked once from end to end.
    if (at.get(a.edge)!.length === 1) add(walk(i, a, b));
    else if (at.get(b.edge)!.length === 1) add(walk(i, b, a));
  });
  legs.forEach(([a, b], i) => {
    if (!used.has(i)) add(walk(i, a, b));
  });
  return lines;
}
