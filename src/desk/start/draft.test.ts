import { describe, expect, it } from "vitest";
import { EMPTY_DRAFT, EMPTY_LINE, hasTyping } from "./draft.js";
import type { Draft } from "./draft.js";

describe("what has been typed for a new site", () => {
  it("is nothing at first, nor when only a choice was made", () => {
    expect(hasTyping(EMPTY_DRAFT)).toBe(false);
    const chosen: Partial<Draft> = { way: "book", unit: "m", units: "metric", under: "probe" };
    expect(hasTyping({ ...EMPTY_DRAFT, ...chosen })).toBe(false);
    expect(hasTyping({ ...EMPTY_DRAFT, text: "  \n", book: [EMPTY_LINE] })).toBe(false);
  });

  it.each<Partial<Draft>>([
    { text: "1, 0, 0, 512.4" },
    { name: "Bank Field" },
    { topsoil: "20 cm" },
    { soil: "1 m" },
    { runLength: "80 m" },
    { book: [EMPTY_LINE, { ...EMPTY_LINE, backsight: "1.42" }] },
  ])("is something with %o", (typed) => {
    expect(hasTyping({ ...EMPTY_DRAFT, ...typed })).toBe(true);
  });
});
