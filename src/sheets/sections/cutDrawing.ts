/** One section on paper: ground and works, their levels, dimensions and wall slopes. */
import type { Estimate } from "../../estimate/index.js";
import type { Site } from "../../site/index.js";
import { elevation } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { Fill, GroupMark, Mark, Spot } from "../paper.js";
import { textWidth } from "../textWidth.js";
import { axisMarks, axisWidth } from "./axis.js";
import type { CutData } from "./cutData.js";
import { acrossDimensions, besideDimensions, besideWidth } from "./cutDimensions.js";
import { cutNames } from "./cutNames.js";
import type { Level } from "./cutLevels.js";
import { earthMarks, surfaceMarks } from "./earth.js";
import { crossPipes, sidePipes } from "./sectionPipes.js";
import { FAINT, INK, PENS, TEXT } from "./pens.js";
import { spreadInRow } from "./spread.js";
import { boxOf, lineOf, xOf, yOf, type View } from "./view.js";

export interface CutAsk {
  site: Site;
  estimate: Estimate;
  data: CutData;
  fills: ReadonlyMap<string, Fill>;
  /** n of 1 : n, along and up alike. */
  scale: number;
  /** mm: its upper left corner. */
  left: number;
  top: number;
}

export interface DrawnCut {
  /** mm. */
  width: number;
  height: number;
  marks: Mark[];
}

const HEAD = 12;
/** mm to the right of the ground before the levels' figures, and what a level takes upright. */
const TO_LEVELS = 5;
const LEVEL = 2.9;
const END = 1;

export function cutDrawing(ask: CutAsk): DrawnCut {
  const { site, data, scale, left, top } = ask;
  const { cut, finished } = data;
  const plain: View = {
    left,
    top: top + HEAD,
    from: 0,
    to: finished.length,
    high: data.high,
    low: data.low,
    along: scale,
    up: scale,
  };
  const margin = besideWidth(ask) + axisWidth(plain, site.units) + 1;
  const view = { ...plain, left: left + margin };
  const [, , wide, tall] = boxOf(view);
  const levels = levelMarks(data.levels, site, view);
  const below = acrossDimensions(ask, view, view.top + tall + 3);
  const head = headMarks(ask);
  return {
    width: Math.max(margin + wide + TO_LEVELS + levels.width + END, head.width),
    height: HEAD + Math.max(tall + 3 + below.height, levels.height),
    marks: [
      ...head.marks,
      ...groundMarks(ask, view),
      letterMarks(cut.letter, view),
      levels.marks,
      ...besideDimensions(ask, view),
      below.marks,
      axisMarks(view, site.units).figures,
      ...cutNames(ask, view),
    ],
  };
}

function headMarks({ data, left, top }: CutAsk): { width: number; marks: Mark[] } {
  const { cut: texts } = words.sheetsSections;
  const { letter, work, way, line } = data.cut;
  const title = texts.heading(letter, work.name, texts[way]);
  const looks = texts.looking(windOf(line));
  const walls = work.kind === "tank" ? texts.makersTank : "";
  const said = walls === "" ? looks : `${looks}. ${walls}`;
  return {
    width: Math.max(textWidth(title, "heading", TEXT.title), textWidth(said, "text", TEXT.small)),
    marks: [
      textAt([left, top + 3.2], title, "heading", TEXT.title, "start"),
      textAt([left, top + 6.6], said, "text", TEXT.small, "start"),
    ],
  };
}

/** Which of eight winds one looks to, who sees the line go from left to right. */
function windOf([from, to]: CutData["cut"]["line"]): string {
  const bearing = (Math.atan2(to[0] - from[0], to[1] - from[1]) * 180) / Math.PI - 90;
  const eighth = Math.round((((bearing % 360) + 360) % 360) / 45) % 8;
  return words.sheetsSections.winds[eighth]!;
}

function groundMarks({ site, data, fills }: CutAsk, view: View): Mark[] {
  const { finished, dug } = data;
  const { layers } = words.sheetsSections;
  const { rules } = axisMarks(view, site.units);
  const tops = data.rockTops.map((line): Mark => ({
    kind: "path",
    lines: [lineOf(view, line)],
    closed: false,
    pen: PENS.rockTop,
  }));
  const [left, top, width, height] = boxOf(view);
  const frame: Spot[] = [
    [left, top],
    [left, top + height],
    [left + width, top + height],
    [left + width, top],
  ];
  return [
    rules,
    earthMarks([...finished.areas, ...finished.standing], fills, view),
    { kind: "group", layer: layers.rock, clip: boxOf(view), marks: tops },
    surfaceMarks(finished.found, PENS.found, layers.found, view),
    surfaceMarks(dug.surface, PENS.dug, layers.dug, view),
    surfaceMarks(finished.surface, PENS.ground, layers.finished, view),
    {
      kind: "group",
      layer: layers.pipes,
      clip: boxOf(view),
      marks: [...sidePipes(finished.pipesAlong, view), ...crossPipes(finished.pipes, view)],
    },
    { kind: "path", lines: [frame], closed: false, pen: PENS.frame },
  ];
}

/** The section's letter at either end, as on the plan. */
function letterMarks(letter: string, view: View): GroupMark {
  const [left, top, width] = boxOf(view);
  const marks = [
    textAt([left, top - 1], letter, "strong", TEXT.title, "middle"),
    textAt([left + width, top - 1], `${letter}′`, "strong", TEXT.title, "middle"),
  ];
  return { kind: "group", layer: words.sheetsSections.layers.names, marks };
}

/** Figures of the levels in a column to the right, each led to from what it is the level of. */
function levelMarks(
  levels: readonly Level[],
  { units }: Pick<Site, "units">,
  view: View,
): { width: number; height: number; marks: GroupMark } {
  const right = xOf(view, view.to);
  const [, top, , tall] = boxOf(view);
  const texts = levels.map(
    ({ height, name }) => `${elevation.print(height, units, { bare: true })}  ${name}`,
  );
  const rows = spreadInRow(
    levels.map(({ height }) => ({ at: yOf(view, height), size: LEVEL })),
    0,
    top,
    Math.max(top + tall, top + levels.length * LEVEL),
  );
  const marks = levels.flatMap((level, i): Mark[] => {
    const y = yOf(view, level.height);
    const row = rows[i]!;
    const lead: Spot[] = [
      [Math.max(xOf(view, level.from), view.left), y],
      [right, y],
      [right + TO_LEVELS - 1, row],
    ];
    return [
      { kind: "path", lines: [lead], closed: false, pen: { ...PENS.thin, color: FAINT } },
      ...(level.water ? waterSign(level, level.water, view) : []),
      {
        ...textAt([right + TO_LEVELS, row + 0.75], texts[i]!, "text", TEXT.small, "start"),
        tabular: true,
      },
    ];
  });
  return {
    width: Math.max(0, ...texts.map((text) => textWidth(text, "text", TEXT.small, true))),
    height: Math.max(tall, ...rows.map((row) => row + LEVEL / 2 - top)),
    marks: { kind: "group", layer: words.sheetsSections.layers.heights, marks },
  };
}

/** A water level: a dashed line with a triangle on it. */
function waterSign({ height }: Level, [from, to]: readonly [number, number], view: View): Mark[] {
  const y = yOf(view, height);
  const [left, right] = [
    Math.max(xOf(view, from), view.left),
    Math.min(xOf(view, to), xOf(view, view.to)),
  ];
  const x = left + (right - left) * 0.22;
  const sign: Spot[] = [
    [x, y],
    [x - 1, y - 1.7],
    [x + 1, y - 1.7],
  ];
  return [
    {
      kind: "path",
      lines: [
        [
          [left, y],
          [right, y],
        ],
      ],
      closed: false,
      pen: PENS.water,
    },
    { kind: "path", lines: [sign], closed: true, pen: PENS.thin, fill: { color: "#ffffff" } },
  ];
}

function textAt(
  at: Spot,
  text: string,
  face: "text" | "strong" | "heading",
  size: number,
  anchor: "start" | "middle" | "end",
): Mark & { kind: "text" } {
  return { kind: "text", at, text, face, size, anchor, color: INK };
}
