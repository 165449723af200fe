/** Symbols of places on a plan, about a spot on paper; mm. Our own, told apart in black and white. */
import type { Fill, Mark, Pen, Spot } from "../paper.js";
import { INK, pen, PENS, TYPE } from "./pens.js";

type Symbol = (at: Spot) => Mark[];

const circle = (at: Spot, radius: number, ink?: Pen, fill?: Fill): Mark => ({
  ...{ kind: "circle", at, radius },
  ...(ink !== undefined && { pen: ink }),
  ...(fill !== undefined && { fill }),
});

const path = (lines: readonly (readonly Spot[])[], ink: Pen): Mark => ({
  ...{ kind: "path", lines, closed: false, pen: ink },
});

const shape = (ring: readonly Spot[], ink: Pen | undefined, fill?: Fill): Mark => ({
  ...{ kind: "path", lines: [ring], closed: true },
  ...(ink !== undefined && { pen: ink }),
  ...(fill !== undefined && { fill }),
});

const from = ([x, y]: Spot, dx: number, dy: number): Spot => [x + dx, y + dy];

const PAPER: Fill = { color: "#ffffff" };
const BLACK: Fill = { color: INK.black };

/** A capital in the middle of a spot. */
export function letterAt(at: Spot, text: string, color: string = INK.black): Mark {
  const size = TYPE.small;
  return {
    ...{ kind: "text", at: from(at, 0, 0.36 * size), text, face: "strong", size },
    ...{ anchor: "middle", color },
  };
}

/** A ring with its letter. */
export const lettered =
  (letter: string, color: string = INK.black): Symbol =>
  (at) => [circle(at, 1.7, pen(0.35, color), PAPER), letterAt(at, letter, color)];

export const well: Symbol = lettered("W");

/** Two rings: one that is not one's own. */
export const neighbourWell: Symbol = (at) => [circle(at, 2.3, PENS.thin, PAPER), ...well(at)];

export const spring: Symbol = (at) => [
  circle(at, 1, PENS.middle, { color: INK.water }),
  path(
    [[from(at, 1, 0), from(at, 1.6, -0.5), from(at, 2.1, 0.5), from(at, 2.6, 0)]],
    pen(0.35, INK.water),
  ),
];

export const tree: Symbol = (at) => [
  circle(at, 1.5, PENS.thin),
  circle(at, 0.35, undefined, BLACK),
  path(
    Array.from({ length: 8 }, (_, k): Spot[] => {
      const [x, y] = [Math.cos((k * Math.PI) / 4), Math.sin((k * Math.PI) / 4)];
      return [from(at, 0.9 * x, 0.9 * y), from(at, 1.5 * x, 1.5 * y)];
    }),
    PENS.thin,
  ),
];

/** A place with no symbol of its own. */
export const place: Symbol = (at) => [
  circle(at, 1.2, PENS.middle, PAPER),
  path([[from(at, -0.8, 0), from(at, 0.8, 0)]], PENS.thin),
];

/** A probe or test pit: a square, half of it dark. */
export const probe: Symbol = (at) => [
  shape(
    [from(at, -1.3, -1.3), from(at, 1.3, -1.3), from(at, 1.3, 1.3), from(at, -1.3, 1.3)],
    PENS.thin,
    PAPER,
  ),
  shape([from(at, -1.3, 1.3), from(at, -1.3, -1.3), from(at, 1.3, 1.3)], PENS.thin, BLACK),
];

export const benchmark: Symbol = (at) => [
  shape([from(at, 0, -1.9), from(at, 1.7, 1.1), from(at, -1.7, 1.1)], PENS.middle, PAPER),
  circle(at, 0.35, undefined, BLACK),
];

export const spotHeight: Symbol = (at) => [
  path(
    [
      [from(at, -0.55, -0.55), from(at, 0.55, 0.55)],
      [from(at, -0.55, 0.55), from(at, 0.55, -0.55)],
    ],
    PENS.thin,
  ),
];

export const corner: Symbol = (at) => [circle(at, 0.7, PENS.middle, PAPER)];

export const outlet: Symbol = (at) => [
  shape(
    [from(at, -0.7, -0.7), from(at, 0.7, -0.7), from(at, 0.7, 0.7), from(at, -0.7, 0.7)],
    undefined,
    BLACK,
  ),
];

export const cleanout: Symbol = (at) => [
  circle(at, 1, PENS.middle, PAPER),
  path(
    [
      [from(at, -0.6, 0), from(at, 0.6, 0)],
      [from(at, 0, -0.6), from(at, 0, 0.6)],
    ],
    PENS.thin,
  ),
];

/** A square in which one line parts into two. */
export const parting: Symbol = (at) => [
  shape(
    [from(at, -1.2, -1.2), from(at, 1.2, -1.2), from(at, 1.2, 1.2), from(at, -1.2, 1.2)],
    PENS.middle,
    PAPER,
  ),
  path(
    [
      [from(at, -1.2, 0), at],
      [from(at, 1.2, -0.8), at, from(at, 1.2, 0.8)],
    ],
    PENS.thin,
  ),
];

/** Two triangles, tip to tip. */
export const valve: Symbol = (at) => [
  shape([at, from(at, -1.5, -0.9), from(at, -1.5, 0.9)], PENS.thin, BLACK),
  shape([at, from(at, 1.5, -0.9), from(at, 1.5, 0.9)], PENS.thin, PAPER),
];

export const tankMiddle: Symbol = (at) => [
  path(
    [
      [from(at, -1.6, 0), from(at, 1.6, 0)],
      [from(at, 0, -1.6), from(at, 0, 1.6)],
    ],
    PENS.thin,
  ),
];

export const ladder: Symbol = (at) => [
  shape(
    [from(at, -0.8, -1.7), from(at, 0.8, -1.7), from(at, 0.8, 1.7), from(at, -0.8, 1.7)],
    undefined,
    PAPER,
  ),
  path(
    [
      [from(at, -0.8, -1.7), from(at, -0.8, 1.7)],
      [from(at, 0.8, -1.7), from(at, 0.8, 1.7)],
      ...[-1.2, -0.4, 0.4, 1.2].map((y): Spot[] => [from(at, -0.8, y), from(at, 0.8, y)]),
    ],
    PENS.thin,
  ),
];

/** A number in a dark disc, as for the order of digging. */
export const numbered =
  (number: number): Symbol =>
  (at) => [circle(at, 1.9, undefined, BLACK), letterAt(at, String(number), "#ffffff")];

/** A sample of a symbol in the middle of the legend's box. */
export function symbolSample(symbol: Symbol): Mark[] {
  return symbol([5, 2]);
}
