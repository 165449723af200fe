import { describe, expect, test } from "vitest";
import { inRoom } from "./clip.js";
import { metresOf, mmOf, onPaper, shownOf, type PlanFrame } from "./planFrame.js";
import { extentOf, fittingScale, PLAN_SCALES } from "./scales.js";

const room = { left: 13, top: 13, width: 200, height: 150 };

describe("a plan on paper", () => {
  test.each([50, 240, 500])("10 m is 10,000 ÷ %d mm, far from the origin too", (scale) => {
    const frame: PlanFrame = { room, middle: [512_300.25, 4_731_200.5], scale };
    const a = onPaper(frame, [512_300.25, 4_731_200.5]);
    const east = onPaper(frame, [512_310.25, 4_731_200.5]);
    const north = onPaper(frame, [512_300.25, 4_731_210.5]);
    expect(a).toEqual([113, 88]);
    expect(east[0] - a[0]).toBeCloseTo(10_000 / scale, 6);
    expect(east[1]).toBe(a[1]);
    // y runs down the paper.
    expect(a[1] - north[1]).toBeCloseTo(10_000 / scale, 6);
    expect(metresOf(frame, mmOf(frame, 7.3))).toBeCloseTo(7.3, 12);
  });

  test("what it shows of some land ends with the paper, or with the land where that ends first", () => {
    // 20 m × 15 m about 0, 0 on this room.
    const frame: PlanFrame = { room, middle: [0, 0], scale: 100 };
    const land: [number, number][] = [
      [-4, -30],
      [25, -30],
      [25, 6],
      [-4, 6],
    ];
    expect(shownOf(frame, land)).toEqual([
      [-4, -7.5],
      [10, -7.5],
      [10, 6],
      [-4, 6],
    ]);
    expect(
      shownOf(frame, [
        [11, 0],
        [12, 5],
      ]),
    ).toEqual([]);
  });

  test("1 in is 20 ft at 1 : 240", () => {
    expect(mmOf({ scale: 240 }, 20 * 0.3048)).toBeCloseTo(25.4, 12);
  });
});

describe("the scale of a plan", () => {
  test.each(["us", "metric"] as const)("is the largest usual one that fits (%s)", (units) => {
    for (const wide of [1, 7.7, 18.9, 40, 55, 81, 230, 900]) {
      const extent = { west: 0, south: 0, east: wide, north: wide / 3 };
      const scale = fittingScale(extent, room, units, 5);
      expect((wide * 1000) / scale).toBeLessThanOrEqual(190 + 1e-6);
      const larger = PLAN_SCALES[units].filter((each) => each < scale);
      for (const each of larger) expect((wide * 1000) / each).toBeGreaterThan(190);
    }
  });

  test("goes on past the list, and is told of a room too small", () => {
    const extent = extentOf([
      [0, 0],
      [30_000, 10],
    ]);
    if (extent === null) throw new Error("two places have a box");
    const scale = fittingScale(extent, room, "metric", 5);
    expect(scale % 1000).toBe(0);
    expect(30_000_000 / scale).toBeLessThanOrEqual(190);
    expect(() => fittingScale(extent, { width: 8, height: 90 }, "us", 5)).toThrow(/larger/);
  });

  test("a spot on the edge of a room is in it", () => {
    expect(inRoom(room, [13, 163])).toBe(true);
    expect(inRoom(room, [13, 163], 0.1)).toBe(false);
  });
});
