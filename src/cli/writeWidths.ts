/** `npm run widths`: writes the advance widths of the sheets' faces, as their font files have them. */
import { readFileSync, writeFileSync } from "node:fs";
import { create, type Font } from "fontkit";
import { FACES } from "../sheets/index.js";

interface Widths {
  /** Of each file of the face, every letter that no earlier file holds, in the order of code points. */
  letters: string[];
  /** Advance of each letter, in thousandths of the letters' body. */
  advances: number[][];
  /** Of a figure where all are of one width. */
  tabular: number;
  /** Of each figure from 0 to 9 above or below the slash of a fraction. */
  fractions: number[];
}

const TARGET = new URL("../sheets/widths.json", import.meta.url);

/** Other blanks than the plain one are written as that one (see drawnText in textWidth.ts). */
function isControlOrBlank(code: number): boolean {
  return code !== 0x20 && /^[\s\p{C}]$/u.test(String.fromCodePoint(code));
}

/** Later files add letters only: the first that has one draws it. */
function widthsOf(fonts: readonly Font[]): Widths {
  const seen = new Set<number>();
  const codesOf = fonts.map(({ characterSet }) => {
    const codes = [...new Set(characterSet)].filter((code) => !isControlOrBlank(code));
    const fresh = codes.filter((code) => !seen.has(code)).sort((a, b) => a - b);
    for (const code of fresh) seen.add(code);
    return fresh;
  });
  const thousandths = (units: number, font: Font): number =>
    Math.round((1e4 * units) / font.unitsPerEm) / 10;
  const [first] = fonts;
  if (first === undefined) throw new Error("a face without a font file");
  return {
    letters: codesOf.map((codes) => String.fromCodePoint(...codes)),
    advances: fonts.map((font, i) =>
      codesOf[i]!.map((code) => thousandths(font.glyphForCodePoint(code).advanceWidth, font)),
    ),
    fractions: Array.from("0123456789", (figure) => {
      // A face without figures for fractions draws the usual ones.
      const { glyphs } = first.layout(`${figure}⁄${figure}`);
      return thousandths(glyphs[0]!.advanceWidth, first);
    }),
    tabular: thousandths(first.layout("0", ["tnum"]).glyphs[0]!.advanceWidth, first),
  };
}

const written = Object.fromEntries(
  Object.entries(FACES).map(([face, { files }]) => [
    face,
    widthsOf(files.map((file) => create(readFileSync(file)))),
  ]),
);
writeFileSync(TARGET, `${JSON.stringify(written, null, 1)}\n`);
