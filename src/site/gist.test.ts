import { describe, expect, it } from "vitest";
import { gistOf } from "./gist.js";

describe("the gist of a finding", () => {
  it.each([
    ["The hole is 9′ ¾″ deep. Keep a ladder.", "The hole is # deep."],
    ["The hole is 2.76 m deep. Keep a ladder.", "The hole is # deep."],
    ["Move it 70′ 10½″ off (263.8 m²), 1,203 ft² more.", "Move it # off (#), # more."],
    ["Tank 1 weighs 8,157 lb empty.", "Tank 1 weighs # empty."],
  ])("takes amounts out of %s", (text, gist) => expect(gistOf(text)).toBe(gist));

  it("leaves names, counts and ratios", () => {
    for (const text of ["Tank 1 meets 2 mains of Field 3.", "Drawn 1½ : 1 in 3 layers."]) {
      expect(gistOf(text)).toBe(text);
    }
  });
});
