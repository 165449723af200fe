import { describe, expect, it } from "vitest";
import { layersAt, numberPlaces } from "./profileReading.js";

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

describe("places of numbers", () => {
  it("never nearer than asked, inside the row, in order", () => {
    for (const wanted of [
      [0, 0, 0],
      [100, 100, 99, 20],
      [50, 51, 52, 53, 54, 55],
    ]) {
      const sorted = [...wanted].sort((a, b) => a - b);
      const xs = numberPlaces(sorted, 18, 8, 108).map((one) => one.x);
      xs.slice(1).forEach((x, i) => {
        expect(x - xs[i]!).toBeGreaterThanOrEqual(18 - 1e-9);
      });
      expect(Math.min(...xs)).toBeGreaterThanOrEqual(8 - 1e-9);
      expect(Math.max(...xs)).toBeLessThanOrEqual(108 + 1e-9);
    }
  });
  it("takes further rows when one is full", () => {
    const placed = numberPlaces(Array<number>(9).fill(10), 20, 0, 60);
    expect(new Set(placed.map((one) => one.row)).size).toBe(3);
    const all = placed.map((one) => one.x);
    expect(Math.min(...all)).toBeGreaterThanOrEqual(-1e-9);
    expect(Math.max(...all)).toBeLessThanOrEqual(60 + 1e-9);
    for (const row of [0, 1, 2]) {
      const xs = placed.filter((one) => one.row === row).map((one) => one.x);
      expect(xs[1]! - xs[0]!).toBeGreaterThanOrEqual(20 - 1e-9);
    }
  });
});
