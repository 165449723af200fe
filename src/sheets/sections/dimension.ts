/** Dimension lines: thin, with an oblique stroke at either end, as in ISO 129-1 (recalled). */
import type { Mark, Pen, Spot } from "../paper.js";
import { PENS } from "./pens.js";

/** Half the length of an end's stroke in x and y, mm. */
const STROKE = 0.8;
/** mm that a dimension line goes on beyond its ends. */
const PAST = 0.8;

/** A line from one place to another with a stroke across each end. */
export function dimensionLine(from: Spot, to: Spot, pen: Pen = PENS.thin): Mark[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length < 1e-6) return [];
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const line: Spot[] = [
    [from[0] - ux * PAST, from[1] - uy * PAST],
    [to[0] + ux * PAST, to[1] + uy * PAST],
  ];
  const stroke = ([x, y]: Spot): Spot[] => [
    [x - STROKE, y + STROKE],
    [x + STROKE, y - STROKE],
  ];
  return [
    { kind: "path", lines: [line], closed: false, pen },
    { kind: "path", lines: [stroke(from), stroke(to)], closed: false, pen: PENS.pipe },
  ];
}
