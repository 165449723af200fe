/** Numbers in a six-sided frame: of distances kept, so that nobody takes them for sections. mm. */
import type { Mark, Spot, TextMark } from "../paper.js";
import { textWidth } from "../textWidth.js";
import { INK, pen, TYPE } from "./pens.js";

const SIZE = TYPE.small;
/** Half of a frame's height, and what it stands off its number at either side. */
const HALF = 1.2;
const BESIDE = 0.95;
/** mm between a frame and the figure after it. */
const AFTER = 1.1;
/** What the letters' capitals stand above the base line, half of it, in sizes of the type. */
const UP = 0.36;

const halfWidth = (tag: string): number => textWidth(tag, "strong", SIZE) / 2 + BESIDE;

/** mm that a number in its frame takes, with what is kept free after it. */
export function tagWidth(tag: string): number {
  return 2 * halfWidth(tag) + AFTER;
}

/** mm from where a number in its frame begins to its middle. */
export const tagMiddle = (tag: string): number => halfWidth(tag);

/** A text that is as long as a number in its frame and a figure after it: what is placed for both. */
export function taggedLine(tag: string, text: string): string {
  const blank = textWidth("\u00a0", "text", SIZE);
  return "\u00a0".repeat(Math.ceil(tagWidth(tag) / blank)) + text;
}

/** A number in its frame, its middle at a spot. */
export function tagMarks(at: Spot, tag: string, color: string = INK.black, turn = 0): Mark[] {
  const place = turned(at, turn);
  const wide = halfWidth(tag);
  const ring = [
    place(-wide, 0),
    place(-wide + 0.7, -HALF),
    place(wide - 0.7, -HALF),
    place(wide, 0),
    place(wide - 0.7, HALF),
    place(-wide + 0.7, HALF),
  ];
  return [
    {
      ...{ kind: "path", lines: [ring], closed: true },
      ...{ pen: pen(0.25, color), fill: { color: "#ffffff" } },
    },
    {
      ...{ kind: "text", at: place(0, UP * SIZE), text: tag, face: "strong", size: SIZE },
      ...{ anchor: "middle", color, ...(turn !== 0 && { turn }) },
    },
  ];
}

/** The number in its frame and the figure after it, in place of the line that was placed for both. */
export function tagged(placed: TextMark, tag: string, text: string): Mark[] {
  const { at, face, size, turn = 0, color = INK.black } = placed;
  const place = turned(at, turn);
  const width = textWidth(placed.text, face, size);
  const own = textWidth(text, face, size);
  const middle = place(-width / 2 + halfWidth(tag), -UP * size);
  return [
    { ...placed, text, at: place(width / 2 - own, 0), anchor: "start" },
    ...tagMarks(middle, tag, color, turn),
  ];
}

/** Spots so far along and across a text that is turned about a spot. */
function turned([x, y]: Spot, turn: number): (along: number, across: number) => Spot {
  const angle = (turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return (u, v) => [x + u * cos - v * sin, y + u * sin + v * cos];
}
