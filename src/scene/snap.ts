import type { PlanPoint } from "../site/index.js";

/** One thing of the site that a place can snap to: all in site coordinates, m. */
export interface SnapTarget {
  name: string;
  /**
   * An outline is closed; a middle is the centre of a work; a place stands for itself; a joint is
   * where a pipe's end belongs, and wins over all others.
   */
  shape: "outline" | "path" | "middle" | "place" | "joint";
  places: readonly PlanPoint[];
  /** m by which a joint holds from farther off than all else: half of a tank's end. */
  wide?: number;
}

/** What a place was snapped to. */
export type SnapHold =
  | { by: "corner"; of: string; shape: SnapTarget["shape"] }
  /** The first corner of what is drawn: a click there closes it. */
  | { by: "close" }
  /** Foot of the perpendicular on a side. */
  | { by: "edge"; of: string; shape: SnapTarget["shape"] }
  | { by: "square" }
  | { by: "straight" }
  /** On a line through the first corner, along its side or square to it. */
  | { by: "first" }
  /** Elevation of the ground as found, m. */
  | { by: "contour"; elevation: number }
  /** Length from the last corner, m. */
  | { by: "length"; length: number };

/** A line that a corner may lie on: `along` is a unit vector. */
export interface SnapLine {
  by: "square" | "straight" | "first";
  through: PlanPoint;
  along: PlanPoint;
}

/** The ground's contours, as they are drawn. */
export interface SnapContours {
  /** m between levels. */
  step: number;
  /** Elevation of the ground as found at a site place; null beyond the survey. */
  heightAt: (at: PlanPoint) => number | null;
}

/** What one place is snapped against. */
export interface SnapAsk {
  /** Site place under the pointer, m. */
  at: PlanPoint;
  targets: readonly SnapTarget[];
  lines: readonly SnapLine[];
  /** First corner of what is drawn, when a click on it closes the shape; null else. */
  close: PlanPoint | null;
  /** Where the present leg begins: its length is made round. Null: the place itself is. */
  from: PlanPoint | null;
  contours: SnapContours | null;
  /** m within which something holds. */
  reach: number;
  /** m that lengths and places are rounded to. */
  step: number;
}

/** Where the place goes, and all that holds it there; nothing when it is only rounded. */
export interface Snapped {
  at: PlanPoint;
  holds: readonly SnapHold[];
}

/**
 * The place that is meant. Joints win over corners, corners over edges, edges over angles, angles over contours, contours
 * over round numbers; where an edge and an angle, or two angles, are both near, their crossing holds.
 */
export function snapPlace(ask: SnapAsk): Snapped {
  return atCorner(ask) ?? atEdge(ask) ?? atLine(ask) ?? atContour(ask) ?? atRound(ask);
}

function atCorner({ at, targets, close, reach }: SnapAsk): Snapped | null {
  if (close !== null && apart(at, close) <= reach) return { at: close, holds: [{ by: "close" }] };
  const isJoint = ({ shape }: SnapTarget): boolean => shape === "joint";
  return (
    nearestPlace(at, targets.filter(isJoint), reach) ??
    nearestPlace(
      at,
      targets.filter((one) => !isJoint(one)),
      reach,
    )
  );
}

function nearestPlace(
  at: PlanPoint,
  targets: readonly SnapTarget[],
  reach: number,
): Snapped | null {
  let best: { at: PlanPoint; far: number; hold: SnapHold } | null = null;
  for (const { name, shape, places, wide = 0 } of targets) {
    for (const place of places) {
      const far = apart(at, place);
      if (far > reach + wide || far >= (best?.far ?? Infinity)) continue;
      best = { at: place, far, hold: { by: "corner", of: name, shape } };
    }
  }
  return best && { at: best.at, holds: [best.hold] };
}

interface Edge {
  foot: PlanPoint;
  along: PlanPoint;
  far: number;
  hold: SnapHold;
}

function atEdge(ask: SnapAsk): Snapped | null {
  const edge = nearestEdge(ask.at, ask.targets, ask.reach);
  if (edge === null) return null;
  for (const line of nearLines(ask)) {
    const met = crossing(edge.foot, edge.along, line.through, line.along);
    if (met === null || apart(met, ask.at) > CROSSING * ask.reach) continue;
    // Beyond the end of the side there is no side.
    const still = nearestEdge(met, ask.targets, 1e-6);
    if (still !== null) return { at: met, holds: [edge.hold, { by: line.by }] };
  }
  return { at: edge.foot, holds: [edge.hold] };
}

/** How much farther than one hold the crossing of two may be. */
const CROSSING = 1.5;

function nearestEdge(at: PlanPoint, targets: readonly SnapTarget[], reach: number): Edge | null {
  let best: Edge | null = null;
  for (const { name, shape, places } of targets) {
    const count = shape === "outline" ? places.length : shape === "path" ? places.length - 1 : 0;
    for (let i = 0; i < count; i++) {
      const [a, b] = [places[i]!, places[(i + 1) % places.length]!];
      const on = footOn(at, a, b);
      if (on === null || on.far > reach || on.far >= (best?.far ?? Infinity)) continue;
      best = { ...on, hold: { by: "edge", of: name, shape } };
    }
  }
  return best;
}

/** Foot of the perpendicular on a side; null when it falls beyond the side's ends. */
function footOn(at: PlanPoint, a: PlanPoint, b: PlanPoint): Omit<Edge, "hold"> | null {
  const along = unit(a, b);
  if (along === null) return null;
  const run = (at[0] - a[0]) * along[0] + (at[1] - a[1]) * along[1];
  if (run < 0 || run > apart(a, b)) return null;
  const foot: PlanPoint = [a[0] + along[0] * run, a[1] + along[1] * run];
  return { foot, along, far: apart(at, foot) };
}

/** The lines within reach of the place, nearest first. */
function nearLines({ at, lines, reach }: SnapAsk): SnapLine[] {
  return lines
    .map((line) => ({ line, far: apart(at, onLine(at, line)) }))
    .filter(({ far, line }) => far <= reach && apart(at, line.through) > reach)
    .toSorted((a, b) => a.far - b.far)
    .map(({ line }) => line);
}

function atLine(ask: SnapAsk): Snapped | null {
  const [line, ...others] = nearLines(ask);
  if (line === undefined) return null;
  for (const other of others) {
    const met = crossing(line.through, line.along, other.through, other.along);
    if (met === null || apart(met, ask.at) > CROSSING * ask.reach) continue;
    return {
      at: met,
      holds: line.by === other.by ? [{ by: line.by }] : [{ by: line.by }, { by: other.by }],
    };
  }
  const foot = onLine(ask.at, line);
  const run = rounded(dot(line.along, foot, line.through), ask.step);
  return {
    at: [line.through[0] + line.along[0] * run, line.through[1] + line.along[1] * run],
    holds: [{ by: line.by }],
  };
}

/** How many reaches apart contours must lie: nearer ones would hold everywhere. */
const CONTOUR_ROOM = 5;

function atContour({ at, contours, reach }: SnapAsk): Snapped | null {
  if (contours === null) return null;
  const { step, heightAt } = contours;
  const here = heightAt(at);
  if (here === null) return null;
  const elevation = Math.round(here / step) * step;
  let place = at;
  // On a plane one step is exact; the ground is planes, so a few steps over their seams settle it.
  for (let tries = 0; tries < 5; tries++) {
    const z = heightAt(place);
    const rise = z === null ? null : steepest(place, heightAt, Math.max(0.01, reach / 50));
    if (z === null || rise === null) return null;
    const slope = Math.hypot(rise[0], rise[1]);
    if (slope < 1e-6 || step / slope < CONTOUR_ROOM * reach) return null;
    if (Math.abs(z - elevation) < 1e-4) return { at: place, holds: [{ by: "contour", elevation }] };
    const go = (elevation - z) / (slope * slope);
    place = [place[0] + rise[0] * go, place[1] + rise[1] * go];
    if (apart(place, at) > reach) return null;
  }
  return null;
}

/** Rise per m east and north about a place; null at the survey's edge. */
function steepest(
  at: PlanPoint,
  heightAt: SnapContours["heightAt"],
  off: number,
): PlanPoint | null {
  const [east, west] = [heightAt([at[0] + off, at[1]]), heightAt([at[0] - off, at[1]])];
  const [north, south] = [heightAt([at[0], at[1] + off]), heightAt([at[0], at[1] - off])];
  if (east === null || west === null || north === null || south === null) return null;
  return [(east - west) / (2 * off), (north - south) / (2 * off)];
}

function atRound({ at, from, step }: SnapAsk): Snapped {
  const along = from === null ? null : unit(from, at);
  if (from === null || along === null) return { at: onGrid(at, step), holds: [] };
  const length = rounded(apart(from, at), step);
  return {
    at: [from[0] + along[0] * length, from[1] + along[1] * length],
    holds: length > 0 ? [{ by: "length", length }] : [],
  };
}

/** The place on the grid of `step` m; itself where the step is 0. */
export function onGrid([x, y]: PlanPoint, step: number): PlanPoint {
  return [rounded(x, step), rounded(y, step)];
}

function rounded(metres: number, step: number): number {
  return step > 0 ? Math.round(metres / step) * step : metres;
}

/**
 * Lines for the next corner after those that are set: straight on from the last leg and square to
 * it, and for an outline in line with its first corner, square to the first leg or along it.
 */
export function drawingLines(corners: readonly PlanPoint[], closes: boolean): SnapLine[] {
  const [last, before] = [corners.at(-1), corners.at(-2)];
  if (last === undefined || before === undefined) return [];
  const lines = legLines(before, last);
  const [first, second] = [corners[0]!, corners[1]!];
  if (!closes || corners.length < 3) return lines;
  const along = unit(first, second);
  if (along === null) return lines;
  return [
    ...lines,
    { by: "first", through: first, along: across(along) },
    { by: "first", through: first, along },
  ];
}

/**
 * Lines for a corner or bend that is dragged: straight on from the legs before and after it, and
 * square to them.
 */
export function cornerLines(
  places: readonly PlanPoint[],
  closed: boolean,
  index: number,
): SnapLine[] {
  const count = places.length;
  const at = (i: number): PlanPoint | undefined =>
    closed ? places[(i + count) % count] : places[i];
  const [farBefore, before, after, farAfter] = [
    at(index - 2),
    at(index - 1),
    at(index + 1),
    at(index + 2),
  ];
  // In a triangle the legs before and after are one.
  if (closed && count < 4) return [];
  return [
    ...(farBefore === undefined || before === undefined ? [] : legLines(farBefore, before)),
    ...(farAfter === undefined || after === undefined ? [] : legLines(farAfter, after)),
  ];
}

/** The lines through the end of a leg: straight on, and square to it. */
function legLines(from: PlanPoint, to: PlanPoint): SnapLine[] {
  const along = unit(from, to);
  if (along === null) return [];
  return [
    { by: "straight", through: to, along },
    { by: "square", through: to, along: across(along) },
  ];
}

/** What a whole thing that is moved snaps with and against. */
export interface MoveAsk {
  /** Its own corners or middle as it was pressed, site m. */
  own: readonly PlanPoint[];
  /** The place of it that is rounded when nothing holds. */
  place: PlanPoint;
  /** Offset that the pointer asks for, m. */
  by: PlanPoint;
  targets: readonly SnapTarget[];
  reach: number;
  step: number;
}

/** Offset of a whole thing that is moved, the place of it that holds, and what holds it. */
export interface SnappedMove extends Snapped {
  by: PlanPoint;
}

/**
 * The move that is meant: the nearest of the thing's own corners goes on a corner, else on an edge;
 * else its place goes on the grid.
 */
export function snapMove(ask: MoveAsk): SnappedMove {
  const { own, place, by, targets, reach, step } = ask;
  let best: (SnappedMove & { far: number }) | null = null;
  const offer = (from: PlanPoint, to: PlanPoint, hold: SnapHold): void => {
    const moved: PlanPoint = [from[0] + by[0], from[1] + by[1]];
    const far = apart(moved, to);
    if (far > reach || far >= (best?.far ?? Infinity)) return;
    best = { at: to, far, by: [to[0] - from[0], to[1] - from[1]], holds: [hold] };
  };
  for (const from of own) {
    const moved: PlanPoint = [from[0] + by[0], from[1] + by[1]];
    const met = atCorner({ ...NOTHING, at: moved, targets, reach });
    if (met !== null) offer(from, met.at, met.holds[0]!);
  }
  if ((best as SnappedMove | null) === null) {
    for (const from of own) {
      const edge = nearestEdge([from[0] + by[0], from[1] + by[1]], targets, reach);
      if (edge !== null) offer(from, edge.foot, edge.hold);
    }
  }
  const held = best as (SnappedMove & { far: number }) | null;
  if (held !== null) return { at: held.at, by: held.by, holds: held.holds };
  const at = onGrid([place[0] + by[0], place[1] + by[1]], step);
  return { at, by: [at[0] - place[0], at[1] - place[1]], holds: [] };
}

const NOTHING = { lines: [], close: null, from: null, contours: null, step: 0 } as const;

function apart(a: PlanPoint, b: PlanPoint): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}

/** Unit vector from one place to another; null when they are one. */
function unit(a: PlanPoint, b: PlanPoint): PlanPoint | null {
  const far = apart(a, b);
  return far < 1e-9 ? null : [(b[0] - a[0]) / far, (b[1] - a[1]) / far];
}

function across([x, y]: PlanPoint): PlanPoint {
  return [-y, x];
}

function dot(along: PlanPoint, at: PlanPoint, from: PlanPoint): number {
  return along[0] * (at[0] - from[0]) + along[1] * (at[1] - from[1]);
}

function onLine(at: PlanPoint, { through, along }: SnapLine): PlanPoint {
  const run = dot(along, at, through);
  return [through[0] + along[0] * run, through[1] + along[1] * run];
}

/** Where two lines cross; null when they are within half a degree of parallel. */
function crossing(a: PlanPoint, u: PlanPoint, b: PlanPoint, v: PlanPoint): PlanPoint | null {
  const cross = u[0] * v[1] - u[1] * v[0];
  if (Math.abs(cross) < 0.0087) return null;
  const run = ((b[0] - a[0]) * v[1] - (b[1] - a[1]) * v[0]) / cross;
  return [a[0] + u[0] * run, a[1] + u[1] * run];
}
