/** One detail on paper. */
import type { Site } from "../../site/index.js";
import { words } from "../../words/index.js";
import type { Fill, Mark } from "../paper.js";
import { BEFORE_BAR, SMALL_BAR, smallScaleBar } from "../scale.js";
import { textWidth, wrapText } from "../textWidth.js";
import { calloutMarks, calloutSize } from "./callouts.js";
import type { DetailSpec } from "./detailSpec.js";
import { acrossHeight, acrossMarks, besideMarks, besideWidth } from "./dimensionRows.js";
import { earthMarks, surfaceMarks } from "./earth.js";
import { INK, PENS, TEXT } from "./pens.js";
import { sayScale } from "./scales.js";
import type { Size } from "./shelf.js";
import { boxOf, type View } from "./view.js";

export interface DetailAsk {
  site: Site;
  fills: ReadonlyMap<string, Fill>;
  spec: DetailSpec;
  number: number;
  /** n of 1 : n. */
  scale: number;
  /** mm that callouts are broken at. */
  broad: number;
  left: number;
  top: number;
}

const HEAD = 10;
/** mm between the ground and the sizes under it. */
const BELOW = 1.5;

function viewOf({ site, spec, scale, left, top }: DetailAsk): View {
  const { from, to, low, high, beside } = spec;
  const margin = besideWidth(beside, site.units);
  const ends = { from, to, low, high };
  return { left: left + margin, top: top + HEAD, ...ends, along: scale, up: scale };
}

/** mm of paper that a detail takes, and of it what is drawn to scale. */
export function detailSize(ask: DetailAsk): Size & { drawn: Size } {
  const { spec, broad, left } = ask;
  const view = viewOf(ask);
  const [, , wide, tall] = boxOf(view);
  const callouts = calloutSize(spec.callouts, view, broad);
  const whole = view.left - left + wide + callouts.width + 1;
  return {
    width: Math.max(whole, headOf(ask).width),
    height: HEAD + Math.max(callouts.height, tall + BELOW + acrossHeight(spec.across)),
    drawn: { width: wide, height: tall },
  };
}

export function detailDrawing(ask: DetailAsk): Mark[] {
  const { site, spec, broad } = ask;
  const view = viewOf(ask);
  const [, , , tall] = boxOf(view);
  return [
    ...headOf(ask).marks,
    ...groundOf(ask, view),
    ...spec.paint(view),
    calloutMarks(spec.callouts, view, broad),
    ...besideMarks(spec.beside, site.units, view, 2),
    acrossMarks(spec.across, site.units, view, view.top + tall + BELOW),
  ];
}

function headOf({ site, spec, number, scale, left, top }: DetailAsk): {
  width: number;
  marks: Mark[];
} {
  const { detail } = words.sheetsSections;
  const title = detail.heading(number, spec.title);
  const said = detail.toScale(sayScale(scale, site.units), spec.said);
  const bar = textWidth(title, "heading", TEXT.title) + BEFORE_BAR;
  return {
    width: Math.max(bar + SMALL_BAR, textWidth(said, "text", TEXT.small)),
    marks: [
      ...smallScaleBar(scale, site.units, [left + bar, top + 3.4]),
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
    surfaceMarks(finished.found, PENS.found, layers.found, view),
    surfaceMarks(finished.surface, PENS.ground, layers.finished, view),
  ];
}

/** mm between base lines of notes, and before the first. */
const STEP = 3;
const FIRST = 8;

const noteLines = (notes: readonly string[], width: number): { text: string; mark: string }[] =>
  notes.flatMap((note, i) =>
    wrapText(note, "text", TEXT.plain, width - 5).map((text, k) => ({
      text,
      mark: k === 0 ? String(i + 1) : "",
    })),
  );

/** mm that notes take, wrapped to a width. */
export const notesSize = (notes: readonly string[], width: number): Size => ({
  width,
  height: FIRST + noteLines(notes, width).length * STEP,
});

/** Numbered notes under one heading, wrapped to a width. */
export function notesDrawing(
  notes: readonly string[],
  width: number,
  left: number,
  top: number,
): Mark[] {
  const body = noteLines(notes, width).flatMap(({ text, mark }, i): Mark[] => {
    const y = top + FIRST + i * STEP;
    const plain = { size: TEXT.plain, anchor: "start", color: INK } as const;
    const number: Mark[] =
      mark === "" ? [] : [{ kind: "text", face: "strong", ...plain, at: [left, y], text: mark }];
    return [...number, { kind: "text", face: "text", ...plain, at: [left + 5, y], text }];
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
  return [title, ...body];
}
