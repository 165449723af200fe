import { describe, expect, it } from "vitest";
import { topOver } from "./topOver.js";

/** Ground that rises 1 in 10 from 100 m, with a trench from 20 to 21 m. */
const GROUND: [number, number][][] = [
  [
    [0, 90],
    [20, 90],
    [20, 102],
    [0, 100],
  ],
  [
    [21, 90],
    [40, 90],
    [40, 104],
    [21, 102.1],
  ],
];

describe("topOver", () => {
  it("is the ground's height there, and beside a trench that of its higher side", () => {
    expect(topOver(GROUND, 10, 0)).toBeCloseTo(101, 9);
    expect(topOver(GROUND, 20.5, 0.5)).toBeCloseTo(102.1, 9);
    expect(topOver(GROUND, 20.5, 2)).toBeCloseTo(102.1 + 1.5 * (1.9 / 19), 9);
  });

  it("is nothing over a gap, or beyond the ground", () => {
    expect(topOver(GROUND, 20.5, 0.2)).toBeNull();
    expect(topOver(GROUND, 50, 1)).toBeNull();
  });
});
