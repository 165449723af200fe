import { readFileSync } from "node:fs";
import { create } from "fontkit";
import { describe, expect, it } from "vitest";
import { FACES } from "./faces.js";
import { drawnText, fitText, fontRuns, textWidth, unwritable, wrapText } from "./textWidth.js";

const FACE_NAMES = ["text", "strong", "heading"] as const;
const fontsOf = (face: (typeof FACE_NAMES)[number]) =>
  FACES[face].files.map((file) => create(readFileSync(file)));

describe.each(FACE_NAMES)("widths of the face %s", (face) => {
  const fonts = fontsOf(face);

  it("are the fonts' own, letter by letter", () => {
    const letters = "AWgjy019.,()½°²×–“éßłŐż";
    for (const letter of letters) {
      const code = letter.codePointAt(0) ?? 0;
      const font = fonts.find(({ characterSet }) => characterSet.includes(code));
      if (font === undefined) throw new Error(`no font has ${letter}`);
      const own = font.glyphForCodePoint(code).advanceWidth / font.unitsPerEm;
      expect(textWidth(letter, face, 10)).toBeCloseTo(10 * own, 2);
    }
  });

  it("are within 3% of texts with kerning, which makes them shorter as a rule", () => {
    const latin = fonts[0]!;
    for (const text of ["Existing ground", "2,411.42 ft", "Water line to the wash house"]) {
      const { glyphs, positions } = latin.layout(text);
      const kerned = positions.reduce((sum, { xAdvance }) => sum + xAdvance, 0) / latin.unitsPerEm;
      expect(glyphs.length).toBe(text.length);
      const ours = textWidth(text, face, 1);
      expect(Math.abs(ours - kerned) / kerned).toBeLessThan(0.03);
    }
  });
});

it("knows how wide the fonts draw a fraction", () => {
  for (const face of ["text", "strong"] as const) {
    const latin = fontsOf(face)[0]!;
    for (const fraction of ["3⁄8", "9⁄16"]) {
      const { glyphs } = latin.layout(fraction);
      const own = glyphs.reduce((sum, glyph) => sum + glyph.advanceWidth, 0) / latin.unitsPerEm;
      expect(textWidth(fraction, face, 1)).toBeCloseTo(own, 3);
    }
    expect(textWidth("⅜", face, 1)).toBe(textWidth("3⁄8", face, 1));
    // Narrower than three letters of the text, as a fraction is.
    expect(textWidth("⅜", face, 1)).toBeLessThan(0.85 * textWidth("3/8", face, 1));
  }
});

describe("drawnText", () => {
  it("writes out what the fonts lack", () => {
    expect(drawnText("7′ 1⅛″", "text")).toBe(`7' 1 1⁄8"`);
    expect(drawnText("⅜ in", "text")).toBe("3⁄8 in");
    expect(drawnText("a ≥ b, 2½ m³", "heading")).toBe("a >= b, 2½ m³");
    expect(drawnText("1\u00a0000\u200b", "heading")).toBe("1 000");
  });

  it("puts a question mark for other scripts, and says for which", () => {
    expect(drawnText("Ж1", "text")).toBe("?1");
    expect(unwritable("Жil ′⅛", "text")).toEqual(["Ж"]);
  });
});

it("parts a text by the file that has its letters", () => {
  expect(fontRuns("Łódź", "text").map(({ text }) => text)).toEqual(["Ł", "ód", "ź"]);
});

it("makes figures of one width on demand", () => {
  expect(textWidth("111", "text", 3, true)).toBeCloseTo(textWidth("888", "text", 3, true), 9);
  expect(textWidth("111", "text", 3)).toBeLessThan(textWidth("888", "text", 3));
});

describe("texts in a width", () => {
  it("are cut off with an ellipsis", () => {
    const cut = fitText("A long name of a parcel", "text", 3, 15);
    expect(cut.endsWith("…")).toBe(true);
    expect(textWidth(cut, "text", 3)).toBeLessThanOrEqual(15);
    expect(fitText("short", "text", 3, 15)).toBe("short");
  });

  it("keep a figure and its unit on one line, where a line holds both", () => {
    const wide = textWidth("House drain, 110", "text", 3) + 0.1;
    expect(wrapText("House drain, 110 mm, PVC-U", "text", 3, wide)).toEqual([
      "House drain,",
      "110 mm, PVC-U",
    ]);
    const narrow = Math.max(textWidth("110", "text", 3), textWidth("mm", "text", 3)) + 0.1;
    expect(wrapText("110 mm", "text", 3, narrow)).toEqual(["110", "mm"]);
    expect(wrapText("drain 4 in a box", "text", 3, 100)).toEqual(["drain 4 in a box"]);
  });

  it("wrap at blanks, and within a word that is too long", () => {
    const text = "Put an erosion barrier below Donaudampfschifffahrtsgesellschaft before digging";
    const lines = wrapText(text, "text", 3, 20);
    for (const line of lines) expect(textWidth(line, "text", 3)).toBeLessThanOrEqual(20);
    expect(lines.join("").replaceAll(" ", "")).toBe(text.replaceAll(" ", ""));
  });
});
