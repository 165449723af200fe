import { describe, expect, it } from "vitest";
import { fitSection, heightOn, ticks } from "./fit.js";

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

describe("ticks", () => {
  it("are round in the site's own unit", () => {
    expect(ticks(98.2, 100.6, 0.4, "metric").map(({ text }) => text)).toEqual([
      "98.5",
      "99.0",
      "99.5",
      "100.0",
      "100.5",
    ]);
    const feet = ticks(0, 6, 1.2, "us");
    expect(feet.map(({ text }) => text)).toEqual(["0", "5", "10", "15"]);
    expect(feet[1]!.at).toBeCloseTo(1.524, 9);
  });
});

describe("heightOn", () => {
  it("reads a line with a step and a gap", () => {
    const lines = [
      [
        [0, 10],
        [4, 12],
        [4, 9],
        [5, 9],
      ],
      [
        [7, 8],
        [8, 8],
      ],
    ] as const;
    expect(heightOn(lines, 2)).toBe(11);
    expect(heightOn(lines, 4)).toBe(9);
    expect(heightOn(lines, 6)).toBeNull();
  });
});
