/** Legend and title below a view, and what the view is not. */
import { schemeOf, STAGE_NAMES } from "../../estimate/index.js";
import type { Stage } from "../../estimate/index.js";
import { layer, textWidth, wrapText } from "../../sheets/index.js";
import type { Face, Mark, Spot } from "../../sheets/index.js";
import { words } from "../../words/index.js";
import type { HandoverJob } from "../job.js";
import { MARGIN, WIDTH } from "./fit.js";

const INK = "#26323a";
const SAMPLE = { width: 7, height: 3.2, gap: 2, apart: 6, row: 5.4, size: 3 };
const TITLE = 5;
const TEXT = { size: 3, row: 4.2 };

const says = words.pictures.view;

/** The marks below `top` mm, and where they end. `rows` are names and colours of the legend. */
export function footMarks(
  job: HandoverJob,
  stage: Stage,
  rows: readonly (readonly [name: string, colour: string])[],
  top: number,
): { marks: Mark[]; bottom: number } {
  const legend = legendMarks(rows, top + 5);
  let y = legend.bottom + 4;
  const title: Mark[] = [{ ...lineOf([MARGIN, y], [WIDTH - MARGIN, y]) }];
  const write = (text: string, face: Face, size: number, down: number): void => {
    for (const part of wrapText(text, face, size, WIDTH - 2 * MARGIN)) {
      y += down;
      title.push(textOf(part, [MARGIN, y], face, size));
    }
  };
  const { site, schemeId, madeAt } = job;
  write(site.name, "heading", TITLE, 7);
  const scheme = schemeOf(site, schemeId).name;
  write(says.subtitle(scheme, STAGE_NAMES[stage], madeAt.slice(0, 10)), "text", TEXT.size, 5);
  write(says.notToScale, "text", TEXT.size, TEXT.row);
  const { madeBy, estimateOnly } = words.handoverFiles;
  write(`${madeBy}. ${estimateOnly}`, "text", TEXT.size, TEXT.row);
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
  rows: readonly (readonly [string, string])[],
  top: number,
): { marks: Mark[]; bottom: number } {
  let [x, y] = [MARGIN, top];
  const marks = rows.flatMap(([name, color]): Mark[] => {
    const wide = SAMPLE.width + SAMPLE.gap + textWidth(name, "text", SAMPLE.size);
    if (x > MARGIN && x + wide > WIDTH - MARGIN) [x, y] = [MARGIN, y + SAMPLE.row];
    const [left, right] = [x, x + SAMPLE.width];
    x += wide + SAMPLE.apart;
    const corners: Spot[] = [
      [left, y],
      [right, y],
      [right, y + SAMPLE.height],
      [left, y + SAMPLE.height],
    ];
    const pen = { width: 0.18, color: INK };
    return [
      { kind: "path", lines: [corners], closed: true, fill: { color }, pen },
      textOf(name, [right + SAMPLE.gap, y + 2.7], "text", SAMPLE.size),
    ];
  });
  return { marks, bottom: y + SAMPLE.height };
}
