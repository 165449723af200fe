/** Where texts lie on paper. */
import type { Spot, TextMark } from "./paper.js";
import { textWidth } from "./textWidth.js";

/** Four corners, in order around. */
export type Quad = readonly [Spot, Spot, Spot, Spot];

/** Shares of the letters' body: capitals stand about 0.72 high, and tails hang 0.2 below the line. */
const ABOVE = 0.76;
const BELOW = 0.22;

/** The paper that a text takes, with `margin` mm all around; turned as the text is. */
export function textQuad(mark: TextMark, margin = 0): Quad {
  const width = textWidth(mark.text, mark.face, mark.size, mark.tabular);
  const before = mark.anchor === "start" ? 0 : mark.anchor === "middle" ? width / 2 : width;
  const left = -before - margin;
  const right = width - before + margin;
  const top = -ABOVE * mark.size - margin;
  const bottom = BELOW * mark.size + margin;
  const angle = ((mark.turn ?? 0) * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [x, y] = mark.at;
  const placed = (u: number, v: number): Spot => [x + u * cos - v * sin, y + u * sin + v * cos];
  return [placed(left, top), placed(right, top), placed(right, bottom), placed(left, bottom)];
}

/** The paper that is laid under a text with a halo: its box and a little more. */
export function haloQuad(mark: TextMark): Quad {
  return textQuad(mark, 0.08 * mark.size);
}
