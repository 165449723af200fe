import { describe, expect, it } from "vitest";
import { heightOn } from "./heightOn.js";

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
