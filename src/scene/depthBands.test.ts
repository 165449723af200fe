import { describe, expect, it } from "vitest";
import { bandLimits, bandTones, bandUnit, depthBands } from "./depthBands.js";

const FOOT = 0.3048;
const bandsOf = (deepest: number, highest: number, units: "us" | "metric") => {
  const bands = depthBands({ deepest, highest }, units);
  if (bands === null) throw new Error("got no bands, expected some");
  return bands;
};

/** Luminance by WCAG's formula, 0 to 1. */
function luminance(hex: string): number {
  const parts = [1, 3, 5].map((at) => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * parts[0]! + 0.7152 * parts[1]! + 0.0722 * parts[2]!;
}

describe("depthBands", () => {
  it("is nothing where the ground is as found", () => {
    expect(depthBands({ deepest: 0, highest: 0 }, "us")).toBeNull();
    expect(depthBands({ deepest: 1e-6, highest: 0.003 }, "metric")).toBeNull();
  });

  it("has whole feet for a tank's hole and a heap, each with its own step", () => {
    const { cut, fill } = bandsOf(8.9 * FOOT, 11.1 * FOOT, "us");
    expect(bandLimits(cut, "us")).toEqual(["0", "2", "4", "6", "8", "10"]);
    expect(bandLimits(fill, "us")).toEqual(["0", "3", "6", "9", "12"]);
    expect([bandUnit(cut, "us"), cut.step / FOOT]).toEqual(["ft", 2]);
  });

  it("has inches for what is under a few feet", () => {
    const { cut, fill } = bandsOf(1.2 * FOOT, 0, "us");
    expect([cut.count, fill.count]).toEqual([5, 0]);
    expect(bandLimits(cut, "us")).toEqual(["0", "3", "6", "9", "12", "15"]);
    expect(bandUnit(cut, "us")).toBe("in");
  });

  it("has round metres", () => {
    const { cut, fill } = bandsOf(2.4, 0.22, "metric");
    expect(bandLimits(cut, "metric")).toEqual(["0", "0.5", "1.0", "1.5", "2.0", "2.5"]);
    expect(bandLimits(fill, "metric")).toEqual(["0", "0.05", "0.10", "0.15", "0.20", "0.25"]);
  });

  it("holds every depth in five bands or fewer, and never in one where two would do", () => {
    for (let k = 0; k < 400; k++) {
      const deepest = 0.01 * 1.03 ** k;
      for (const units of ["us", "metric"] as const) {
        const { step, count, most } = bandsOf(deepest, 0, units).cut;
        expect(most).toBe(deepest);
        expect(count).toBeLessThanOrEqual(5);
        expect(count * step).toBeGreaterThan(deepest * (1 - 1e-4));
        if (deepest > 0.08) expect(count).toBeGreaterThan(1);
      }
    }
  });
});

describe("bandTones", () => {
  it("darkens from band to band so that greys tell them apart", () => {
    for (const side of ["cut", "fill"] as const) {
      for (let count = 2; count <= 6; count++) {
        const greys = bandTones(side, count).map(luminance);
        for (let i = 1; i < count; i++) {
          // A contrast of 1.2 between neighbours, as greys.
          expect((greys[i - 1]! + 0.05) / (greys[i]! + 0.05)).toBeGreaterThan(1.2);
        }
      }
    }
  });
});
