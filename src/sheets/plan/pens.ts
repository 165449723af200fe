/** Inks and pens of the plans: widths after ISO 128 (0.13 … 0.7 mm), kinds of line our own. */
import type { Pen } from "../paper.js";

export const INK = {
  black: "#1c2327",
  grey: "#6b7075",
  pale: "#a9adb0",
  tone: "#e4e4e0",
  paleTone: "#f1f1ee",
  brown: "#8a5a2b",
  paleBrown: "#b99b78",
  water: "#1f5d7a",
  /** Only for what is wrong. */
  wrong: "#c8430f",
} as const;

const pen = (width: number, color: string, dash?: readonly number[]): Pen => ({
  width,
  color,
  ...(dash !== undefined && { dash }),
});

export const PENS = {
  leader: pen(0.18, INK.black),
  thin: pen(0.18, INK.black),
  middle: pen(0.35, INK.black),
  strong: pen(0.5, INK.black),
  heavy: pen(0.7, INK.black),
  dimension: pen(0.18, INK.black),
  wrong: pen(0.5, INK.wrong),
  hatch: pen(0.13, INK.grey),
} as const;

/** Heights of the letters' body, mm. */
export const TYPE = { small: 2.1, usual: 2.4, strong: 2.8 } as const;

export { pen };
