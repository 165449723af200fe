/** Lettering that is still to be placed on a plan, and its size. mm. */
import type { Quad } from "../box.js";
import type { Face, Spot } from "../paper.js";
import { textWidth } from "../textWidth.js";

/** What is written: one line under the other. */
export interface Lettering {
  lines: readonly string[];
  size: number;
  face?: Face;
  color?: string;
}

/** A place for a label. */
export interface Seat {
  middle: Spot;
  /** Degrees clockwise; absent for level. */
  turn?: number;
}

/** A label that is to be placed: at one of its seats, else beside its anchor, else farther off. */
export interface Label extends Lettering {
  /** Best first. */
  seats?: readonly Seat[];
  /** What it names; absent: its seats and no other place will do. */
  anchor?: Spot;
  /** mm kept from the anchor. */
  clear?: number;
  /** A line may lead to it from farther off, and it counts as missing where it finds no room. */
  must?: boolean;
  /** What the line that leads to it does not cross where another place is to be had. */
  shun?: readonly Quad[];
  /** The survey point whose elevation it is, or whose number in the list of the rest. */
  point?: string;
  /** Its one line is the place of a number in a frame and of a figure after it: see tag.ts. */
  tag?: { number: string; text: string };
}

/** Heights above and below the base line and from line to line, in sizes of the type. */
const LINE = 1;
const PITCH = 1.15;

/** The box of some lines, mm. */
export function letteringSize({ lines, size, face = "text" }: Lettering): {
  width: number;
  height: number;
} {
  return {
    width: Math.max(0, ...lines.map((line) => textWidth(line, face, size))),
    height: (LINE + PITCH * (lines.length - 1)) * size,
  };
}
