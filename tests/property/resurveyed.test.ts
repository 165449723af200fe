/** The same ground, surveyed otherwise, digs the same. */
import { describe, expect, it } from "vitest";
import { largestGap } from "../fixtures/moved.js";
import { seeded } from "../fixtures/seeded.js";
import {
  apart,
  dug,
  pad,
  planePoints,
  run,
  siteOf,
  tank,
  total,
  trench,
  type Spot,
} from "../fixtures/site.js";
import { smallSite } from "../fixtures/smallSite.js";
import { PROBES, threeWorks } from "../fixtures/threeWorks.js";

const reference = dug(siteOf(threeWorks()));

describe("points in another order", () => {
  it.each([41, 42, 43, 44, 45, 46])("three works in Davis's terrain, seed %d", (seed) => {
    const parts = threeWorks();
    const points = seeded(seed).shuffled(parts.points);
    const again = dug(siteOf({ ...parts, points, probes: seeded(seed).shuffled(PROBES) }));
    expect(largestGap(reference, again)).toBeLessThan(1e-11);
  });

  const [first, count] = [30_000, 150];
  it(`small random sites, seeds ${first} to ${first + count - 1}`, () => {
    const faults: string[] = [];
    for (let seed = first; seed < first + count; seed++) {
      const { between, shuffled } = seeded(seed);
      const made = smallSite(seed);
      // Off the grid, so that no four points lie on one circle and the triangles are certain.
      const points = made.survey.points.map((point) => ({
        ...point,
        x: point.x + between(-0.3, 0.3),
        y: point.y + between(-0.3, 0.3),
      }));
      const one = dug({ ...made, survey: { points } });
      const other = dug({ ...made, survey: { points: shuffled(points) } });
      const gap = largestGap(one, other);
      if (!(gap < 1e-9)) faults.push(`seed ${seed}: volumes are ${gap} apart`);
    }
    expect(faults).toEqual([]);
  });
});

describe("more points on the same ground", () => {
  it.each([51, 52, 53, 54, 55, 56])("a plane with more points on it, seed %d", (seed) => {
    const works = [
      tank({ bearing: 20, base: -1.6, walls: run(0.75) }),
      pad({
        id: "L",
        outline: [
          [6, 0],
          [16, 0],
          [16, 4],
          [10, 4],
          [10, 9],
          [6, 9],
        ],
        top: 0.9,
      }),
    ];
    const plain = planePoints(0.15, -0.08, 0);
    const { between } = seeded(seed);
    const more = Array.from({ length: 300 }, (): Spot => {
      const [x, y] = [between(-60, 60), between(-60, 60)];
      return [x, y, 0.15 * x - 0.08 * y];
    });
    // Some of them on edges and corners of the works.
    const places: [number, number][] = [
      [6, 0],
      [10, 4],
      [13, 4],
      [0, 0],
      [6, 4.5],
    ];
    const on = places.map(([x, y]): Spot => [x, y, 0.15 * x - 0.08 * y]);
    const coarse = dug(siteOf({ points: plain, works }));
    const fine = dug(siteOf({ points: [...plain, ...more, ...on], works }));
    expect(largestGap(coarse, fine)).toBeLessThan(1e-11);
    expect(apart(coarse.work("L").daylight, fine.work("L").daylight)).toBeLessThan(1e-9);
    expect(fine.gap).toBeLessThan(1e-11);
  });

  // Three corners only, so that the point added cannot flip an edge elsewhere.
  const CORNERS: Spot[] = [
    [-70, -50, 4],
    [80, -40, -6],
    [0, 90, 9],
  ];

  it.each(Array.from({ length: 12 }, (_, i) => 61 + i))(
    "a triangle split at a place on it, seed %d",
    (seed) => {
      const { between, pick } = seeded(seed);
      // Inside, or on one of its sides.
      const [b, c] = pick([
        [between(0.2, 0.4), between(0.2, 0.4)],
        [between(0.2, 0.8), 0],
        [0, between(0.2, 0.8)],
      ] as [number, number][]);
      const mix = (i: 0 | 1 | 2): number =>
        (1 - b - c) * CORNERS[0]![i] + b * CORNERS[1]![i] + c * CORNERS[2]![i];
      const works = [
        tank({ base: 0, bearing: 12, walls: run(1) }),
        trench({
          id: "t",
          path: [
            [-20, 5],
            [9, 2],
            [20, 12],
          ],
        }),
      ];
      const before = dug(siteOf({ points: CORNERS, works }));
      const after = dug(siteOf({ points: [...CORNERS, [mix(0), mix(1), mix(2)]], works }));
      // A point beside the straight side by rounding makes a sliver or leaves one out.
      expect(largestGap(before, after)).toBeLessThan(1e-10);
    },
  );

  it("split at the very place of a corner of the hole, and again and again at one place", () => {
    const works = [tank({ at: [10, 10], base: 0, overdig: 0, walls: run(0) })];
    const heightAt = (x: number, y: number): number => 0.1 * x - 0.02 * y + 3;
    const on = (x: number, y: number): Spot => [x, y, heightAt(x, y)];
    const corners = [on(-70, -50), on(80, -40), on(0, 90)];
    const before = dug(siteOf({ points: corners, works }));
    const nested = [1, 0.1, 0.01].flatMap((d) => [on(9.1 + d, 8.5), on(9.1 - d, 8.5 + d)]);
    const after = dug(siteOf({ points: [...corners, on(9.1, 8.5), ...nested], works }));
    expect(largestGap(before, after)).toBeLessThan(1e-11);
  });

  it("a square grid, whose every cell has four points on one circle", () => {
    const z = (x: number, y: number): number => 2 + 0.1 * x - 0.05 * y;
    const points = Array.from({ length: 41 * 41 }, (_, i): Spot => {
      const [x, y] = [(i % 41) - 20, Math.floor(i / 41) - 20];
      return [x, y, z(x, y)];
    });
    const works = [
      tank({
        at: [0, 0],
        body: { length: 4, width: 2, height: 1 },
        overdig: 0,
        base: 0.5,
        walls: run(0),
      }),
      pad({
        id: "p",
        outline: [
          [6, 2],
          [12, 2],
          [12, 8],
          [6, 8],
        ],
        top: 2,
        walls: run(1),
      }),
    ];
    const grid = dug(siteOf({ points, works }));
    const plain = dug(siteOf({ points: planePoints(0.1, -0.05, 2, 20), works }));
    // Walls run exactly along grid lines and through grid points.
    expect(largestGap(plain, grid)).toBeLessThan(1e-12);
    expect(apart(total(grid.work("tank").cut), 4 * 2 * 1.65)).toBeLessThan(1e-12);
    expect(grid.gap).toBeLessThan(1e-12);
  });

  it("points on circles about one middle, and on one line", () => {
    const plain = planePoints(0.1, -0.05, 2, 40);
    const on = (x: number, y: number): Spot => [x, y, 2 + 0.1 * x - 0.05 * y];
    const circles = [3, 6, 12].flatMap((radius) =>
      Array.from({ length: 16 }, (_, i) => {
        const angle = (Math.PI * i) / 8;
        return on(radius * Math.cos(angle), radius * Math.sin(angle));
      }),
    );
    const line = Array.from({ length: 30 }, (_, i) => on(i - 15, 0.5 * (i - 15)));
    const works = [
      tank({ base: 0.2, walls: run(1) }),
      trench({
        id: "t",
        path: [
          [-8, -4],
          [12, 6],
        ],
        walls: run(0.5),
        width: 1,
      }),
    ];
    const one = dug(siteOf({ points: plain, works }));
    const other = dug(siteOf({ points: [...plain, ...circles, ...line], works }));
    expect(largestGap(one, other)).toBeLessThan(1e-11);
    expect(other.gap).toBeLessThan(1e-11);
  });
});
