import { describe, expect, it } from "vitest";
import { baseGround, elevationAt, type BaseGround } from "../ground/index.js";
import { plainSite } from "../site/site.fixture.js";
import { hollowsOf, lineOnGround, waterFrom } from "./waterFrom.js";

/** What is known to be there. */
function present<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new Error("expected a value, got none");
  return value;
}

function ground(height: (x: number, y: number) => number): BaseGround {
  const made = baseGround(plainSite({ height, half: 40, works: [] }));
  if (!made.ok) throw new Error(made.problem.text);
  return made.base;
}

const slope = ground((_, y) => 100 + 0.1 * y);

describe("the way of water from a place", () => {
  it("is given in the site's own coordinates, with its length and fall", () => {
    const way = present(waterFrom(slope, [3, 10]));
    expect(way.path[0]).toEqual([3, 10, expect.closeTo(101, 9)]);
    expect(way.path.at(-1)).toEqual([expect.closeTo(3, 9), -40, expect.closeTo(96, 9)]);
    expect(way.length).toBeCloseTo(50, 9);
    expect(way.fall).toBeCloseTo(5, 9);
    expect(way.hollows).toEqual([]);
  });

  it("is none off the survey", () => {
    expect(waterFrom(slope, [300, 0])).toBeNull();
  });
});

describe("a hollow on the way", () => {
  // Falls to the south at 1 in 10; the survey's point at the origin lies 3 m deep: 97. The lowest of
  // the points about it, 20 m to the south, is at 98.
  const pit = ground((x, y) => (Math.hypot(x, y) < 1 ? 97 : 100 + 0.1 * y));

  it("stands to where it spills, over what of the ground lies under that", () => {
    const way = present(waterFrom(pit, [0, 12]));
    expect(way.hollows).toHaveLength(1);
    const pool = present(way.hollows[0]);
    expect(pool.level).toBeCloseTo(98, 9);
    expect(pool.depth).toBeCloseTo(1, 9);
    expect(pool.lowest).toEqual([0, 0, expect.closeTo(97, 9)]);
    // Beside it: squares of 0.2 m whose middle lies under 98, north of the spill.
    const { tin } = pit;
    let squares = 0;
    for (let x = -19.9; x < 20; x += 0.2) {
      for (let y = -19.9; y < 20; y += 0.2) {
        const z = present(elevationAt(tin, x - tin.origin[0], y - tin.origin[1])) + tin.origin[2];
        if (z < 98) squares += 1;
      }
    }
    expect(Math.abs(pool.area / (squares * 0.04) - 1)).toBeLessThan(0.02);
  });

  it("has a surface of triangles as large as its area", () => {
    const { area, surface } = present(hollowsOf(pit, 0.05)[0]);
    let sum = 0;
    for (let i = 0; i < surface.length; i += 6) {
      const at = (k: number): number => surface[i + k]!;
      sum += ((at(2) - at(0)) * (at(5) - at(1)) - (at(4) - at(0)) * (at(3) - at(1))) / 2;
    }
    expect(area).toBeCloseTo(sum, 9);
  });

  it("is told from the depth that is asked for, and not beyond it", () => {
    expect(hollowsOf(pit, 0.999)).toHaveLength(1);
    expect(hollowsOf(pit, 1.001)).toEqual([]);
    expect(hollowsOf(slope, 0)).toEqual([]);
  });
});

describe("a line on the ground", () => {
  it("has its length in plan and its ends, the higher first whichever way it was drawn", () => {
    const line = present(
      lineOnGround(slope, [
        [0, -10],
        [0, 0],
        [10, 0],
      ]),
    );
    expect(line.length).toBeCloseTo(20, 9);
    expect(line.high).toBeCloseTo(100, 9);
    expect(line.low).toBeCloseTo(99, 9);
    expect(
      lineOnGround(slope, [
        [0, 0],
        [300, 0],
      ]),
    ).toBeNull();
  });
});
