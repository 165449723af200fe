/** Round heights beside an upright drawing, with a rule across it at each. */
import { ticks } from "../../units/index.js";
import type { UnitSystem } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { GroupMark, Mark } from "../paper.js";
import { textWidth } from "../textWidth.js";
import { INK, PENS, TEXT } from "./pens.js";
import { boxOf, xOf, yOf, type View } from "./view.js";

/** mm between two heights at the least. */
const APART = 7;

function heightsOf({ low, high, up }: View, units: UnitSystem): { at: number; text: string }[] {
  return ticks(low, high, (APART * up) / 1000, units);
}

/** mm that the figures take to the left of the drawing. */
export function axisWidth(view: View, units: UnitSystem): number {
  const widths = heightsOf(view, units).map(({ text }) =>
    textWidth(text, "text", TEXT.small, true),
  );
  return Math.max(0, ...widths) + 2;
}

/** Rules, to be drawn under everything else, and their figures. */
export function axisMarks(view: View, units: UnitSystem): { rules: GroupMark; figures: GroupMark } {
  const layer = words.sheetsSections.layers.heights;
  const [left, , width] = boxOf(view);
  const heights = heightsOf(view, units);
  const rules = heights.map(({ at }): Mark => ({
    kind: "path",
    closed: false,
    pen: PENS.rule,
    lines: [
      [
        [left - 1, yOf(view, at)],
        [left + width, yOf(view, at)],
      ],
    ],
  }));
  const figures = heights.map(({ at, text }): Mark => ({
    kind: "text",
    at: [xOf(view, view.from) - 1.6, yOf(view, at) + 0.65],
    text,
    face: "text",
    size: TEXT.small,
    anchor: "end",
    color: INK,
    tabular: true,
    halo: true,
  }));
  return {
    rules: { kind: "group", layer, marks: rules },
    figures: { kind: "group", layer, marks: figures },
  };
}
