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
  const { at, text, face, size, tabular, anchor, turn = 0 } = mark;
  const width = textWidth(text, face, size, tabular);
  const before = anchor === "start" ? 0 : anchor === "middle" ? width / 2 : width;
  return quadAbout({ at, before, width, size, turn }, margin);
}

/** The same of a line of letters `width` mm long, its base line's middle at `at`. */
export function lineQuad(
  line: { at: Spot; width: number; size: number; turn: number },
  margin: number,
): Quad {
  return quadAbout({ ...line, before: line.width / 2 }, margin);
}

function quadAbout(
  line: { at: Spot; before: number; width: number; size: number; turn: number },
  margin: number,
): Quad {
  const { at, before, width, size, turn } = line;
  const left = -before - margin;
  const right = width - before + margin;
  const top = -ABOVE * size - margin;
  const bottom = BELOW * size + margin;
  const angle = (turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [x, y] = at;
  const placed = (u: number, v: number): Spot => [x + u * cos - v * sin, y + u * sin + v * cos];
  return [placed(left, top), placed(right, top), placed(right, bottom), placed(left, bottom)];
}

/** The paper that is laid under a text with a halo: its box and a little more. */
export function haloQuad(mark: TextMark): Quad {
  return textQuad(mark, 0.08 * mark.size);
}
