import { describe, expect, it } from "vitest";
import { contourStep } from "../estimate/index.js";
import { scaleBar, snapStep } from "./figures.js";

describe("scaleBar", () => {
  it("is a round length, no wider than it may be, and true to the scale", () => {
    for (const perPixel of [0.003, 0.021, 0.4, 7]) {
      const bar = scaleBar("us", perPixel, 140);
      expect(bar.pixels).toBeLessThanOrEqual(140);
      expect(bar.pixels).toBeGreaterThan(140 * 0.39);
      expect(bar.pixels * perPixel).toBeCloseTo(bar.metres, 9);
      expect(bar.metres / 0.3048).toBeCloseTo(Number.parseFloat(bar.text), 6);
    }
    expect(scaleBar("metric", 0.1, 120).text).toBe("10 m");
  });
});

describe("steps", () => {
  it("are whole in the site's units", () => {
    expect(contourStep(7, "us")).toBeCloseTo(0.3048, 9);
    expect(contourStep(7, "metric")).toBe(0.5);
    expect(snapStep("us")).toBeCloseTo(0.0762, 9);
    expect(snapStep("metric")).toBe(0.1);
  });
});
