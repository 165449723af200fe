/** The few marks that every sheet is made of. */
import type { Face, Mark, PathMark, Pen, Spot, TextMark } from "./paper.js";

export const INK = "#000000";
/** Of lines that stand behind, dark enough for any printer. */
export const GREY = "#6b6b6b";

/** Widths of line after ISO 128-2:2020, in its series of 1 to √2, mm. */
export const PENS = {
  fine: { width: 0.18, color: INK },
  thin: { width: 0.25, color: INK },
  middle: { width: 0.35, color: INK },
  thick: { width: 0.5, color: INK },
  heavy: { width: 0.7, color: INK },
} satisfies Record<string, Pen>;

export function line(spots: readonly Spot[], pen: Pen): PathMark {
  return { kind: "path", lines: [spots], closed: false, pen };
}

/** A level or upright line between two places. */
export function rule(x1: number, y1: number, x2: number, y2: number, pen: Pen): PathMark {
  return line(
    [
      [x1, y1],
      [x2, y2],
    ],
    pen,
  );
}

export function box(
  left: number,
  top: number,
  width: number,
  height: number,
  look: Pick<PathMark, "pen" | "fill">,
): PathMark {
  const corners: Spot[] = [
    [left, top],
    [left + width, top],
    [left + width, top + height],
    [left, top + height],
  ];
  return { kind: "path", lines: [corners], closed: true, ...look };
}

/** A level text; `more` for anchor, color and the rest. */
export function words(
  text: string,
  at: Spot,
  face: Face,
  size: number,
  more: Partial<Pick<TextMark, "anchor" | "color" | "tabular" | "turn" | "halo">> = {},
): TextMark {
  return { kind: "text", at, text, face, size, anchor: "start", ...more };
}

export function layer(name: string, marks: readonly Mark[]): Mark {
  return { kind: "group", layer: name, marks };
}
