/** Kinds of line on a plan: a pen, and letters, arrows or ticks along it. mm. */
import type { Mark, Pen, Spot } from "../paper.js";
import { INK, TYPE } from "./pens.js";
import { readingTurn, Way } from "./way.js";

export interface LineStyle {
  pen: Pen;
  /** Set into the line every now and then. */
  letter?: string;
  /** Heads that point along the line. */
  arrows?: boolean;
  /** Short strokes across the line, to both sides. */
  ticks?: boolean;
}

/** mm from one letter, arrowhead or tick on a line to the next. */
export const LETTER_EVERY = 24;
const ARROW_EVERY = 20;
const TICK_EVERY = 5;
const TICK = 0.8;
/** Shorter lines carry none of them. */
const SHORTEST = 4;

/** The marks of a line, but for its letters, which are placed with the other lettering. */
export function lineMarks(line: readonly Spot[], { pen, arrows, ticks }: LineStyle): Mark[] {
  const marks: Mark[] = [{ kind: "path", lines: [line], closed: false, pen }];
  const way = new Way(line);
  if (way.length < SHORTEST) return marks;
  if (ticks === true) marks.push(ticksAlong(way, pen));
  if (arrows === true) {
    marks.push(...way.stationsEvery(ARROW_EVERY).map((station) => arrowHead(way, station, pen)));
  }
  return marks;
}

/** Degrees clockwise and spots of a line's letters; none on a line that is too short. */
export function letterSpots(line: readonly Spot[]): { at: Spot; turn: number }[] {
  const way = new Way(line);
  if (way.length < SHORTEST) return [];
  return way.stationsEvery(LETTER_EVERY).map((station) => {
    const { at, along } = way.at(station);
    return { at, turn: readingTurn(along) };
  });
}

/** A sample of a line for the legend's box of 10 × 4 mm. */
export function lineSample(style: LineStyle): Mark[] {
  const pen = { ...style.pen, ...(style.pen.dash && { dash: shortDash(style.pen.dash) }) };
  const marks = lineMarks(
    [
      [0.3, 2],
      [9.7, 2],
    ],
    { ...style, pen },
  );
  if (style.letter === undefined) return marks;
  const size = TYPE.small;
  return [
    ...marks,
    {
      ...{ kind: "text", at: [5, 2 + 0.36 * size], text: style.letter, face: "strong", size },
      ...{ anchor: "middle", color: style.pen.color, halo: true },
    },
  ];
}

/** A dash of which the sample shows all. */
function shortDash(dash: readonly number[]): number[] {
  const sum = dash.reduce((a, b) => a + b, 0);
  return dash.map((each) => each * Math.min(1, SAMPLE / sum));
}

/** mm of dash that a sample has room for. */
const SAMPLE = 8;

function arrowHead(way: Way, station: number, pen: Pen): Mark {
  const { at, along } = way.at(station);
  return headMark(at, along, 2, { color: pen.color });
}

/** A filled head with its tip `length`/2 ahead of a spot, pointing along. */
export function headMark(
  [x, y]: Spot,
  [dx, dy]: Spot,
  length: number,
  { color }: { color: string } = INK_FILL,
): Mark {
  const half = length / 2;
  const wide = length * 0.32;
  const place = (ahead: number, aside: number): Spot => [
    x + ahead * dx - aside * dy,
    y + ahead * dy + aside * dx,
  ];
  return {
    kind: "path",
    lines: [[place(half, 0), place(-half, wide), place(-half, -wide)]],
    closed: true,
    fill: { color },
  };
}

const INK_FILL = { color: INK.black };

function ticksAlong(way: Way, pen: Pen): Mark {
  const lines = way.stationsEvery(TICK_EVERY).map((station): Spot[] => {
    const { at, along } = way.at(station);
    const [nx, ny] = [-along[1] * TICK, along[0] * TICK];
    return [
      [at[0] - nx, at[1] - ny],
      [at[0] + nx, at[1] + ny],
    ];
  });
  return { kind: "path", lines, closed: false, pen: { width: pen.width, color: pen.color } };
}
