import { describe, expect, it } from "vitest";
import fc from "fast-check";
import type { PlanPoint } from "../site/index.js";
import { planDistance, rectangleInPlan, segmentDistance } from "./planDistance.js";

const line = (...points: PlanPoint[]) => ({ points, closed: false });
const area = (...points: PlanPoint[]) => ({ points, closed: true });

describe("rectangleInPlan", () => {
  it("lays the long side along the bearing, clockwise from north", () => {
    const { points } = rectangleInPlan({ at: [10, 20], bearing: 90, length: 4, width: 2 });
    const xs = points.map((p) => p[0]);
    const ys = points.map((p) => p[1]);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(4, 12);
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(2, 12);
  });

  it("turns clockwise: at 30° the far end lies east of north", () => {
    const { points } = rectangleInPlan({ at: [0, 0], bearing: 30, length: 2, width: 0.000001 });
    expect(points[2]?.[0]).toBeCloseTo(0.5, 5);
    expect(points[2]?.[1]).toBeCloseTo(Math.sqrt(3) / 2, 5);
  });

  it("winds counter-clockwise", () => {
    const { points } = rectangleInPlan({ at: [3, 4], bearing: 73, length: 5, width: 2 });
    const twice = points.reduce((sum, p, i) => {
      const q = points[(i + 1) % points.length] ?? p;
      return sum + p[0] * q[1] - q[0] * p[1];
    }, 0);
    expect(twice / 2).toBeCloseTo(10, 9);
  });
});

describe("planDistance", () => {
  it("measures square to an edge, to a corner, and 0 inside", () => {
    const box = area([0, 0], [4, 0], [4, 2], [0, 2]);
    expect(planDistance(box, line([2, 5]))).toBe(3);
    expect(planDistance(box, line([7, 6]))).toBe(5);
    expect(planDistance(box, line([1, 1]))).toBe(0);
    expect(planDistance(line([1, 1]), box)).toBe(0);
  });

  it("finds 0 for a line that crosses an area with both ends outside", () => {
    expect(planDistance(area([0, 0], [4, 0], [4, 2], [0, 2]), line([-1, 1], [9, 1]))).toBe(0);
  });

  it("leaves the notch of a concave outline outside", () => {
    const notched = area([0, 0], [10, 0], [10, 10], [6, 10], [6, 4], [4, 4], [4, 10], [0, 10]);
    expect(planDistance(notched, line([5, 8]))).toBe(1);
    expect(planDistance(notched, line([5, 2]))).toBe(0);
  });

  it("does not close a line back to its start", () => {
    expect(planDistance(line([0, 0], [10, 0], [10, 10]), line([0, 10]))).toBe(10);
  });

  it("throws on a shape without points", () => {
    expect(() => planDistance(line(), line([0, 0]))).toThrow("got 0 and 1 points");
  });
});

describe("segmentDistance", () => {
  it("is never more than any pair of sampled places, and comes near the least of them", () => {
    const place = fc.tuple(
      fc.double({ min: -50, max: 50, noNaN: true }),
      fc.double({ min: -50, max: 50, noNaN: true }),
    );
    fc.assert(
      fc.property(place, place, place, place, (p, q, r, s) => {
        const found = segmentDistance(p, q, r, s);
        const steps = 60;
        let least = Infinity;
        for (let i = 0; i <= steps; i += 1) {
          for (let k = 0; k <= steps; k += 1) {
            const a = [
              p[0] + ((q[0] - p[0]) * i) / steps,
              p[1] + ((q[1] - p[1]) * i) / steps,
            ] as const;
            const b = [
              r[0] + ((s[0] - r[0]) * k) / steps,
              r[1] + ((s[1] - r[1]) * k) / steps,
            ] as const;
            least = Math.min(least, Math.hypot(a[0] - b[0], a[1] - b[1]));
          }
        }
        const step =
          (Math.hypot(q[0] - p[0], q[1] - p[1]) + Math.hypot(s[0] - r[0], s[1] - r[1])) / steps;
        expect(found).toBeLessThanOrEqual(least + 1e-9);
        expect(found).toBeGreaterThanOrEqual(least - step);
      }),
      { seed: 20260101, numRuns: 200 },
    );
  });
});
