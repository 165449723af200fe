/** How long texts are on paper, and which letters the sheets' fonts can draw. */
import type { Face } from "./paper.js";
import widths from "./widths.json" with { type: "json" };

interface FaceWidths {
  /** By letter: its advance in thousandths of the letters' body, and which file of the face has it. */
  letters: ReadonlyMap<string, { advance: number; file: number }>;
  /** Of every figure where figures are of one width. */
  tabular: number;
  /** Of each figure from 0 to 9 above or below the slash of a fraction. */
  fractions: readonly number[];
}

const TABLES: Readonly<Record<Face, FaceWidths>> = {
  text: tableOf(widths.text),
  strong: tableOf(widths.strong),
  heading: tableOf(widths.heading),
};

function tableOf(read: {
  letters: readonly string[];
  advances: readonly (readonly number[])[];
  tabular: number;
  fractions: readonly number[];
}): FaceWidths {
  const entries = read.letters.flatMap((letters, file) =>
    Array.from(letters).map(
      (letter, i) => [letter, { advance: read.advances[file]![i]!, file }] as const,
    ),
  );
  return { letters: new Map(entries), tabular: read.tabular, fractions: read.fractions };
}

/** Signs that the fonts lack, and what paper has used for them since typewriters. */
const WRITTEN: Readonly<Record<string, string>> = {
  "′": "'",
  "″": '"',
  "≤": "<=",
  "≥": ">=",
  "≈": "~",
  "→": "to",
  "←": "from",
  "√": "root of ",
  "∞": "no end",
  "✓": "x",
  "✕": "x",
  Σ: "sum of ",
  π: "pi",
  "\u00a0": " ",
  "\u2009": " ",
  "\u202f": " ",
  "\u200b": "",
};

/**
 * Fractions that no face has, as figures about the slash that fonts make a fraction of: `⅜` is written
 * `3⁄8`, and `7⅛` is `7 1⁄8`, since without the blank it would be 71 eighths.
 */
const FRACTIONS: Readonly<Record<string, string>> = {
  "⅛": "1⁄8",
  "⅜": "3⁄8",
  "⅝": "5⁄8",
  "⅞": "7⁄8",
  "⅓": "1⁄3",
  "⅔": "2⁄3",
  "⅕": "1⁄5",
  "⅖": "2⁄5",
  "⅗": "3⁄5",
  "⅘": "4⁄5",
  "⅙": "1⁄6",
  "⅚": "5⁄6",
};

/** A fraction as fonts draw one. */
const FRACTION = /\d+⁄\d+/g;

const UNWRITABLE = "?";

/**
 * A text as the fonts can draw it: signs that they lack are written out, letters of other scripts
 * become question marks (`unwritable` tells of them). Both writers and every width go through it.
 */
export function drawnText(text: string, face: Face): string {
  const { letters } = TABLES[face];
  let drawn = "";
  for (const letter of text.normalize("NFC")) {
    const fraction = FRACTIONS[letter];
    if (letters.has(letter)) drawn += letter;
    else if (fraction !== undefined) drawn += /\d$/.test(drawn) ? ` ${fraction}` : fraction;
    else drawn += WRITTEN[letter] ?? UNWRITABLE;
  }
  return drawn;
}

/** The letters of a text that the face cannot draw and that have no other way of being written. */
export function unwritable(text: string, face: Face): string[] {
  const { letters } = TABLES[face];
  return Array.from(text.normalize("NFC")).filter(
    (letter) => !letters.has(letter) && !(letter in WRITTEN) && !(letter in FRACTIONS),
  );
}

/**
 * Length of a text on paper, mm, from the fonts' own advance widths. Kerning is left out: it makes
 * most texts a little shorter (textWidth.test.ts measures how much).
 * @param size height of the letters' body, mm
 * @param tabular whether figures are of one width
 */
export function textWidth(text: string, face: Face, size: number, tabular = false): number {
  const { letters, tabular: figure, fractions } = TABLES[face];
  let sum = 0;
  const others = drawnText(text, face).replace(FRACTION, (fraction) => {
    for (const letter of fraction) sum += fractions[Number(letter)] ?? letters.get(letter)!.advance;
    return "";
  });
  for (const letter of others) {
    sum += tabular && letter >= "0" && letter <= "9" ? figure : letters.get(letter)!.advance;
  }
  return (sum / 1000) * size;
}

/** Stretches of a text as drawn, each with the number of the face's file that has its letters. */
export function fontRuns(text: string, face: Face): { text: string; file: number }[] {
  const runs: { text: string; file: number }[] = [];
  for (const letter of drawnText(text, face)) {
    const { file } = TABLES[face].letters.get(letter)!;
    const last = runs.at(-1);
    if (last?.file === file) last.text += letter;
    else runs.push({ text: letter, file });
  }
  return runs;
}

/** The text, cut off with an ellipsis where it is longer than `width` mm. */
export function fitText(text: string, face: Face, size: number, width: number): string {
  if (textWidth(text, face, size) <= width) return text;
  const letters = Array.from(text);
  while (letters.length > 0 && textWidth(`${letters.join("")}…`, face, size) > width) letters.pop();
  return `${letters.join("").trimEnd()}…`;
}

/** Units that stay on the line of their figure. */
const UNIT = /^(?:mm|cm|m|in|ft|yd|lb|kg|t|gal|L|h|[mf]t?[²³]|yd³)[.,;:)]*$/;

/** The words of a text; a figure with its unit is one where a line holds both. */
function wordsOf(text: string, fits: (line: string) => boolean): string[] {
  const words: string[] = [];
  for (const word of text.split(/\s+/).filter((each) => each !== "")) {
    const last = words.at(-1);
    const both = `${last ?? ""} ${word}`;
    const isUnit = last !== undefined && /[\d⅛¼⅜½⅝¾⅞]$/.test(last) && UNIT.test(word);
    if (isUnit && fits(both)) words[words.length - 1] = both;
    else words.push(word);
  }
  return words;
}

/** The text in lines no longer than `width` mm, broken at blanks; a longer word is broken itself. */
export function wrapText(text: string, face: Face, size: number, width: number): string[] {
  const fits = (line: string): boolean => textWidth(line, face, size) <= width;
  const lines: string[] = [];
  let line = "";
  for (const word of wordsOf(text, fits)) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== "") lines.push(line);
    const pieces = fits(word) ? [word] : brokenWord(word, fits);
    lines.push(...pieces.slice(0, -1));
    line = pieces.at(-1) ?? "";
  }
  return line === "" ? lines : [...lines, line];
}

function brokenWord(word: string, fits: (piece: string) => boolean): string[] {
  const pieces: string[] = [];
  let piece = "";
  for (const letter of word) {
    if (piece !== "" && !fits(piece + letter)) {
      pieces.push(piece);
      piece = "";
    }
    piece += letter;
  }
  return [...pieces, piece];
}
