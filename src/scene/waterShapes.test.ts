import { describe, expect, it } from "vitest";
import { arrowHeads, cellsOn, poolOn } from "./waterShapes.js";

describe("arrow heads on a way", () => {
  it("point the way that the water runs, at even distances over its bends", () => {
    // 6 m east, then 4 m north: tips at 2, 6 and 10 m with one every 4 m.
    const heads = arrowHeads([[0, 0, 3], [6, 0, 3], [6, 4, 1]], 4, 0.5); // prettier-ignore
    const tips = [...heads].flatMap((value, i) => (i % 6 >= 3 ? [value] : []));
    const ends = [[2, 0, 3], [2, 0, 3], [6, 0, 3], [6, 0, 3], [6, 4, 1], [6, 4, 1]]; // prettier-ignore
    tips.forEach((value, i) => expect(value).toBeCloseTo(ends.flat()[i]!, 5));
    expect(tips).toHaveLength(18);
    // Their arms lie behind: west of the first tip, one on either side.
    expect([heads[0], heads[1], heads[6], heads[7]]).toEqual([
      1.5,
      expect.closeTo(0.3, 5),
      1.5,
      expect.closeTo(-0.3, 5),
    ]);
  });

  it("leave out a leg of no length", () => {
    expect(arrowHeads([[0, 0, 0], [0, 0, 0]], 4, 0.5)).toHaveLength(0); // prettier-ignore
  });
});

describe("cells of the slope", () => {
  const ground = { heightAt: (x: number, y: number) => (x > 50 ? null : { z: x + y }) };
  it("lie on the ground, and are left out beyond the survey", () => {
    const corners = cellsOn([[1, 2], [60, 0]], 0.5, ground as never); // prettier-ignore
    expect(corners.length / 9).toBe(10);
    for (let i = 0; i < corners.length; i += 3) {
      expect(corners[i + 2]! - corners[i]! - corners[i + 1]!).toBeCloseTo(0.06, 5);
    }
  });
});

describe("a pool", () => {
  it("is level in the scene's frame", () => {
    const corners = poolOn({ surface: [101, 202, 102, 202, 101, 203], level: 54 }, [100, 200, 50]);
    expect([...corners]).toEqual(
      [1, 2, 4.03, 2, 2, 4.03, 1, 3, 4.03].map((value) => expect.closeTo(value, 5) as number),
    );
  });
});
