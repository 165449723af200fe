import { describe, expect, it } from "vitest";
import fc from "fast-check";
import { hatchArea, ringOfCircle } from "./hatch.js";
import type { Spot } from "./paper.js";

const PEN = { width: 0.18, color: "#000000" };
const square = (left: number, top: number, side: number): Spot[] => [
  [left, top],
  [left + side, top],
  [left + side, top + side],
  [left, top + side],
];
const lengthOf = (strokes: readonly (readonly [Spot, Spot])[]): number =>
  strokes.reduce((sum, [a, b]) => sum + Math.hypot(b[0] - a[0], b[1] - a[1]), 0);

describe("strokes of a hatch", () => {
  it("cover an area evenly at any turn: their length by the gap is the area", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 180, noNaN: true }), (turn) => {
        const rings = [ringOfCircle([50, 40], 20)];
        const { strokes } = hatchArea(rings, { kind: "lines", turn, gap: 0.25, pen: PEN });
        expect((lengthOf(strokes) * 0.25) / (Math.PI * 400)).toBeCloseTo(1, 1);
      }),
    );
  });

  it("leave out holes, by the even-odd rule", () => {
    const rings = [square(0, 0, 20), square(5, 5, 10)];
    const { strokes } = hatchArea(rings, { kind: "lines", turn: 45, gap: 0.5, pen: PEN });
    expect(Math.abs(lengthOf(strokes) * 0.5 - 300)).toBeLessThan(8);
    for (const [a, b] of strokes) {
      const [x, y] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
      expect(x > 5.01 && x < 14.99 && y > 5.01 && y < 14.99).toBe(false);
    }
  });

  it("run on from one area into its neighbour", () => {
    const left = hatchArea([square(0, 0, 10)], { kind: "lines", turn: 0, gap: 1.3, pen: PEN });
    const right = hatchArea([square(10, 0, 10)], { kind: "lines", turn: 0, gap: 1.3, pen: PEN });
    expect(right.strokes.map(([a]) => a[1])).toEqual(left.strokes.map(([a]) => a[1]));
  });
});

it("sets dots within the area only, one to so much of it", () => {
  const rings = [square(0, 0, 30), square(10, 10, 10)];
  const { dots } = hatchArea(rings, { kind: "dots", gap: 1, size: 0.3, color: "#000000" });
  for (const [x, y] of dots) expect(x > 10.01 && x < 19.99 && y > 10.01 && y < 19.99).toBe(false);
  // A triangular lattice of side 1 has one place to every √3 ÷ 2 of area.
  expect(dots.length / (800 / (Math.sqrt(3) / 2))).toBeCloseTo(1, 1);
});

it("refuses a gap of nothing", () => {
  expect(() => hatchArea([square(0, 0, 1)], { kind: "lines", turn: 0, gap: 0, pen: PEN })).toThrow(
    /more than 0/,
  );
});
