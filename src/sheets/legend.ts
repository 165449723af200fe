/** The legend in columns at the right of a sheet. */
import { words as texts } from "../words/index.js";
import { movedMarks } from "./moved.js";
import type { LegendRow, Mark, Room } from "./paper.js";
import { layer, PENS, rule, words } from "./strokes.js";
import { wrapText } from "./textWidth.js";

const COLUMN = 52;
const PAD = 3;
const SAMPLE = { width: 10, height: 4 };
const NAME = { size: 2.3, step: 2.9, left: PAD + SAMPLE.width + 2.5 };
const HEAD = 8;

interface SetRow {
  row: LegendRow;
  lines: readonly string[];
  column: number;
  /** Below the top of the room, mm. */
  top: number;
}

/** How wide a legend of these rows is where the sheet leaves `height` mm; 0 for no rows. */
export function legendWidth(rows: readonly LegendRow[], height: number): number {
  return COLUMN * columnsOf(setRows(rows, height));
}

function columnsOf(set: readonly SetRow[]): number {
  return set.length === 0 ? 0 : 1 + Math.max(...set.map(({ column }) => column));
}

function setRows(rows: readonly LegendRow[], height: number): SetRow[] {
  let column = 0;
  let top = HEAD;
  return rows.map((row): SetRow => {
    const lines = wrapText(row.name, "text", NAME.size, COLUMN - NAME.left - PAD);
    const tall = Math.max(SAMPLE.height, NAME.step * lines.length) + 1.6;
    if (top + tall > height && top > HEAD) {
      column++;
      top = HEAD;
    }
    const set = { row, lines, column, top };
    top += tall;
    return set;
  });
}

/** The legend's marks; `space` is all that frame and title block leave, and the legend its right edge. */
export function legendMarks(rows: readonly LegendRow[], space: Room): Mark[] {
  const set = setRows(rows, space.height);
  if (set.length === 0) return [];
  const left = space.left + space.width - COLUMN * columnsOf(set);
  const border = rule(left, space.top, left, space.top + space.height, PENS.thin);
  const head = words(texts.sheets.legend, [left + PAD, space.top + 5.4], "heading", 3.6);
  return [
    layer(texts.sheets.legend, [border, head, ...set.flatMap((one) => rowMarks(one, left, space))]),
  ];
}

function rowMarks({ row, lines, column, top }: SetRow, left: number, space: Room): Mark[] {
  const x = left + column * COLUMN;
  const y = space.top + top;
  // A single line stands level with the middle of its sample.
  const first = y + (lines.length === 1 ? SAMPLE.height / 2 + 0.36 * NAME.size : 0.76 * NAME.size);
  return [
    ...movedMarks(row.sample, x + PAD, y),
    ...lines.map((text, i) =>
      words(text, [x + NAME.left, first + i * NAME.step], "text", NAME.size),
    ),
  ];
}
