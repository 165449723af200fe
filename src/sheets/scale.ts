/** What a drawing's scale is called, and the bar that measures it on paper. */
import { FOOT, plainNumber, type UnitSystem } from "../units/index.js";
import { words as texts } from "../words/index.js";
import type { Mark, Spot } from "./paper.js";
import { box, INK, layer, PENS, words } from "./strokes.js";

const INCH_IN_FEET = 1 / 12;

/** "1 in = 20 ft" or "1 cm = 2 m" for 1 : n. */
export function scaleInWords(n: number, units: UnitSystem): string {
  return units === "us"
    ? texts.sheets.inchTo(shortNumber(n * INCH_IN_FEET))
    : texts.sheets.centimetreTo(shortNumber(n / 100));
}

/** "1 : 240". */
export function scaleRatio(n: number): string {
  return texts.sheets.ratio(shortNumber(n));
}

/** At most two decimals, and no noughts at the end. */
function shortNumber(value: number): string {
  return plainNumber(value, 2).replace(/\.?0+$/, "");
}

/** A bar's whole length, in the site's unit of length and on paper. */
export interface ScaleBar {
  /** ft or m. */
  length: number;
  /** mm. */
  onPaper: number;
}

/** The longest bar of a round length that is no longer than `most` mm on paper. */
export function scaleBarOf(n: number, units: UnitSystem, most: number): ScaleBar {
  const unit = units === "us" ? FOOT : 1;
  const onPaper = (length: number): number => (length * unit * 1000) / n;
  const decade = 10 ** Math.floor(Math.log10((most * n) / (unit * 1000)));
  const length = [5, 4, 2, 1].map((part) => part * decade).find((each) => onPaper(each) <= most);
  if (length === undefined) throw new Error(`no scale bar for 1 : ${n}: expected a scale above 0`);
  return { length, onPaper: onPaper(length) };
}

const THICK = 1.5;

/** mm that a small bar beside the name of a drawing takes, its last figure with it, and its parts. */
export const SMALL_BAR = 29;
/** mm between that name and the bar. */
export const BEFORE_BAR = 4;
const SMALL_PARTS = 24;

/** A small bar for one of several drawings on a sheet; `at` is its left end below. */
export function smallScaleBar(n: number, units: UnitSystem, at: Spot): Mark[] {
  return [layer(texts.sheets.scaleBar, scaleBarMarks(n, units, at, SMALL_PARTS))];
}

/** The bar in four parts, black and white in turns, with its figures above; `at` is its left end below. */
export function scaleBarMarks(n: number, units: UnitSystem, at: Spot, most: number): Mark[] {
  const { length, onPaper } = scaleBarOf(n, units, most);
  const [x, y] = at;
  const part = onPaper / 4;
  const unit = units === "us" ? "ft" : "m";
  const parts = [0, 1, 2, 3].map((i) =>
    box(x + i * part, y - THICK, part, THICK, {
      pen: PENS.fine,
      fill: { color: i % 2 === 0 ? INK : "#ffffff" },
    }),
  );
  const figures = [0, length / 2, length].map((figure, i) =>
    words(
      i === 2 ? `${shortNumber(figure)} ${unit}` : shortNumber(figure),
      [x + (i * onPaper) / 2, y - THICK - 0.9],
      "text",
      2,
      { anchor: i === 0 ? "start" : "middle" },
    ),
  );
  return [...parts, ...figures];
}
