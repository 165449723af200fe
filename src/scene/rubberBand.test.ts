import { describe, expect, it } from "vitest";
import { boxBetween, isWithin } from "./rubberBand.js";

describe("a rectangle drawn over the scene", () => {
  const box = { left: 10, top: 20, width: 30, height: 40 };

  it("is the same whichever corner it began at", () => {
    const [a, b, c, d] = [
      { left: 10, top: 20 },
      { left: 40, top: 60 },
      { left: 40, top: 20 },
      { left: 10, top: 60 },
    ];
    expect([boxBetween(a, b), boxBetween(b, a), boxBetween(c, d), boxBetween(d, c)]).toEqual([
      box,
      box,
      box,
      box,
    ]);
  });

  it("holds what lies in it and on its edge, and nothing else", () => {
    expect(isWithin(box, { left: 25, top: 40 })).toBe(true);
    expect(isWithin(box, { left: 10, top: 60 })).toBe(true);
    expect(isWithin(box, { left: 9.9, top: 40 })).toBe(false);
    expect(isWithin(box, { left: 25, top: 60.1 })).toBe(false);
    expect(isWithin(box, { left: 41, top: 40 })).toBe(false);
  });
});
