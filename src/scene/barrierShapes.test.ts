import { expect, it } from "vitest";
import { barrierCloth, barrierInk } from "./barrierShapes.js";
import type { ScenePoint } from "./frame.js";

/** 10 m along x in quarter metres, the ground rising. */
const line = Array.from({ length: 41 }, (_, i): ScenePoint => [i / 4, 3, i / 100]);

it("the cloth of a barrier stands on its line, as high all along", () => {
  const cloth = barrierCloth([line]);
  expect(cloth).toHaveLength(40 * 2 * 9);
  let area = 0;
  for (let i = 0; i < cloth.length; i += 9) {
    // Triangles in the upright plane of y = 3.
    const at = (k: number): number => cloth[i + k]!;
    area += Math.abs((at(3) - at(0)) * (at(8) - at(2)) - (at(6) - at(0)) * (at(5) - at(2))) / 2;
    expect(at(1)).toBe(3);
  }
  expect(area).toBeCloseTo(10 * 0.6, 4);
});

it("its stakes stand two metres apart, at both ends too, and lines stay apart", () => {
  const uprights = (ends: Float32Array): number[] => {
    const found: number[] = [];
    for (let i = 0; i < ends.length; i += 6) if (ends[i] === ends[i + 3]) found.push(ends[i]!);
    return found;
  };
  expect(uprights(barrierInk([line]))).toEqual([0, 2, 4, 6, 8, 10]);
  expect(uprights(barrierInk([line, line]))).toHaveLength(12);
  expect(barrierInk([])).toHaveLength(0);
  expect(barrierCloth([[[0, 0, 0]]])).toHaveLength(0);
});
