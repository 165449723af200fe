/** Dimensions on a plan: a thin line between two places with heads at both ends and its figure. mm. */
import type { PlanPoint } from "../../site/index.js";
import type { Mark, Pen, Spot } from "../paper.js";
import { clipLine, inRoom } from "./clip.js";
import { headMark, lineSample } from "./lineStyle.js";
import { PENS, TYPE } from "./pens.js";
import { RANK, WEIGHT, type PlanDrawing } from "./planDrawing.js";
import { seatsAlong } from "./seats.js";
import { tagMarks, taggedLine } from "./tag.js";

export interface Dimension {
  from: PlanPoint;
  to: PlanPoint;
  text: string;
  /** A number that stands in a frame before the text; absent for none. */
  number?: string;
  pen: Pen;
  /** Heads at its ends; else none. */
  heads: boolean;
}

const HEAD = 1.8;

/** Draws a dimension; false where nothing of it shows. */
export function drawDimension(drawing: PlanDrawing, layer: string, dimension: Dimension): boolean {
  const { pen, number, text } = dimension;
  const [a, b] = [drawing.spot(dimension.from), drawing.spot(dimension.to)];
  const [line] = clipLine([a, b], drawing.frame.room);
  if (line === undefined) return false;
  const [start, end] = [line[0]!, line[line.length - 1]!];
  drawing.put(layer, [{ kind: "path", lines: [[start, end]], closed: false, pen }]);
  drawing.keepOff(line, WEIGHT.usual);
  if (dimension.heads) drawing.put(layer, headsOf(drawing, a, b, pen));
  const lettering = {
    lines: [number === undefined ? text : taggedLine(number, text)],
    ...{ size: TYPE.small, color: pen.color },
    face: pen === PENS.wrong ? ("strong" as const) : ("text" as const),
  };
  const seats = [0, 0.5, -0.5].flatMap((off) => seatsAlong([start, end], lettering, off, 9));
  const anchor: Spot = [(start[0] + end[0]) / 2, (start[1] + end[1]) / 2];
  const tag = number !== undefined && { tag: { number, text } };
  drawing.label(RANK.figures, { ...lettering, ...tag, seats, anchor, clear: 0.6, must: true });
  return true;
}

function headsOf({ frame: { room } }: PlanDrawing, a: Spot, b: Spot, { color }: Pen): Mark[] {
  const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (size < 2 * HEAD) return [];
  const along: Spot = [(b[0] - a[0]) / size, (b[1] - a[1]) / size];
  const back: Spot = [-along[0], -along[1]];
  return [[a, back] as const, [b, along] as const].flatMap(([tip, way]) => {
    if (!inRoom(room, tip, HEAD)) return [];
    const middle: Spot = [tip[0] - (way[0] * HEAD) / 2, tip[1] - (way[1] * HEAD) / 2];
    return [headMark(middle, way, HEAD, { color })];
  });
}

/** A sample of a dimension for the legend; with the frame of its number where it has one. */
export function dimensionSample(pen: Pen, heads: boolean, isNumbered = false): Mark[] {
  const ends = heads
    ? [headMark([9.3, 2], [1, 0], HEAD, pen), headMark([0.7, 2], [-1, 0], HEAD, pen)]
    : [];
  const number = isNumbered ? tagMarks([5, 2], "1", pen.color) : [];
  return [...lineSample({ pen }), ...ends, ...number];
}
