/** Headings and paragraphs as items of a flow. */
import type { FlowItem } from "./flow.js";
import type { Face, PaperId } from "./paper.js";
import { GREY, INK, PENS, rule, words } from "./strokes.js";
import { wrapText } from "./textWidth.js";

/** Between base lines, in bodies. */
export const LEADING = 1.28;

/** Height of the letters' body of running text, mm: larger where the paper is held farther off. */
export function bodySize(paper: PaperId): number {
  return paper === "letter" || paper === "a4" ? 2.4 : 3;
}

/** Columns of running text on a paper. */
export function proseColumns(paper: PaperId): number {
  return paper === "letter" || paper === "a4" ? 2 : 3;
}

/** A heading over a rule; it never stands alone at the foot of a column. */
export function headingItem(text: string, size: number, width: number): FlowItem {
  const letters = 1.5 * size;
  const lines = wrapText(text, "heading", letters, width);
  const height = 1.2 * size + letters * LEADING * lines.length;
  return {
    height,
    tied: true,
    draw: (left, top) => [
      ...lines.map((line, i) =>
        words(line, [left, top + 0.2 * size + letters * (1 + LEADING * i)], "heading", letters),
      ),
      rule(left, top + height - 0.6 * size, left + width, top + height - 0.6 * size, PENS.middle),
    ],
  };
}

export interface ProseLook {
  face?: Face;
  /** Put before the first line; the others are set in as far. */
  mark?: string;
  grey?: boolean;
  tied?: boolean;
}

/** A paragraph. */
export function proseItem(
  text: string,
  size: number,
  width: number,
  { face = "text", mark, grey = false, tied = false }: ProseLook = {},
): FlowItem {
  const indent = mark === undefined ? 0 : 1.5 * size;
  const lines = wrapText(text, face, size, width - indent);
  const color = grey ? GREY : INK;
  return {
    height: size * (LEADING * lines.length + 0.55),
    tied,
    draw: (left, top) => [
      ...(mark === undefined ? [] : [words(mark, [left, top + size], face, size, { color })]),
      ...lines.map((line, i) =>
        words(line, [left + indent, top + size * (1 + LEADING * i)], face, size, { color }),
      ),
    ],
  };
}

/** Empty paper. */
export function gapItem(height: number): FlowItem {
  return { height, draw: () => [] };
}
