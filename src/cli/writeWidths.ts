/** `npm run widths`: writes the advance widths of the sheets' faces, as their font files have them. */
import { readFileSync, writeFileSync } from "node:fs";
import { create, type Font } from "fontkit";
import { FACES } from "../sheets/index.js";

interface Widths {
  /** Every letter that the face's files hold, in the order of their code points. */
  letters: string;
  /** Advance of each, in thousandths of the letters' body. */
  advances: number[];
  /** Of a figure where all are of one width. */
  tabular: number;
}

const TARGET = new URL("../sheets/widths.json", import.meta.url);

/** Other blanks than the plain one are written as that one (see drawnText in textWidth.ts). */
function isControlOrBlank(code: number): boolean {
  return code !== 0x20 && /^[\s\p{C}]$/u.test(String.fromCodePoint(code));
}

/** Later files add letters only: the first that has one draws it. */
function widthsOf(fonts: readonly Font[]): Widths {
  const advances = new Map<number, number>();
  for (const font of fonts) {
    for (const code of font.characterSet) {
      if (isControlOrBlank(code) || advances.has(code)) continue;
      const { advanceWidth } = font.glyphForCodePoint(code);
      advances.set(code, Math.round((1e4 * advanceWidth) / font.unitsPerEm) / 10);
    }
  }
  const codes = [...advances.keys()].sort((a, b) => a - b);
  const [first] = fonts;
  if (first === undefined) throw new Error("a face without a font file");
  const nought = first.layout("0", ["tnum"]).glyphs[0]!;
  return {
    letters: String.fromCodePoint(...codes),
    advances: codes.map((code) => advances.get(code)!),
    tabular: Math.round((1e4 * nought.advanceWidth) / first.unitsPerEm) / 10,
  };
}

const written = Object.fromEntries(
  Object.entries(FACES).map(([face, { files }]) => [
    face,
    widthsOf(files.map((file) => create(readFileSync(file)))),
  ]),
);
writeFileSync(TARGET, `${JSON.stringify(written, null, 1)}\n`);
