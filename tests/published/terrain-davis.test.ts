/** The terrain of Davis (1973): its own heights, its extent, and its volume by brute force. */
import { describe, expect, it } from "vitest";
import {
  baseGround,
  corners,
  LayeredGround,
  integrate,
  surfaceOf,
} from "../../src/ground/index.js";
import { groundAt } from "../../src/estimate/index.js";
import { DAVIS_ROWS, davisPoints } from "../fixtures/davis.js";
import { siteOf } from "../fixtures/site.js";

const FOOT = 0.3048;
const site = siteOf({ points: davisPoints() });

describe("Davis (1973), Statistics and Data Analysis in Geology: 52 spot heights", () => {
  it("has the rows' own extremes: 690 to 960 ft, within 310 ft", () => {
    expect(DAVIS_ROWS.length).toBe(52);
    expect(Math.min(...DAVIS_ROWS.map(([, , z]) => z))).toBe(690);
    expect(Math.max(...DAVIS_ROWS.map(([, , z]) => z))).toBe(960);
    expect(Math.max(...DAVIS_ROWS.map(([x]) => x)) * 50).toBe(315);
    expect(Math.max(...DAVIS_ROWS.map(([, y]) => y)) * 50).toBe(310);
  });

  it("passes through every spot height", () => {
    for (const { x, y, z } of davisPoints()) expect(groundAt(site, [x, y])).toBeCloseTo(z, 9);
  });

  it("is a plane between three spots: the mean of a triangle's corners at its middle", () => {
    const built = baseGround(site);
    if (!built.ok) throw new Error(built.problem.text);
    const { tin } = built.base;
    for (let t = 0; t < tin.triangles.length / 3; t++) {
      const [a, b, c] = corners(tin, t);
      // Three spots of the western edge lie in line; rounding leaves a hairline between them.
      if (["d13", "d29", "d42"].every((id) => [a, b, c].some((v) => tin.ids[v] === id))) continue;
      const mean = (array: Float64Array): number => (array[a]! + array[b]! + array[c]!) / 3;
      const [ox, oy, oz] = tin.origin;
      expect(groundAt(site, [mean(tin.x) + ox, mean(tin.y) + oy])).toBeCloseTo(mean(tin.z) + oz, 6);
    }
  });

  it("covers the convex hull of its places (monotone chain), and all of it once", () => {
    const built = baseGround(site);
    if (!built.ok) throw new Error(built.problem.text);
    const { tin } = built.base;
    let area = 0;
    for (let t = 0; t < tin.triangles.length / 3; t++) {
      const [a, b, c] = corners(tin, t);
      const twice =
        (tin.x[b]! - tin.x[a]!) * (tin.y[c]! - tin.y[a]!) -
        (tin.x[c]! - tin.x[a]!) * (tin.y[b]! - tin.y[a]!);
      expect(twice).toBeGreaterThan(0);
      area += twice / 2;
    }
    expect(area).toBeCloseTo(hullArea(), 8);
  });

  it("its volume above 690 ft: prisms of the cells against heights read on a fine grid", () => {
    const built = baseGround(site);
    if (!built.ok) throw new Error(built.problem.text);
    const { base } = built;
    const datum = 690 * FOOT - base.tin.origin[2];
    const ground = new LayeredGround(base);
    let exact = 0;
    for (let t = 0; t < base.tin.triangles.length / 3; t++) {
      for (const cell of ground.cellsOf(t)) {
        exact += integrate(
          cell,
          surfaceOf(cell).map((z) => z - datum),
        );
      }
    }
    // Middle of each square of 0.25 m that lies on the survey. The squares cut by the hull's edge,
    // about 400 m long, count whole or not at all: at random, a share of 1 in some thousands.
    const step = 0.25;
    let sum = 0;
    for (let x = step / 2; x < 97; x += step) {
      for (let y = step / 2; y < 97; y += step) {
        const z = groundAt(site, [x, y]);
        if (z !== null) sum += (z - 690 * FOOT) * step * step;
      }
    }
    expect(exact).toBeGreaterThan(100_000);
    expect(Math.abs(sum - exact) / exact).toBeLessThan(5e-4);
  });
});

/** Area of the convex hull of the places by Andrew's monotone chain, m². */
function hullArea(): number {
  const places = davisPoints()
    .map(({ x, y }): [number, number] => [x, y])
    .sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: [number, number][]): [number, number][] => {
    const chain: [number, number][] = [];
    for (const [x, y] of list) {
      for (;;) {
        const [p, q] = chain.slice(-2);
        if (!p || !q || (q[0] - p[0]) * (y - p[1]) - (q[1] - p[1]) * (x - p[0]) > 0) break;
        chain.pop();
      }
      chain.push([x, y]);
    }
    return chain.slice(0, -1);
  };
  const hull = [...half(places), ...half([...places].reverse())];
  return (
    hull.reduce((twice, [x, y], i) => {
      const [nx, ny] = hull[(i + 1) % hull.length]!;
      return twice + x * ny - nx * y;
    }, 0) / 2
  );
}
