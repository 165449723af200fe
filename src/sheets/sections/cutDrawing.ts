/** One section on paper: ground and works, their levels, dimensions and wall slopes. */
import { elevation } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { GroupMark, Mark, Spot } from "../paper.js";
import { BEFORE_BAR, SMALL_BAR, smallScaleBar } from "../scale.js";
import { textWidth } from "../textWidth.js";
import { axisMarks, axisWidth } from "./axis.js";
import type { CutAsk } from "./cutAsk.js";
import type { CutData } from "./cutData.js";
import { calloutMarks, calloutSize, type Callout } from "./callouts.js";
import { acrossSpans, uprightSpans } from "./cutDimensions.js";
import { acrossHeight, acrossMarks, besideMarks, besideWidth, type Span } from "./dimensionRows.js";
import { cutNames } from "./cutNames.js";
import { earthMarks, surfaceMarks } from "./earth.js";
import { crossPipes, sidePipes } from "./sectionPipes.js";
import { INK, PENS, TEXT } from "./pens.js";
import { sayScale } from "./scales.js";
import { boxOf, lineOf, type View } from "./view.js";

export interface DrawnCut {
  /** mm. */
  width: number;
  height: number;
  marks: Mark[];
}

const HEAD = 12;
const END = 1;
/** mm between the ground and the sizes under it. */
const BELOW = 3;
/** mm that levels are broken at: what they leave free is the ground's. */
const BROAD = 25;

/** Where the parts of a section stand, without drawing it. */
interface Laid {
  view: View;
  spans: readonly Span[];
  width: number;
  height: number;
}

function laidOut(ask: CutAsk): Laid {
  const { site, data, scale, left, top } = ask;
  const plain: View = {
    left,
    top: top + HEAD,
    from: 0,
    to: data.finished.length,
    high: data.high,
    low: data.low,
    along: scale,
    up: scale,
  };
  const spans = uprightSpans(ask);
  const margin = besideWidth(spans, site.units) + axisWidth(plain, site.units) + 1;
  const view = { ...plain, left: left + margin };
  const [, , wide, tall] = boxOf(view);
  const levels = calloutSize(levelCallouts(ask), view, BROAD);
  return {
    view,
    spans,
    width: Math.max(margin + wide + levels.width + END, headMarks(ask).width),
    height: HEAD + Math.max(tall + BELOW + acrossHeight(acrossSpans(ask)), levels.height),
  };
}

/** mm of paper that a section takes. */
export function cutSize(ask: CutAsk): { width: number; height: number } {
  const { width, height } = laidOut(ask);
  return { width, height };
}

export function cutDrawing(ask: CutAsk): DrawnCut {
  const { site, data } = ask;
  const { view, spans, width, height } = laidOut(ask);
  const [, , , tall] = boxOf(view);
  return {
    width,
    height,
    marks: [
      ...headMarks(ask).marks,
      ...groundMarks(ask, view),
      letterMarks(data.cut.letter, view),
      calloutMarks(levelCallouts(ask), view, BROAD),
      ...besideMarks(spans, site.units, view, axisWidth(view, site.units) + 2.5),
      acrossMarks(acrossSpans(ask), site.units, view, view.top + tall + BELOW),
      axisMarks(view, site.units).figures,
      ...cutNames(ask, view),
    ],
  };
}

const levelCallouts = ({ data, site }: CutAsk): Callout[] =>
  data.levels.map(({ name, height, ...rest }) => ({
    height,
    text: words.sheetsSections.cut.levelAt(
      elevation.print(height, site.units, { bare: true }),
      name,
    ),
    ...rest,
  }));

function headMarks({ site, data, scale, left, top }: CutAsk): { width: number; marks: Mark[] } {
  const { cut: texts, detail } = words.sheetsSections;
  const { letter, work, way, line } = data.cut;
  const title = texts.heading(letter, work.name, texts[way]);
  const looks = texts.looking(windOf(line));
  const walls = work.kind === "tank" ? texts.makersTank : "";
  const said = detail.toScale(
    sayScale(scale, site.units),
    walls === "" ? looks : `${looks}. ${walls}`,
  );
  const bar = textWidth(title, "heading", TEXT.title) + BEFORE_BAR;
  return {
    width: Math.max(bar + SMALL_BAR, textWidth(said, "text", TEXT.small)),
    marks: [
      ...smallScaleBar(scale, site.units, [left + bar, top + 3.4]),
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

function textAt(
  at: Spot,
  text: string,
  face: "text" | "strong" | "heading",
  size: number,
  anchor: "start" | "middle" | "end",
): Mark & { kind: "text" } {
  return { kind: "text", at, text, face, size, anchor, color: INK };
}
