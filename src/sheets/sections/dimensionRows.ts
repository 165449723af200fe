/** Rows of dimensions beside and under an upright drawing. */
import { length } from "../../units/index.js";
import type { UnitSystem } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { GroupMark, Mark, Spot } from "../paper.js";
import { textWidth } from "../textWidth.js";
import { dimensionLine } from "./dimension.js";
import { FAINT, INK, PENS, TEXT } from "./pens.js";
import { spreadInRow } from "./spread.js";
import { boxOf, xOf, yOf, type View } from "./view.js";

/** A size between two heights or two stations, m. */
export interface Span {
  from: number;
  to: number;
  /** What it is the size of; empty for nothing. */
  name: string;
}

/** mm: what a figure takes upright, and a row of dimensions. */
const LEVEL = 2.9;
const ROW = 6;

function sayOf({ from, to, name }: Span, units: UnitSystem): string {
  const long = length.print(to - from, units);
  return name === "" ? long : words.sheetsSections.cut.sized(long, name);
}

/** mm that upright sizes take to the left of what they measure. */
export function besideWidth(spans: readonly Span[], units: UnitSystem): number {
  const said = spans.map((span) => textWidth(sayOf(span, units), "text", TEXT.small));
  return said.length === 0 ? 0 : Math.max(...said) + 6;
}

/**
 * Sizes upright on one dimension line, `off` mm to the left of the view, their figures to its left.
 * @param spans from below to above, none over another
 */
export function besideMarks(
  spans: readonly Span[],
  units: UnitSystem,
  view: View,
  off: number,
): Mark[] {
  if (spans.length === 0) return [];
  const x = view.left - off;
  const [, top, , tall] = boxOf(view);
  // From above to below on paper.
  const down = [...spans].reverse();
  const rows = spreadInRow(
    down.map(({ from, to }) => ({ at: yOf(view, (from + to) / 2), size: LEVEL })),
    0,
    top,
    top + tall,
  );
  const marks = down.flatMap((span, i): Mark[] => {
    const [foot, head] = [yOf(view, span.from), yOf(view, span.to)];
    const extensions: Spot[][] = [foot, head].map((y): Spot[] => [
      [x - 1, y],
      [view.left, y],
    ]);
    return [
      { kind: "path", lines: extensions, closed: false, pen: { ...PENS.thin, color: FAINT } },
      ...dimensionLine([x, foot], [x, head]),
      textAt([x - 2.2, rows[i]! + 0.75], sayOf(span, units), "end"),
    ];
  });
  return [group(marks)];
}

/** mm that rows of sizes across take. */
export const acrossHeight = (rows: readonly unknown[]): number => rows.length * ROW;

/** Sizes across under the view, each row on a dimension line of its own, the first at `top` mm. */
export function acrossMarks(
  rows: readonly (readonly Span[])[],
  units: UnitSystem,
  view: View,
  top: number,
): GroupMark {
  const right = xOf(view, view.to);
  const marks = rows.flatMap((spans, row) => {
    const y = top + row * ROW + 3.4;
    const said = spans.map((span) => sayOf(span, units));
    const middles = spreadInRow(
      spans.map(({ from, to }, i) => ({
        at: xOf(view, (from + to) / 2),
        size: textWidth(said[i]!, "text", TEXT.small),
      })),
      1.6,
      view.left - 12,
      right + 12,
    );
    return spans.flatMap((span, i): Mark[] => [
      ...dimensionLine([xOf(view, span.from), y], [xOf(view, span.to), y]),
      textAt([middles[i]!, y - 1], said[i]!, "middle"),
    ]);
  });
  return group(marks);
}

const group = (marks: readonly Mark[]): GroupMark => ({
  kind: "group",
  layer: words.sheetsSections.layers.dimensions,
  marks,
});

function textAt(at: Spot, text: string, anchor: "middle" | "end"): Mark {
  return { kind: "text", at, text, face: "text", size: TEXT.small, anchor, color: INK };
}
