import { describe, expect, it } from "vitest";
import { movedWindow } from "./movedWindow.js";

describe("a plan moved on its paper", () => {
  it("shows what lies against the way it was moved, by the scale", () => {
    // 50 mm at 1 : 240 are 12 m: moved right, what is to the west comes into view; down, the north.
    expect(movedWindow({ middle: [100, 200], scale: 240 }, [50, 0])).toEqual({
      middle: [88, 200],
      scale: 240,
    });
    expect(movedWindow({ middle: [100, 200], scale: 240 }, [0, 50]).middle).toEqual([100, 212]);
  });
});
