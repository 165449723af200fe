/** Legend and title below a view, and what the view is not. */
import { schemeOf, STAGE_NAMES } from "../../estimate/index.js";
import type { Stage } from "../../estimate/index.js";
import { layer, textWidth, wrapText } from "../../sheets/index.js";
import type { Face, Mark, Spot } from "../../sheets/index.js";
import { words } from "../../words/index.js";
import type { HandoverJob } from "../job.js";
import type { LegendRow } from "./drawView.js";
import { MARGIN } from "./fit.js";

const INK = "#26323a";
const SAMPLE = { width: 7, height: 3.2, gap: 2, apart: 6, row: 5.4, size: 3 };
const TITLE = 5;
const TEXT = { size: 3, row: 4.2 };

const says = words.pictures.view;

/** The marks below `top` mm on a page so many mm wide, and where they end. */
export function footMarks(
  job: HandoverJob,
  stage: Stage,
  rows: readonly LegendRow[],
  { top, page, note }: { top: number; page: number; note: string | null },
): { marks: Mark[]; bottom: number } {
  const legend = legendMarks(rows, top + 5, page);
  let y = legend.bottom + 4;
  const title: Mark[] = [{ ...lineOf([MARGIN, y], [page - MARGIN, y]) }];
  const write = (text: string, face: Face, size: number, down: number): void => {
    for (const part of wrapText(text, face, size, page - 2 * MARGIN)) {
      y += down;
      title.push(textOf(part, [MARGIN, y], face, size));
    }
  };
  const { site, schemeId, madeAt } = job;
  write(says.heading(site.name, STAGE_NAMES[stage]), "heading", TITLE, 7);
  const scheme = schemeOf(site, schemeId).name;
  write(says.subtitle(scheme, madeAt.slice(0, 10)), "text", TEXT.size, 5);
  write(says.notToScale, "text", TEXT.size, TEXT.row);
  if (note !== null) write(note, "text", TEXT.size, TEXT.row);
  const { madeBy, estimateOnly } = words.handoverFiles;
  write(`${madeBy}. ${estimateOnly}`, "text", TEXT.size, TEXT.row);
  // A picture goes from hand to hand without the file that has the cautions in full.
  write(words.sheets.reserve, "text", TEXT.size, TEXT.row);
  return {
    marks: [layer(words.sheets.legend, legend.marks), layer(says.title, title)],
    bottom: y + MARGIN,
  };
}

function lineOf(from: Spot, to: Spot): Mark {
  return { kind: "path", lines: [[from, to]], closed: false, pen: { width: 0.25, color: INK } };
}

function textOf(text: string, at: Spot, face: Face, size: number): Mark {
  return { kind: "text", at, text, face, size, anchor: "start", color: INK };
}

/** Samples with their names, in rows from the left. */
function legendMarks(
  rows: readonly LegendRow[],
  top: number,
  page: number,
): { marks: Mark[]; bottom: number } {
  let [x, y] = [MARGIN, top];
  const marks = rows.flatMap((row): Mark[] => {
    const wide = SAMPLE.width + SAMPLE.gap + textWidth(row.name, "text", SAMPLE.size);
    if (x > MARGIN && x + wide > page - MARGIN) [x, y] = [MARGIN, y + SAMPLE.row];
    const right = x + SAMPLE.width;
    const sample = sampleOf(row, [x, y]);
    x += wide + SAMPLE.apart;
    return [sample, textOf(row.name, [right + SAMPLE.gap, y + 2.7], "text", SAMPLE.size)];
  });
  return { marks, bottom: y + SAMPLE.height };
}

/** A box of a colour, or a stretch of a line, from its upper left corner. */
function sampleOf(row: LegendRow, [left, top]: Spot): Mark {
  const [right, bottom] = [left + SAMPLE.width, top + SAMPLE.height];
  if ("pen" in row) {
    const y = (top + bottom) / 2;
    return {
      kind: "path",
      lines: [[[left, y] as Spot, [right, y] as Spot]],
      closed: false,
      pen: row.pen,
    };
  }
  const corners: Spot[] = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
  const pen = { width: 0.18, color: INK };
  return { kind: "path", lines: [corners], closed: true, fill: { color: row.color }, pen };
}
