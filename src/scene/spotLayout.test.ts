import { describe, expect, it } from "vitest";
import { boxAround, laySpots, type ScreenBox } from "./spotLayout.js";

const bounds: ScreenBox = { left: 0, top: 0, width: 300, height: 200 };
const at = (left: number, top: number): ScreenBox => ({ left, top, width: 40, height: 12 });

describe("laySpots", () => {
  it("takes the first seat that is free", () => {
    expect(laySpots([[at(10, 10)], [at(30, 15), at(60, 15)]], [], bounds)).toEqual([0, 1]);
  });

  it("leaves out what would be cut at the edge or written over something", () => {
    expect(laySpots([[at(270, 10)], [at(10, 10)]], [at(20, 5)], bounds)).toEqual([null, null]);
  });
});

describe("boxAround", () => {
  it("holds every place that shows", () => {
    const places = [{ left: 5, top: 9 }, null, { left: 1, top: 20 }];
    expect(boxAround(places)).toEqual({ left: 1, top: 9, width: 4, height: 11 });
    expect(boxAround([null])).toBeNull();
  });
});
