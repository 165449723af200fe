import { describe, expect, it } from "vitest";
import { areaOutline, centreOfArea } from "./planShape.js";
import type { PlanPoint } from "./schema.js";
import { plainPad, plainStrip, plainTank, plainTrench } from "./site.fixture.js";

/** An L of a square of 4 with the quarter of 2 beyond (2, 2) cut out, moved far from the origin. */
const far: PlanPoint = [1e5, -2e5];
const ell: PlanPoint[] = (
  [
    [0, 0],
    [4, 0],
    [4, 2],
    [2, 2],
    [2, 4],
    [0, 4],
  ] as const
).map(([x, y]) => [x + far[0], y + far[1]]);

describe("centreOfArea", () => {
  it("is that of an L by its parts, whichever way round", () => {
    // 8 m² at (2, 1) and 4 m² at (1, 3).
    const [x, y] = [(8 * 2 + 4 * 1) / 12, (8 * 1 + 4 * 3) / 12];
    for (const outline of [ell, ell.toReversed()]) {
      const [cx, cy] = centreOfArea(outline);
      expect(cx - far[0]).toBeCloseTo(x, 9);
      expect(cy - far[1]).toBeCloseTo(y, 9);
    }
  });

  it("is the mean of corners that lie in one line", () => {
    expect(
      centreOfArea([
        [0, 0],
        [2, 0],
        [4, 0],
      ]),
    ).toEqual([2, 0]);
  });
});

describe("areaOutline", () => {
  it("is a tank's body, turned with its bearing", () => {
    // 3 m long, 2 m wide, long side to the east.
    const corners = areaOutline(plainTank({ bearing: 90, at: [10, 20] })) ?? [];
    const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([8.5, 11.5]);
    expect(Math.min(...ys)).toBeCloseTo(19, 12);
    expect(Math.max(...ys)).toBeCloseTo(21, 12);
  });

  it("is a pad's own corners, and nothing for what has no area", () => {
    expect(areaOutline(plainPad())).toHaveLength(4);
    expect(areaOutline(plainTrench())).toBeNull();
    expect(areaOutline(plainStrip())).toBeNull();
  });
});
