import { describe, expect, it } from "vitest";
import { length } from "../../units/index.js";
import { plain } from "./plain.js";
import { inRange } from "./range.js";

const FOOT = 0.3048;

function tried(text: string, limits: Parameters<typeof inRange>[1]) {
  const read = length.parse(text, "us");
  if (!read.ok) throw new Error(read.text);
  return inRange({ text, value: read.value, measure: length, system: "us" }, limits);
}

describe("a value out of range", () => {
  it("is told with the range and what came", () => {
    expect(tried("300 ft", { least: 0, most: 30 * FOOT })).toEqual({
      ok: false,
      text: "Between 0″ and 30′ 0″ can be used here; got 300′ 0″.",
    });
    expect(tried("0", { least: 0, above: true })).toEqual({
      ok: false,
      text: "More than 0″ is needed; got 0″.",
    });
  });

  it("offers what was meant only where one reading alone fits", () => {
    const ten = tried("300", { least: 0, most: 30 * FOOT });
    expect(!ten.ok && ten.offer).toBe("30′ 0″");
    // 90 could be 90 with its point forgotten only: 90 m is out of range too.
    const short = tried("90", { least: 0, most: 30 * FOOT });
    expect(!short.ok && short.offer).toBe("9′ 0″");
    const unit = tried("300 ft", { most: 30 * FOOT });
    expect(!unit.ok && unit.offer).toBe(undefined);
    const point = tried("300.0", { most: 30 * FOOT });
    expect(!point.ok && point.offer).toBe(undefined);
  });

  it("takes what lies within", () => {
    expect(tried("12", { least: 0, most: 30 * FOOT }).ok).toBe(true);
    const read = inRange(
      { text: "170", value: 170, measure: plain, system: "us" },
      { least: 50, most: 160 },
    );
    expect(read.ok).toBe(false);
  });
});
