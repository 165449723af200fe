/** Line widths of the sections: thin, medium and thick in the ratio of ISO 128-2, and dash patterns. */
import type { Pen } from "../paper.js";
import { INK } from "../strokes.js";

export { INK };

/** Lines that help to read and are no part of what is drawn. */
export const FAINT = "#8d9288";

const pen = (width: number, dash?: readonly number[], color = INK): Pen => ({
  width,
  color,
  ...(dash && { dash }),
});

export const PENS = {
  /** Rules at round heights, and lines down to a table. */
  rule: pen(0.18, undefined, FAINT),
  /** Dimension lines, leaders, edges between materials. */
  thin: pen(0.18),
  /** Ground as found, where it has been changed. */
  found: pen(0.3, [3, 1.2]),
  /** Finished ground. */
  ground: pen(0.5),
  /** The edge of what is dug. */
  dug: pen(0.4, [5, 1, 1, 1]),
  /** Things that are built: a tank, a pipe. */
  built: pen(0.5),
  pipe: pen(0.3),
  rockTop: pen(0.35, [4, 0.8, 0.5, 0.8, 0.5, 0.8]),
  water: pen(0.25, [2.4, 1]),
  frame: pen(0.35),
} as const;

/** Bodies of texts, mm. */
export const TEXT = { small: 2, plain: 2.3, title: 3.4 } as const;
