import { describe, expect, it } from "vitest";
import type { PlanPoint } from "../site/index.js";
import {
  cornerLines,
  drawingLines,
  snapMove,
  snapPlace,
  type SnapAsk,
  type SnapTarget,
} from "./snap.js";

const pad: SnapTarget = {
  name: "Bed pad",
  shape: "outline",
  places: [
    [10, 10],
    [20, 10],
    [20, 16],
    [10, 16],
  ],
};
const trench: SnapTarget = {
  name: "Drain",
  shape: "path",
  places: [
    [0, 30],
    [10, 30],
  ],
};

function ask(at: PlanPoint, more: Partial<SnapAsk> = {}): SnapAsk {
  return {
    at,
    targets: [pad, trench],
    lines: [],
    close: null,
    from: null,
    contours: null,
    reach: 0.5,
    step: 0.1,
    ...more,
  };
}

describe("snapPlace", () => {
  it("goes to the nearest corner within reach, and to none beyond it", () => {
    expect(snapPlace(ask([10.3, 9.8]))).toEqual({
      at: [10, 10],
      holds: [{ by: "corner", of: "Bed pad", shape: "outline" }],
    });
    expect(snapPlace(ask([10.3, 9.8], { reach: 0.3 })).holds).not.toContainEqual(
      expect.objectContaining({ by: "corner" }),
    );
  });

  it("prefers a corner to the edge that is nearer", () => {
    expect(snapPlace(ask([10.4, 10.01])).at).toEqual([10, 10]);
  });

  it("goes to the foot of the perpendicular on an edge, the closing side too", () => {
    expect(snapPlace(ask([15.03, 10.3])).at).toEqual([15.03, 10]);
    const west = snapPlace(ask([9.7, 13.21]));
    expect(west.at).toEqual([10, 13.21]);
    expect(west.holds).toEqual([{ by: "edge", of: "Bed pad", shape: "outline" }]);
  });

  it("does not close a path: there is no side from its end to its start", () => {
    const bent: SnapTarget = { ...trench, places: [...trench.places, [5, 38]] };
    expect(snapPlace(ask([2.5, 34], { targets: [bent] })).holds).toEqual([]);
  });

  it("holds an edge and a right angle at their crossing", () => {
    const lines = drawingLines(
      [
        [0, 2],
        [15, 2],
      ],
      true,
    );
    const held = snapPlace(ask([15.2, 10.3], { lines, from: [15, 2] }));
    expect(held.at[0]).toBeCloseTo(15, 12);
    expect(held.at[1]).toBeCloseTo(10, 12);
    expect(held.holds.map(({ by }) => by)).toEqual(["edge", "square"]);
  });

  it("holds the right angle with a round length from the last corner", () => {
    const corners: PlanPoint[] = [
      [0, 0],
      [4, 3],
    ];
    const held = snapPlace(ask([1.1, 7.3], { lines: drawingLines(corners, false), from: [4, 3] }));
    expect(held.holds).toEqual([{ by: "square" }]);
    // (−3, 4)/5 is square to (4, 3)/5.
    const length = Math.hypot(held.at[0] - 4, held.at[1] - 3);
    expect((held.at[0] - 4) * 4 + (held.at[1] - 3) * 3).toBeCloseTo(0, 9);
    expect(length / 0.1).toBeCloseTo(Math.round(length / 0.1), 9);
  });

  it("finds a rectangle's fourth corner: square to the last leg and in line with the first corner", () => {
    const corners: PlanPoint[] = [
      [0, 0],
      [8, 0],
      [8, 5.03],
    ];
    const held = snapPlace(
      ask([0.2, 5.2], { lines: drawingLines(corners, true), from: [8, 5.03] }),
    );
    expect(held.at[0]).toBeCloseTo(0, 12);
    expect(held.at[1]).toBeCloseTo(5.03, 12);
    expect(held.holds.map(({ by }) => by).toSorted()).toEqual(["first", "square"]);
  });

  it("closes on the first corner before anything else", () => {
    expect(snapPlace(ask([10.3, 10.1], { close: [10.4, 10.2] })).holds).toEqual([{ by: "close" }]);
  });

  it("goes to a contour of sloping ground where there is room between contours", () => {
    const heightAt = ([x]: PlanPoint): number => 100 + 0.1 * x;
    const contours = { step: 0.5, heightAt };
    const held = snapPlace(ask([35.2, 50], { contours }));
    expect(held.at[0]).toBeCloseTo(35, 6);
    expect(held.at[1]).toBeCloseTo(50, 6);
    expect(held.holds).toEqual([{ by: "contour", elevation: 103.5 }]);
    // From afar 5 m is less than five reaches: contours would hold everywhere.
    expect(snapPlace(ask([35.2, 50], { contours, reach: 1.2 })).holds).toEqual([]);
    expect(snapPlace(ask([37, 50], { contours })).holds).toEqual([]);
  });

  it("crosses a seam of the ground to the contour beyond", () => {
    // Flat 2 % until x = 35.1, then 10 %.
    const heightAt = ([x]: PlanPoint): number =>
      x < 35.1 ? 100 + 0.02 * (x - 35.1) : 100 + 0.1 * (x - 35.1);
    const held = snapPlace(ask([35.0, 50], { contours: { step: 0.5, heightAt }, targets: [] }));
    expect(held.at[0]).toBeCloseTo(35.1, 2);
  });

  it("rounds the leg's length while drawing, and the place itself before the first corner", () => {
    const leg = snapPlace(ask([53.04, 54.06], { from: [50, 50] }));
    expect(Math.hypot(leg.at[0] - 50, leg.at[1] - 50)).toBeCloseTo(5.1, 9);
    expect(leg.holds).toEqual([{ by: "length", length: expect.closeTo(5.1, 9) as number }]);
    expect(snapPlace(ask([53.04, 54.06])).at.map((m) => +m.toFixed(9))).toEqual([53, 54.1]);
  });
});

describe("cornerLines", () => {
  it("gives the lines that make the dragged corner of a rectangle square again", () => {
    const lines = cornerLines(pad.places, true, 2);
    const held = snapPlace(ask([19.8, 16.3], { lines, targets: [] }));
    expect(held.at[0]).toBeCloseTo(20, 12);
    expect(held.at[1]).toBeCloseTo(16, 12);
    expect(held.holds).toEqual([{ by: "square" }]);
  });

  it("has only the legs that an open path has, and none in a triangle", () => {
    const path: PlanPoint[] = [
      [0, 0],
      [5, 0],
      [9, 2],
    ];
    expect(cornerLines(path, false, 2)).toHaveLength(2);
    expect(cornerLines(path, false, 1)).toHaveLength(0);
    expect(cornerLines(path, true, 1)).toHaveLength(0);
  });
});

describe("snapMove", () => {
  const own: PlanPoint[] = [
    [0, 0],
    [3, 0],
    [3, 2],
    [0, 2],
  ];
  const move = { own, place: [0, 0] as PlanPoint, targets: [pad], reach: 0.5, step: 0.1 };

  it("brings the nearest own corner on a corner", () => {
    const held = snapMove({ ...move, by: [7.2, 7.9] });
    expect(held.by).toEqual([7, 8]);
    expect(held.at).toEqual([10, 10]);
    expect(held.holds).toEqual([{ by: "corner", of: "Bed pad", shape: "outline" }]);
  });

  it("brings an own corner on an edge when no corner is near", () => {
    const held = snapMove({ ...move, by: [6.8, 11.13] });
    expect(held.by).toEqual([7, 11.13]);
    expect(held.holds[0]).toMatchObject({ by: "edge" });
  });

  it("puts the thing's place on the grid when nothing is near", () => {
    const held = snapMove({ ...move, place: [0.03, 0], by: [-20.01, 0.02] });
    expect(held.by[0]).toBeCloseTo(-20.03, 9);
    expect(held.by[1]).toBeCloseTo(0, 9);
    expect(held.holds).toEqual([]);
  });
});
