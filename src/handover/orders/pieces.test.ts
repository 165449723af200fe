import { describe, expect, it } from "vitest";
import fc from "fast-check";
import { cutFrom, rollsFor } from "./pieces.js";

const run = (length: number) => ({ name: "run", length });

describe("pipe cut from whole lengths", () => {
  it("ends a run with one piece", () => {
    const { runs, count, offcuts } = cutFrom(20, [run(83.66)]);
    expect(count).toBe(5);
    expect(runs[0]).toMatchObject({ whole: 4 });
    expect(runs[0]?.piece).toBeCloseTo(3.66, 9);
    expect(offcuts).toBeCloseTo(16.34, 9);
  });

  it("takes a short piece from what a longer one left", () => {
    // 3.9 ft leaves 6.1 ft of a length of 10: enough for 6 ft, not for two.
    expect(cutFrom(10, [run(23.9), run(16)]).count).toBe(2 + 1 + 1);
    expect(cutFrom(10, [run(23.9), run(16), run(6)]).count).toBe(2 + 1 + 2);
  });

  it("buys no length for a run of whole ones, nor for none", () => {
    expect(cutFrom(3, [run(0.1 * 3 * 10)]).count).toBe(1);
    expect(cutFrom(3, []).count).toBe(0);
    expect(() => cutFrom(0, [run(1)])).toThrow(/expected more than 0/);
  });

  it("buys enough, never more than a length for each piece, and accounts for all of it", () => {
    const lengths = fc.array(fc.double({ min: 0.01, max: 50, noNaN: true }), { maxLength: 20 });
    fc.assert(
      fc.property(fc.double({ min: 1, max: 10, noNaN: true }), lengths, (stick, all) => {
        const { count, offcuts } = cutFrom(stick, all.map(run));
        const sum = all.reduce((s, length) => s + length, 0);
        expect(count).toBeLessThanOrEqual(
          all.reduce((s, length) => s + Math.ceil(length / stick), 0),
        );
        expect(count * stick - offcuts).toBeCloseTo(sum, 6);
      }),
    );
  });
});

describe("rolls of fabric", () => {
  it("lays strips side by side with a lap", () => {
    // 11 ft wide from strips of 6 ft that lap 1 ft: two strips, 78 ft of a roll of 100.
    const roll = { width: 6, length: 100, lap: 1 };
    expect(rollsFor(roll, [{ length: 39, width: 11 }])).toBe(1);
    expect(rollsFor(roll, [{ length: 39, width: 11.1 }])).toBe(2);
    expect(rollsFor(roll, [{ length: 39, width: 0.5 }])).toBe(1);
    expect(() => rollsFor({ ...roll, lap: 6 }, [])).toThrow(/expected width over lap/);
  });
});
