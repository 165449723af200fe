import { describe, expect, it } from "vitest";
import { fitSection } from "./fit.js";

const frame = { left: 40, top: 10, width: 800, height: 200 };

describe("fitSection", () => {
  it("takes the most of the usual stretches that fits", () => {
    const fit = fitSection(40, { lowest: 95, highest: 100 }, frame, null);
    expect(fit.across).toBe(20);
    expect(fit.stretch).toBe(1.5);
    expect(fit.up * (fit.top - 95)).toBeLessThanOrEqual(200);
    expect(fit.bottom).toBeLessThanOrEqual(95);
  });

  it("narrows the section where its height would not fit", () => {
    const fit = fitSection(10, { lowest: 80, highest: 100 }, frame, null);
    expect(fit.stretch).toBe(1);
    expect(fit.across).toBeCloseTo(fit.up, 12);
    expect(fit.across * 10).toBeLessThan(800);
    expect(fit.left).toBeCloseTo(40 + (800 - fit.across * 10) / 2, 9);
  });

  it("keeps to the stretch that was chosen", () => {
    const fit = fitSection(40, { lowest: 90, highest: 100 }, frame, 5);
    expect(fit.up / fit.across).toBeCloseTo(5, 12);
    expect(fit.bottom).toBeCloseTo(90, 9);
  });
});
