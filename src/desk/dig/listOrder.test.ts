import { describe, expect, it } from "vitest";
import { dropLine, placeInList } from "./listOrder.js";

const middles = [10, 30, 50, 70];

describe("where a row of the list goes", () => {
  it("is after those whose middles lie above the pointer", () => {
    expect(placeInList(middles, 0, 55)).toBe(2);
    expect(placeInList(middles, 3, 5)).toBe(0);
    expect(placeInList(middles, 3, 35)).toBe(2);
    expect(placeInList(middles, 1, 500)).toBe(3);
  });

  it("is its own place until it has passed a neighbour's middle", () => {
    expect(placeInList(middles, 1, 12)).toBe(1);
    expect(placeInList(middles, 1, 48)).toBe(1);
    expect(placeInList(middles, 1, 9)).toBe(0);
    expect(placeInList(middles, 1, 51)).toBe(2);
  });

  it("is shown on the far side of the row it passes", () => {
    expect(dropLine(1, 1)).toBeNull();
    expect(dropLine(2, 0)).toEqual({ row: 0, side: "above" });
    expect(dropLine(0, 2)).toEqual({ row: 2, side: "below" });
  });
});
