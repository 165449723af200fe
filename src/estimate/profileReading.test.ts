import { describe, expect, it } from "vitest";
import { layersAt } from "./profileReading.js";

describe("layers at a station", () => {
  const soil = {
    material: "soil",
    outline: [
      [0, 8],
      [10, 8],
      [10, 12],
      [0, 10],
    ] as const,
    holes: [],
  };
  const rock = {
    material: "rock",
    outline: [
      [0, 0],
      [10, 0],
      [10, 8],
      [0, 8],
    ] as const,
    holes: [],
  };
  it("reads tops and bottoms on slanted edges, from the top down", () => {
    const layers = layersAt([rock, soil], 5, 10);
    expect(layers.map((one) => one.material)).toEqual(["soil", "rock"]);
    expect(layers[0]?.top).toBeCloseTo(11, 5);
    expect(layers[0]?.bottom).toBeCloseTo(8, 5);
    expect(layers[1]?.bottom).toBeCloseTo(0, 5);
  });
  it("reads at either end and leaves a hole out", () => {
    expect(layersAt([soil], 0, 10)[0]?.top).toBeCloseTo(10, 4);
    expect(layersAt([soil], 10, 10)[0]?.top).toBeCloseTo(12, 4);
    const holed = {
      ...rock,
      holes: [
        [
          [2, 3],
          [2, 5],
          [6, 5],
          [6, 3],
        ] as const,
      ],
    };
    const tops = layersAt([holed], 4, 10).map((one) => one.top);
    expect(tops).toHaveLength(2);
    expect(tops[1]).toBeCloseTo(3, 5);
  });
});
