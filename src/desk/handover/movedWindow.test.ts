import { describe, expect, it } from "vitest";
import { movedWindow, windowOnLot } from "./movedWindow.js";

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

describe("a plan's window and the lot", () => {
  // A lot with a notch: its box's north-east corner is not of it.
  const lot: [number, number][] = [
    [0, 0],
    [100, 0],
    [100, 40],
    [40, 40],
    [40, 100],
    [0, 100],
  ];

  it("leaves a window alone whose middle is on the lot", () => {
    const shown = { middle: [60, 20], scale: 240 } as const;
    expect(windowOnLot(shown, lot)).toBe(shown);
  });

  it("keeps the lot in sight however far the plan is dragged, and at any scale", () => {
    const away = movedWindow({ middle: [60, 20], scale: 240 }, [-5000, 0]);
    expect(away.middle).toEqual([1260, 20]);
    expect(windowOnLot(away, lot)).toEqual({ middle: [100, 20], scale: 240 });
    expect(windowOnLot({ middle: [90, 70], scale: 60 }, lot)).toEqual({
      middle: [90, 40],
      scale: 60,
    });
  });

  it("has nothing to hold to where there is no lot", () => {
    expect(windowOnLot({ middle: [9e3, 0], scale: 60 }, []).middle).toEqual([9e3, 0]);
  });
});
