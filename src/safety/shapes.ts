/** The true shapes in plan of works and limits, between which setbacks are measured. */
import type { WorkQuantities } from "../dig/index.js";
import { rectangleInPlan, type PlanShape } from "../flow/index.js";
import type { Limit, PlanPoint, Scheme, Work } from "../site/index.js";

/** A part of a work that has to keep its distance. */
export interface Part {
  work: string;
  /** What it is to a table of setbacks. */
  from: "tank" | "field" | "pipe" | "pad" | "dig";
  shapes: readonly PlanShape[];
}

/** What each work of a scheme puts in the ground: tanks, fields, pipes' trenches, pads. */
export function bodiesOf(scheme: Scheme): Part[] {
  const field = scheme.flow?.field ?? [];
  return scheme.works.flatMap((work) => {
    const shapes = bodyShapes(work);
    return shapes.length === 0
      ? []
      : [{ work: work.id, from: partOf(work, field.includes(work.id)), shapes }];
  });
}

function partOf(work: Work, isField: boolean): Part["from"] {
  if (work.kind === "bed" || isField) return "field";
  if (work.kind === "tank") return "tank";
  return work.kind === "trench" ? "pipe" : "pad";
}

/** The edge of each hole where it comes to daylight. */
export function digsOf(works: readonly WorkQuantities[]): Part[] {
  return works.flatMap(({ id, outlines }) => {
    const rings = outlines?.daylight ?? [];
    if (rings.length === 0) return [];
    const shapes = rings.map((ring): PlanShape => {
      const points = ring.map(([x, y]): PlanPoint => [x, y]);
      return { points, closed: true };
    });
    return [{ work: id, from: "dig" as const, shapes }];
  });
}

/** What of a work a setback is measured from; buildings, piles and strips are no part of the system. */
export function bodyShapes(work: Work): PlanShape[] {
  switch (work.kind) {
    case "tank":
      return [rectangleInPlan({ at: work.at, bearing: work.bearing, ...work.body })];
    case "bed":
      return [rectangleInPlan(work)];
    case "pad":
      return [work.outline, ...(work.levels ?? []).map((level) => level.outline)].map((points) => ({
        points,
        closed: true,
      }));
    case "trench":
      return legsOf(work.path, work.width);
    case "building":
    case "pile":
    case "strip":
      return [];
  }
}

/** The strips of a trench's floor, one rectangle for each leg of its path. */
function legsOf(path: readonly PlanPoint[], width: number): PlanShape[] {
  return path.slice(1).map((b, i) => {
    const a = path[i]!;
    const [ex, ey] = [b[0] - a[0], b[1] - a[1]];
    const half = width / 2 / Math.max(Math.hypot(ex, ey), Number.MIN_VALUE);
    const [nx, ny] = [-ey * half, ex * half];
    const corner = (at: PlanPoint, side: number): PlanPoint => [
      at[0] + side * nx,
      at[1] + side * ny,
    ];
    return { points: [corner(a, 1), corner(a, -1), corner(b, -1), corner(b, 1)], closed: true };
  });
}

/** Corners of the many-sided figure that stands for a circle; 0.02% of its radius too small at most. */
const CIRCLE = 160;

/**
 * The shapes of a limit: its place or the circle about it, its line, or its area where the path
 * closes. A lot line bounds what is one's own: it is a line even where it closes.
 */
export function limitShapes(limit: Limit): PlanShape[] {
  const shapes: PlanShape[] = [];
  if (limit.at !== undefined) {
    const { at, radius = 0 } = limit;
    shapes.push(
      radius > 0 ? { points: circle(at, radius), closed: true } : { points: [at], closed: false },
    );
  }
  const [first] = limit.path ?? [];
  if (limit.path === undefined || first === undefined) return shapes;
  if (limit.closed !== true) shapes.push(...lineShapes(limit.path, limit.width ?? 0));
  else if (limit.kind === "lot-line")
    shapes.push({ points: [...limit.path, first], closed: false });
  else shapes.push({ points: limit.path, closed: true });
  return shapes;
}

/** A line, or the strip about it where it has a width: a rectangle for each leg, round at the bends. */
function lineShapes(path: readonly PlanPoint[], width: number): PlanShape[] {
  if (width <= 0) return [{ points: path, closed: false }];
  const bends = path.slice(1, -1).map((at) => ({ points: circle(at, width / 2), closed: true }));
  return [...legsOf(path, width), ...bends];
}

function circle(at: PlanPoint, radius: number): PlanPoint[] {
  return Array.from({ length: CIRCLE }, (_, k): PlanPoint => {
    const turn = (2 * Math.PI * k) / CIRCLE;
    return [at[0] + radius * Math.cos(turn), at[1] + radius * Math.sin(turn)];
  });
}
