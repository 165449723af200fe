import { describe, expect, it } from "vitest";
import { baseGround } from "../ground/index.js";
import type { Limit, Work } from "../site/index.js";
import { plainSite, plainTank } from "../site/site.fixture.js";
import { cutsBeside } from "./beside.js";
import { digScheme } from "./dig.js";
import { areasOf, besideLine, inAreas, sizeOfAreas, unionOf } from "./planAreas.js";

const line = (x: number): Limit => ({
  id: "c",
  kind: "buried-cable",
  path: [
    [x, -15],
    [x, 15],
  ],
});

function cutsOf(works: Work[], limit: Limit, distance: number, layers?: [number, number]) {
  const site = plainSite({ works, ...(layers && { layers }) });
  const scheme = site.schemes[0]!;
  const ground = baseGround(site);
  if (!ground.ok) throw new Error(ground.problem.text);
  const { result: dig, ground: dug } = digScheme(site, scheme, ground.base);
  dug.release();
  return cutsBeside({ site, scheme, base: ground.base, dig }, [limit], distance);
}

describe("what is cut beside a line in the ground", () => {
  it("is the prism within the distance, for upright walls", () => {
    // A hole 2 m wide east to west, 3 m long, its floor 0.2 m under 98 in ground at 100.
    const [cut] = cutsOf([plainTank()], line(0.5), 0.25);
    expect(cut?.area).toBeCloseTo(0.5 * 3, 3);
    expect(cut?.cut).toEqual({ clay: expect.closeTo(0.5 * 3 * 2.2, 2) as number });
    expect(cut).toMatchObject({ work: "tank", limit: "c", distance: 0 });
    expect(cut?.at[0]).toBeCloseTo(0.5, 9);
    expect(cut?.depth).toBeCloseTo(2.2, 6);
  });

  it("is cut by layer, and by the slope of a wall, not by the share of the opening", () => {
    // Walls 1:1 from a floor at ±1 m, 2.2 m down: the wall runs out at 3.2 m. A line along the toe
    // at x = 3 reaches from 2.5 to 3.2 m, where the cut is 3.2 − x deep: half of 0.7² in section.
    const tank = plainTank({ walls: { by: "run", run: 1 } });
    const [cut] = cutsOf([tank], line(3), 0.5);
    const whole = 3 + 2 * 2.2;
    // Along the side the section is full over the 3 m of the floor; beyond, the corners' hips cut it.
    const hip = (from: number): number => {
      let sum = 0;
      const steps = 2000;
      for (let i = 0; i < steps; i++) {
        const x = from + ((i + 0.5) / steps) * (3.2 - from);
        const deep = 3.2 - x;
        // At x the cut is `deep` for |y| up to 1.5 + (x − 1), then falls 1:1 to nothing.
        sum += ((3.2 - from) / steps) * (deep * 2 * (1.5 + x - 1) + deep * deep);
      }
      return sum;
    };
    expect(whole).toBeCloseTo(7.4, 9);
    const volume = Object.values(cut?.cut ?? {}).reduce((sum, each) => sum + each, 0);
    expect(volume).toBeGreaterThan(0.99 * hip(2.5));
    expect(volume).toBeLessThan(1.01 * hip(2.5));

    const [layered] = cutsOf([plainTank()], line(0.5), 0.25, [0.4, 1]);
    expect(layered?.cut["topsoil"]).toBeCloseTo(1.5 * 0.4, 2);
    expect(layered?.cut["clay"]).toBeCloseTo(1.5, 2);
    expect(layered?.cut["shelf-rock"]).toBeCloseTo(1.5 * 0.8, 2);
  });

  it("begins just within the distance of the hole's edge, and says how near", () => {
    expect(cutsOf([plainTank()], line(1.26), 0.25)).toEqual([]);
    const [cut] = cutsOf([plainTank()], line(1.2), 0.25);
    expect(cut?.distance).toBeGreaterThan(0.199);
    expect(cut?.distance).toBeLessThan(0.21);
    expect(cut?.depth).toBeCloseTo(2.2, 6);
  });
});

describe("areas in plan", () => {
  const square = (x: number, y: number, side: number) =>
    areasOf([
      [
        [x, y],
        [x + side, y],
        [x + side, y + side],
        [x, y + side],
      ],
    ]);

  it("count what lies over each other once", () => {
    expect(sizeOfAreas(unionOf([square(0, 0, 2), square(1, 1, 2), square(9, 9, 1)]))).toBeCloseTo(
      4 + 4 - 1 + 1,
      9,
    );
    expect(unionOf([])).toEqual([]);
  });

  it("leave holes out", () => {
    const ring = areasOf([
      [
        [0, 0],
        [4, 0],
        [4, 4],
        [0, 4],
      ],
      [
        [1, 1],
        [1, 3],
        [3, 3],
        [3, 1],
      ],
    ]);
    expect(sizeOfAreas(ring)).toBeCloseTo(12, 9);
    expect(inAreas([2, 2], ring)).toBe(false);
    expect(inAreas([0.5, 2], ring)).toBe(true);
  });

  it("are a stadium beside a line", () => {
    const area = sizeOfAreas(
      besideLine(
        [
          [0, 0],
          [10, 0],
        ],
        1,
      ),
    );
    // A circle of 64 sides is 0.16% small.
    expect(area).toBeGreaterThan(20 + Math.PI * 0.998);
    expect(area).toBeLessThan(20 + Math.PI);
  });
});
