/** What a drawing is told of in a column to its right, each led to from its height. */
import { words } from "../../words/index.js";
import type { GroupMark, Mark, Spot } from "../paper.js";
import { textWidth, wrapText } from "../textWidth.js";
import { FAINT, INK, PENS, TEXT } from "./pens.js";
import { spreadInRow } from "./spread.js";
import { boxOf, xOf, yOf, type View } from "./view.js";

export interface Callout {
  /** Elevation of what is told of, m, and the station from which the line leads. */
  height: number;
  from: number;
  text: string;
  /** A water level is drawn with its sign, from one station to another. */
  water?: readonly [number, number];
}

/** mm from the drawing to the texts, and between two base lines. */
const OFF = 5;
const LINE = 2.7;
/** mm that a text is broken at. */
const BROAD = 70;

interface Laid {
  lines: readonly (readonly string[])[];
  sizes: readonly number[];
  width: number;
  height: number;
}

function laidOut(callouts: readonly Callout[], view: View, broad: number): Laid {
  const [, , , tall] = boxOf(view);
  const lines = callouts.map(({ text }) => wrapText(text, "text", TEXT.small, broad));
  const sizes = lines.map((each) => each.length * LINE + 0.3);
  const all = sizes.reduce((sum, size) => sum + size, 0);
  const widths = lines.flat().map((text) => textWidth(text, "text", TEXT.small, true));
  return {
    lines,
    sizes,
    width: OFF + Math.max(0, ...widths),
    height: Math.max(tall, all),
  };
}

/** mm that callouts take to the right of the view, and from its upper edge down. */
export function calloutSize(
  callouts: readonly Callout[],
  view: View,
  broad = BROAD,
): { width: number; height: number } {
  const { width, height } = laidOut(callouts, view, broad);
  return { width, height };
}

/** Callouts from the top down, each on as many lines as it takes, broken at `broad` mm. */
export function calloutMarks(callouts: readonly Callout[], view: View, broad = BROAD): GroupMark {
  const right = xOf(view, view.to);
  const [, top] = boxOf(view);
  const { lines, sizes, height } = laidOut(callouts, view, broad);
  const middles = spreadInRow(
    callouts.map((callout, i) => ({ at: yOf(view, callout.height), size: sizes[i]! })),
    0,
    top,
    top + height,
  );
  let waters = 0;
  const marks = callouts.flatMap((callout, i): Mark[] => {
    const y = yOf(view, callout.height);
    const first = middles[i]! - ((lines[i]!.length - 1) * LINE) / 2;
    const lead: Spot[] = [
      [Math.max(xOf(view, callout.from), view.left), y],
      [right, y],
      [right + OFF - 1, first],
    ];
    return [
      { kind: "path", lines: [lead], closed: false, pen: { ...PENS.thin, color: FAINT } },
      ...(callout.water ? waterSign(callout.height, callout.water, view, waters++) : []),
      ...lines[i]!.map((text, k): Mark => ({
        kind: "text",
        at: [right + OFF, first + k * LINE + 0.75],
        text,
        face: "text",
        size: TEXT.small,
        anchor: "start",
        color: INK,
        tabular: true,
      })),
    ];
  });
  return { kind: "group", layer: words.sheetsSections.layers.heights, marks };
}

/** A water level: a dashed line with a triangle on it, each further along than the one before. */
function waterSign(
  height: number,
  [from, to]: readonly [number, number],
  view: View,
  before: number,
): Mark[] {
  const y = yOf(view, height);
  const left = Math.max(xOf(view, from), view.left);
  const right = Math.min(xOf(view, to), xOf(view, view.to));
  const x = left + (right - left) * (0.14 + 0.17 * (before % 5));
  const level: Spot[] = [
    [left, y],
    [right, y],
  ];
  const sign: Spot[] = [
    [x, y],
    [x - 1, y - 1.7],
    [x + 1, y - 1.7],
  ];
  return [
    { kind: "path", lines: [level], closed: false, pen: PENS.water },
    { kind: "path", lines: [sign], closed: true, pen: PENS.thin, fill: { color: "#ffffff" } },
  ];
}
