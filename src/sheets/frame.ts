/** What stands around every drawing: frame, title block along the lower edge, legend at the right. */
import type { Site } from "../site/index.js";
import { words as texts } from "../words/index.js";
import { legendMarks, legendWidth } from "./legend.js";
import {
  PAPERS,
  type LegendRow,
  type Mark,
  type Page,
  type PaperId,
  type Room,
  type SheetContent,
  type SheetJob,
  type Spot,
} from "./paper.js";
import { scaleBarMarks, scaleInWords, scaleRatio } from "./scale.js";
import { box, GREY, INK, layer, PENS, rule, words } from "./strokes.js";
import { fitText, wrapText } from "./textWidth.js";

/** From the paper's edge to the frame, mm: more than any printer leaves white. */
export const MARGIN = 10;
/** Height of the title block with the line of reserve below it, mm. */
export const TITLE_HEIGHT = 27;
const RESERVE_HEIGHT = 4.4;
/** Between frame and drawing, mm. */
const PAD = 3;
const CELL_PAD = 2;

/** All that frame and title block leave. */
function spaceOf(paper: PaperId): Room {
  const { width, height } = PAPERS[paper];
  return {
    left: MARGIN,
    top: MARGIN,
    width: width - 2 * MARGIN,
    height: height - 2 * MARGIN - TITLE_HEIGHT,
  };
}

/** The room for a drawing beside a legend of these rows. */
export function roomOf(paper: PaperId, legend: readonly LegendRow[]): Room {
  const { left, top, width, height } = spaceOf(paper);
  return {
    left: left + PAD,
    top: top + PAD,
    width: width - legendWidth(legend, height) - 2 * PAD,
    height: height - 2 * PAD,
  };
}

/** A content with its frame, as sheet `number` of `of`. */
export function framedPage(job: SheetJob, content: SheetContent, number: number, of: number): Page {
  const { width, height } = PAPERS[job.paper];
  return {
    id: content.id,
    title: content.title,
    number,
    scale: content.scale === "text" ? null : content.scale,
    window: content.window ?? null,
    width,
    height,
    marks: [
      // A layer by itself, since a plan can be moved inside its frame.
      layer("Drawing", [...content.marks]),
      ...legendMarks(content.legend, spaceOf(job.paper)),
      layer("Frame", frameMarks(width, height)),
      layer("Title block", titleBlock(job, content, number, of)),
    ],
  };
}

function frameMarks(width: number, height: number): Mark[] {
  return [
    box(MARGIN, MARGIN, width - 2 * MARGIN, height - 2 * MARGIN, { pen: PENS.heavy }),
    rule(
      MARGIN,
      height - MARGIN - TITLE_HEIGHT,
      width - MARGIN,
      height - MARGIN - TITLE_HEIGHT,
      PENS.thick,
    ),
  ];
}

/** A part of the title block: its left edge, width, and where it begins and ends in height. */
interface Cell {
  left: number;
  width: number;
  top: number;
  height: number;
}

function titleBlock(job: SheetJob, content: SheetContent, number: number, of: number): Mark[] {
  const paper = PAPERS[job.paper];
  const top = paper.height - MARGIN - TITLE_HEIGHT;
  const height = TITLE_HEIGHT - RESERVE_HEIGHT;
  const fixed = {
    drawn: 40,
    scale: content.scale === "text" ? 0 : 54,
    north: content.north === null ? 0 : 17,
    sheet: 24,
  };
  const free = paper.width - 2 * MARGIN - fixed.drawn - fixed.scale - fixed.north - fixed.sheet;
  const widths = [0.56 * free, 0.44 * free, ...Object.values(fixed)];
  let left = MARGIN;
  const cells = widths.map((width): Cell => {
    const cell = { left, width, top, height };
    left += width;
    return cell;
  });
  const [project, title, drawn, scale, north, sheet] = cells as [
    Cell,
    Cell,
    Cell,
    Cell,
    Cell,
    Cell,
  ];
  const rules = cells
    .slice(1)
    .filter(({ width }) => width > 0)
    .map((cell) => rule(cell.left, top, cell.left, top + height, PENS.thin));
  const foot = top + height;
  return [
    ...rules,
    rule(MARGIN, foot, paper.width - MARGIN, foot, PENS.thin),
    words(
      fitText(texts.sheets.reserve, "text", 2.1, paper.width - 2 * MARGIN - 2 * CELL_PAD),
      [MARGIN + CELL_PAD, foot + 3],
      "text",
      2.1,
    ),
    ...projectCell(job, project),
    ...titleCell(content.title, title),
    ...drawnCell(job, drawn),
    ...scaleCell(job.site, content, scale),
    ...(content.north === null ? [] : northCell(content.north, north)),
    ...sheetCell(number, of, sheet),
  ];
}

function projectCell({ site, schemeId }: SheetJob, cell: Cell): Mark[] {
  const room = cell.width - 2 * CELL_PAD;
  const scheme = site.schemes.find(({ id }) => id === schemeId);
  const { parcel, owner, place } = site.project ?? {};
  const lines = [
    scheme?.name,
    parcel === undefined ? undefined : texts.sheets.parcel(parcel),
    owner,
    place,
  ].filter((text) => text !== undefined && text !== "");
  return [
    words(fitText(site.name, "heading", 4.6, room), spotIn(cell, 5.6), "heading", 4.6),
    ...lines.map((text, i) =>
      words(fitText(text ?? "", "text", 2.4, room), spotIn(cell, 9.9 + 3.5 * i), "text", 2.4),
    ),
  ];
}

function titleCell(title: string, cell: Cell): Mark[] {
  const size = 4.6;
  const lines = wrapText(title, "heading", size, cell.width - 2 * CELL_PAD).slice(0, 4);
  return lines.map((text, i) => words(text, spotIn(cell, 5.6 + 5.2 * i), "heading", size));
}

function drawnCell({ site, date }: SheetJob, cell: Cell): Mark[] {
  const { preparer, date: measured } = site.project ?? {};
  const parts = [
    [texts.sheets.drawnBy, preparer ?? "–"],
    [texts.sheets.measured, measured ?? "–"],
    [texts.sheets.printed, date],
  ] as const;
  return parts.flatMap(([label, text], i) => {
    const [x, y] = spotIn(cell, 3.4 + 7 * i);
    return [
      words(label, [x, y], "text", 1.9, { color: GREY }),
      words(fitText(text, "text", 2.4, cell.width - 2 * CELL_PAD), [x, y + 3], "text", 2.4),
    ];
  });
}

function scaleCell(site: Site, { scale, scaleNote }: SheetContent, cell: Cell): Mark[] {
  if (scale === "text") return [];
  const label = words(texts.sheets.scale, spotIn(cell, 3.4), "text", 1.9, { color: GREY });
  const note =
    scaleNote === undefined
      ? []
      : [
          words(
            fitText(scaleNote, "text", 2.2, cell.width - 2 * CELL_PAD),
            spotIn(cell, 11.2),
            "text",
            2.2,
          ),
        ];
  if (scale === null) {
    const said = scaleNote ?? texts.sheets.notToScale;
    return [label, words(said, spotIn(cell, 7.4), "strong", scaleNote === undefined ? 3.2 : 2.6)];
  }
  const said = `${scaleInWords(scale, site.units)}  (${scaleRatio(scale)})`;
  return [
    label,
    words(
      fitText(said, "strong", 3.2, cell.width - 2 * CELL_PAD),
      spotIn(cell, 7.4),
      "strong",
      3.2,
    ),
    ...note,
    ...scaleBarMarks(
      scale,
      site.units,
      [cell.left + CELL_PAD, cell.top + cell.height - 2],
      cell.width - 2 * CELL_PAD - 5,
    ),
  ];
}

/** An arrow whose right half is dark; the letter stands beyond its tip, upright. */
function northCell(turn: number, cell: Cell): Mark[] {
  const [x, y] = [cell.left + cell.width / 2, cell.top + cell.height / 2];
  const angle = (turn * Math.PI) / 180;
  const turned = (u: number, v: number): Spot => [
    x + u * Math.cos(angle) - v * Math.sin(angle),
    y + u * Math.sin(angle) + v * Math.cos(angle),
  ];
  const [tip, foot, left, right] = [
    turned(0, -5.5),
    turned(0, 4.5),
    turned(-2.6, 7),
    turned(2.6, 7),
  ];
  const letter = turned(0, -8);
  return [
    layer("North", [
      { kind: "path", lines: [[tip, left, foot]], closed: true, pen: PENS.thin },
      {
        kind: "path",
        lines: [[tip, right, foot]],
        closed: true,
        pen: PENS.thin,
        fill: { color: INK },
      },
      words(texts.sheets.north, [letter[0], letter[1] + 1.2], "strong", 3.4, { anchor: "middle" }),
    ]),
  ];
}

function sheetCell(number: number, of: number, cell: Cell): Mark[] {
  const middle = cell.left + cell.width / 2;
  return [
    words(texts.sheets.sheetOf, spotIn(cell, 3.4), "text", 1.9, { color: GREY }),
    words(texts.sheets.numberOf(number, of), [middle, cell.top + 14], "strong", 5, {
      anchor: "middle",
    }),
  ];
}

/** At the left of a cell, `down` mm below its top. */
function spotIn({ left, top }: Cell, down: number): Spot {
  return [left + CELL_PAD, top + down];
}
