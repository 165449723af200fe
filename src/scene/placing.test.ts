import { describe, expect, it } from "vitest";
import { leastCorners, placingHint, stepPlacing, type Corners } from "./placing.js";

describe("stepPlacing", () => {
  it("places a tank with one click", () => {
    expect(stepPlacing("tank", [], { type: "click", at: [3, 4] }).placed).toEqual([[3, 4]]);
  });

  it("gathers a pad's corners and finishes only with three", () => {
    let corners: Corners = [];
    for (const at of [
      [0, 0],
      [5, 0],
    ] as const) {
      corners = stepPlacing("pad", corners, { type: "click", at: [...at] }).corners;
    }
    expect(stepPlacing("pad", corners, { type: "finish" })).toEqual({ corners, placed: null });
    corners = stepPlacing("pad", corners, { type: "click", at: [5, 5] }).corners;
    const done = stepPlacing("pad", corners, { type: "finish" });
    expect(done.placed).toEqual([
      [0, 0],
      [5, 0],
      [5, 5],
    ]);
    expect(done.corners).toEqual([]);
  });

  it("takes a double click's second click for no new bend", () => {
    const one = stepPlacing("trench", [[0, 0]], { type: "click", at: [4, 0] }).corners;
    expect(stepPlacing("trench", one, { type: "click", at: [4, 0.01] }).corners).toHaveLength(2);
  });

  it("takes the last corner back", () => {
    expect(
      stepPlacing(
        "pad",
        [
          [0, 0],
          [1, 0],
        ],
        { type: "back" },
      ).corners,
    ).toEqual([[0, 0]]);
    expect(stepPlacing("pad", [], { type: "back" }).corners).toEqual([]);
  });

  it("never finishes a single place without a click", () => {
    expect(stepPlacing("probe", [], { type: "finish" }).placed).toBeNull();
  });
});

describe("placingHint", () => {
  it("speaks of finishing only once there is enough", () => {
    const least = leastCorners("trench");
    expect(placingHint("trench", least - 1)).not.toMatch(/finish/);
    expect(placingHint("trench", least)).toMatch(/finish with Enter/);
  });
});
