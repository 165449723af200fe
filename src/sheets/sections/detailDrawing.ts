/** One detail on paper. */
import type { Site } from "../../site/index.js";
import { words } from "../../words/index.js";
import type { Fill, Mark } from "../paper.js";
import { textWidth, wrapText } from "../textWidth.js";
import { calloutMarks } from "./callouts.js";
import type { DetailSpec } from "./detailSpec.js";
import { acrossMarks, besideMarks, besideWidth } from "./dimensionRows.js";
import { earthMarks, surfaceMarks } from "./earth.js";
import { INK, PENS, TEXT } from "./pens.js";
import { sayScale } from "./scales.js";
import { boxOf, type View } from "./view.js";

export interface DetailAsk {
  site: Site;
  fills: ReadonlyMap<string, Fill>;
  spec: DetailSpec;
  number: number;
  /** n of 1 : n. */
  scale: number;
  left: number;
  top: number;
}

export interface DrawnDetail {
  width: number;
  height: number;
  marks: Mark[];
}

const HEAD = 10;
/** mm that callouts are broken at. */
const BROAD = 44;

export function detailDrawing(ask: DetailAsk): DrawnDetail {
  const { site, spec, scale, left, top } = ask;
  const { from, to, low, high } = spec;
  const margin = besideWidth(spec.beside, site.units);
  const view: View = {
    left: left + margin,
    top: top + HEAD,
    from,
    to,
    low,
    high,
    along: scale,
    up: scale,
  };
  const [, , wide, tall] = boxOf(view);
  const callouts = calloutMarks(spec.callouts, view, BROAD);
  const body = Math.max(tall, callouts.height);
  const below = acrossMarks(spec.across, site.units, view, view.top + tall + 1.5);
  const head = headOf(ask);
  return {
    width: Math.max(margin + wide + callouts.width + 1, head.width),
    height: HEAD + Math.max(body, tall + 1.5 + below.height),
    marks: [
      ...head.marks,
      ...groundOf(ask, view),
      ...spec.paint(view),
      callouts.marks,
      ...besideMarks(spec.beside, site.units, view, 2),
      below.marks,
    ],
  };
}

function headOf({ site, spec, number, scale, left, top }: DetailAsk): {
  width: number;
  marks: Mark[];
} {
  const { detail } = words.sheetsSections;
  const title = detail.heading(number, spec.title);
  const said = detail.toScale(sayScale(scale, site.units), spec.said);
  return {
    width: Math.max(textWidth(title, "heading", TEXT.title), textWidth(said, "text", TEXT.small)),
    marks: [
      {
        kind: "text",
        at: [left, top + 3.2],
        text: title,
        face: "heading",
        size: TEXT.title,
        anchor: "start",
        color: INK,
      },
      {
        kind: "text",
        at: [left, top + 6.8],
        text: said,
        face: "text",
        size: TEXT.small,
        anchor: "start",
        color: INK,
      },
    ],
  };
}

function groundOf({ spec, fills }: DetailAsk, view: View): Mark[] {
  const { finished, dug } = spec;
  const { layers } = words.sheetsSections;
  if (finished === null) return [];
  return [
    earthMarks([...finished.areas, ...finished.standing], fills, view),
    ...(dug === null ? [] : [surfaceMarks(dug.surface, PENS.dug, layers.dug, view)]),
    surfaceMarks(finished.surface, PENS.ground, layers.finished, view),
  ];
}

/** Numbered notes under one heading, wrapped to a width. */
export function notesDrawing(
  notes: readonly string[],
  width: number,
  left: number,
  top: number,
): DrawnDetail {
  const lines = notes.flatMap((note, i) =>
    wrapText(note, "text", TEXT.plain, width - 5).map((text, k) => ({
      text,
      mark: k === 0 ? String(i + 1) : "",
    })),
  );
  const step = 3;
  const body = lines.flatMap(({ text, mark }, i): Mark[] => {
    const y = top + 8 + i * step;
    const plain = {
      kind: "text",
      face: "text",
      size: TEXT.plain,
      anchor: "start",
      color: INK,
    } as const;
    const number: Mark[] =
      mark === "" ? [] : [{ ...plain, at: [left, y], text: mark, face: "strong" }];
    return [...number, { ...plain, at: [left + 5, y], text }];
  });
  const title: Mark = {
    kind: "text",
    at: [left, top + 3.2],
    text: words.sheetsSections.notes.title,
    face: "heading",
    size: TEXT.title,
    anchor: "start",
    color: INK,
  };
  return { width, height: 8 + lines.length * step, marks: [title, ...body] };
}
