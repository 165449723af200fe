import { describe, expect, it } from "vitest";
import { roundTicks, spread } from "./ticks.js";

describe("round ticks", () => {
  it("are round and lie inside", () => {
    expect(roundTicks(0, 42, 5)).toEqual([0, 10, 20, 30, 40]);
    expect(roundTicks(0.3, 1.9, 4)).toEqual([0.5, 1, 1.5]);
  });
  it("are one where there is no span", () => {
    expect(roundTicks(3, 3, 4)).toEqual([3]);
  });
});

describe("spread labels", () => {
  it("keep their order and come no nearer than asked", () => {
    const placed = spread([10, 11, 12, 40], 8);
    expect(placed[1]! - placed[0]!).toBeGreaterThanOrEqual(7.99);
    expect(placed[2]! - placed[1]!).toBeGreaterThanOrEqual(7.99);
    expect(placed[3]).toBeCloseTo(40, 5);
  });
});
