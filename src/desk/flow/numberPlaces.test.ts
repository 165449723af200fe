import { describe, expect, it } from "vitest";
import { numberPlaces } from "./numberPlaces.js";

describe("places of numbers", () => {
  it("never nearer than asked, inside the row, in order", () => {
    for (const wanted of [
      [0, 0, 0],
      [100, 100, 99, 20],
      [50, 51, 52, 53, 54, 55],
    ]) {
      const sorted = [...wanted].sort((a, b) => a - b);
      const xs = numberPlaces(sorted, 18, 8, 108).map((one) => one.x);
      xs.slice(1).forEach((x, i) => {
        expect(x - xs[i]!).toBeGreaterThanOrEqual(18 - 1e-9);
      });
      expect(Math.min(...xs)).toBeGreaterThanOrEqual(8 - 1e-9);
      expect(Math.max(...xs)).toBeLessThanOrEqual(108 + 1e-9);
    }
  });
  it("takes further rows when one is full", () => {
    const placed = numberPlaces(Array<number>(9).fill(10), 20, 0, 60);
    expect(new Set(placed.map((one) => one.row)).size).toBe(3);
    const all = placed.map((one) => one.x);
    expect(Math.min(...all)).toBeGreaterThanOrEqual(-1e-9);
    expect(Math.max(...all)).toBeLessThanOrEqual(60 + 1e-9);
    for (const row of [0, 1, 2]) {
      const xs = placed.filter((one) => one.row === row).map((one) => one.x);
      expect(xs[1]! - xs[0]!).toBeGreaterThanOrEqual(20 - 1e-9);
    }
  });
});
