import { describe, expect, it } from "vitest";
import type { ScreenPoint } from "./dragging.js";
import { beginTwist, stepTwist } from "./twisting.js";

/** Two fingers `apart` px from each other, the second at a direction (degrees clockwise from up). */
function fingers(degrees: number, apart = 120): [ScreenPoint, ScreenPoint] {
  const a = (degrees * Math.PI) / 180;
  const [x, y] = [(Math.sin(a) * apart) / 2, (Math.cos(a) * apart) / 2];
  return [
    { left: 200 - x, top: 300 + y },
    { left: 200 + x, top: 300 - y },
  ];
}

/** Degrees that the picture turns in all while the fingers go through directions. */
function turnedBy(directions: readonly number[], apart?: (i: number) => number): number {
  let twist = beginTwist(...fingers(directions[0] ?? 0));
  let all = 0;
  directions.slice(1).forEach((degrees, i) => {
    const step = stepTwist(twist, ...fingers(degrees, apart?.(i)));
    twist = step.twist;
    all += step.by;
  });
  return all;
}

describe("a twist", () => {
  it("turns the picture with the fingers once it is meant, clockwise for clockwise", () => {
    // The first two steps, to 8°, are needed to be sure.
    expect(turnedBy([0, 4, 8, 18, 38])).toBeCloseTo(30, 9);
    expect(turnedBy([0, -4, -8, -18, -38])).toBeCloseTo(-30, 9);
  });

  it("leaves the picture alone in a pinch that wavers", () => {
    expect(turnedBy([10, 13, 8, 12, 15, 6, 10], (i) => 120 + 30 * i)).toBe(0);
  });

  it("goes on across the upward direction, and back", () => {
    expect(turnedBy([340, 350, 0, 10, 20])).toBeCloseTo(30, 9);
    expect(turnedBy([20, 5, 350, 340])).toBeCloseTo(-25, 9);
  });
});
