import type { Corners as ThingCorners, PlanPoint } from "../site/index.js";
import { bearingOf } from "./dragging.js";
import { signedArea } from "./picking.js";
import { shapeOf, type Corners } from "./placing.js";
import type { DragMove, Placing } from "./props.js";
import { pathLength } from "../estimate/index.js";

/** Figures of what is being drawn, in plan: m, m², degrees. */
export interface DrawnFigures {
  /** Length of the leg to the pointer. */
  leg: number;
  /** Angle at the last corner between its two legs, 0 to 180; null before there are two. */
  angle: number | null;
  /** Bearing of the leg, clockwise from north. */
  bearing: number;
  /** Length of all legs, the present one too; null for an outline or a single leg. */
  running: number | null;
  /** Area of the outline as it would be closed now; null for a path or before there is one. */
  area: number | null;
}

/** Figures of the shape with its next corner at `hover`; null before the first corner. */
export function drawnFigures(
  placing: Placing,
  corners: Corners,
  hover: PlanPoint | null,
): DrawnFigures | null {
  const [last, before] = [corners.at(-1), corners.at(-2)];
  if (last === undefined || hover === null) return null;
  const outline = shapeOf(placing) === "outline";
  const whole = [...corners, hover];
  return {
    leg: Math.hypot(hover[0] - last[0], hover[1] - last[1]),
    angle: before === undefined ? null : angleAt(before, last, hover),
    bearing: bearingOf(last, hover),
    running: outline || corners.length < 2 ? null : pathLength(whole),
    area: outline && corners.length >= 2 ? Math.abs(signedArea(whole)) : null,
  };
}

/** Angle between the legs that meet at a corner, degrees, 0 to 180. */
export function angleAt(before: PlanPoint, corner: PlanPoint, after: PlanPoint): number {
  const between = Math.abs(bearingOf(corner, before) - bearingOf(corner, after));
  return between > 180 ? 360 - between : between;
}

/** A leg's length and the middle of it, where it is written. */
export interface LegLength {
  middle: PlanPoint;
  length: number;
}

/** Lengths of the legs of a path, or of a closed outline. */
export function legLengths(places: readonly PlanPoint[], closed: boolean): LegLength[] {
  const legs: LegLength[] = [];
  places.forEach((a, i) => {
    const b = places[i + 1] ?? (closed ? places[0] : undefined);
    if (b === undefined) return;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    legs.push({ middle: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], length });
  });
  return legs;
}

/**
 * Lengths of the sides that meet at a corner that is dragged, or that a drag puts in; none when the
 * whole thing moves. `corners` are those as the drag began.
 */
export function legsAt(
  { places, closed }: ThingCorners,
  { by, corner, onSide }: Pick<DragMove, "by" | "corner" | "onSide">,
): LegLength[] {
  const from = onSide?.at ?? places[corner ?? -1];
  if (from === undefined) return [];
  const at: PlanPoint = [from[0] + by[0], from[1] + by[1]];
  const last = places.length - 1;
  const index = corner ?? -1;
  const before = onSide === undefined ? index - 1 : onSide.side;
  const after = onSide === undefined ? index + 1 : onSide.side + 1;
  const ends = closed
    ? [places.at(before), places[after > last ? 0 : after]]
    : [before < 0 ? undefined : places[before], places[after]];
  return ends
    .filter((end) => end !== undefined)
    .map((end) => ({
      middle: [(end[0] + at[0]) / 2, (end[1] + at[1]) / 2],
      length: Math.hypot(at[0] - end[0], at[1] - end[1]),
    }));
}
