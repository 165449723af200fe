import { describe, expect, test } from "vitest";
import { scaleFor, SECTION_SCALES } from "./scales.js";
import { boxOf, spotOf, type View } from "./view.js";

const view: View = {
  left: 20,
  top: 30,
  from: -2,
  to: 18,
  high: 105,
  low: 100,
  along: 100,
  up: 50,
};

describe("a place of a section on paper", () => {
  test("10 m along at 1 : 100 are 100 mm, 1 m up at 1 : 50 is 20 mm", () => {
    const [a, b] = [spotOf(view, [0, 104]), spotOf(view, [10, 103])];
    expect(b[0] - a[0]).toBeCloseTo(100, 9);
    expect(b[1] - a[1]).toBeCloseTo(20, 9);
    expect(a).toEqual([40, 50]);
  });

  test("its box ends where the last station and the lowest height are", () => {
    const [left, top, width, height] = boxOf(view);
    expect([left + width, top + height]).toEqual([...spotOf(view, [18, 100])]);
  });
});

describe("scales", () => {
  test.each([
    [25, 200, "metric", 200],
    [20, 200, "metric", 100],
    [20.001, 200, "metric", 200],
    [25.4, 211.7, "us", 120],
    [1e6, 100, "metric", 1e7],
  ] as const)("%d m in %d mm on a %s site: 1 : %d", (metres, mm, units, scale) => {
    expect(scaleFor(metres, mm, units)).toBe(scale);
  });

  test("lists go from large to small", () => {
    for (const list of Object.values(SECTION_SCALES)) {
      expect([...list].sort((a, b) => a - b)).toEqual(list);
    }
  });
});
