import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planHaul, type Heap } from "./haul.js";

function heap(id: string, x: number, y: number, volume: number): Heap {
  return { id, at: [x, y], volume };
}

/** Σ volume × distance, m³·m. */
function carriage(hauls: readonly { volume: number; distance: number }[]): number {
  return hauls.reduce((sum, { volume, distance }) => sum + volume * distance, 0);
}

describe("planHaul", () => {
  it("sends all of one cut to one fill", () => {
    const hauls = planHaul([heap("hole", 0, 0, 12.5)], [heap("pad", 3, 4, 12.5)]);
    expect(hauls).toEqual([{ from: "hole", to: "pad", volume: 12.5, distance: 5 }]);
  });

  it("does not let the nearest pair spoil the whole", () => {
    // Taking the nearest pair first (b to p, 1 m) would leave a a way of 10 m: 11 in all, not 9.
    const cuts = [heap("a", 0, 0, 1), heap("b", 3, 0, 1)];
    const fills = [heap("p", 2, 0, 1), heap("q", 10, 0, 1)];
    const hauls = planHaul(cuts, fills);
    expect(hauls.map(({ from, to }) => from + to)).toEqual(["ap", "bq"]);
    expect(carriage(hauls)).toBe(9);
  });

  it("leaves the surplus of the farthest cut", () => {
    const hauls = planHaul([heap("far", 30, 0, 8), heap("near", 2, 0, 8)], [heap("pad", 0, 0, 10)]);
    expect(hauls).toEqual([
      { from: "far", to: "pad", volume: 2, distance: 30 },
      { from: "near", to: "pad", volume: 8, distance: 2 },
    ]);
  });

  it("leaves the farthest fill to import", () => {
    const hauls = planHaul([heap("hole", 0, 0, 5)], [heap("far", 30, 0, 4), heap("near", 2, 0, 4)]);
    expect(hauls.map(({ to, volume }) => [to, volume])).toEqual([
      ["far", 1],
      ["near", 4],
    ]);
  });

  it("plans nothing when there is nothing to move", () => {
    expect(planHaul([], [heap("pad", 0, 0, 4)])).toEqual([]);
    expect(planHaul([heap("hole", 0, 0, 4)], [])).toEqual([]);
    expect(planHaul([heap("hole", 0, 0, 0)], [heap("pad", 0, 0, 0)])).toEqual([]);
    expect(planHaul([heap("hole", 0, 0, 0)], [heap("pad", 0, 0, 3)])).toEqual([]);
  });

  it("takes a fill where the cut is", () => {
    const hauls = planHaul([heap("pad", 1, 1, 3)], [heap("pad", 1, 1, 3)]);
    expect(hauls).toEqual([{ from: "pad", to: "pad", volume: 3, distance: 0 }]);
  });

  it("ends when every way is as long and every pair runs dry together", () => {
    const here = Array.from({ length: 12 }, (_, i) => heap(`cut${i}`, 0, 0, 1));
    const there = Array.from({ length: 12 }, (_, i) => heap(`fill${i}`, 0, 0, 1));
    expect(planHaul(here, there).map(({ volume }) => volume)).toEqual(Array(12).fill(1));
  });

  it("leaves no dust of rounding as a load", () => {
    const cuts = [heap("a", 0, 0, 0.1), heap("b", 1, 0, 0.2)];
    const hauls = planHaul(cuts, [heap("p", 0, 1, 0.3), heap("q", 9, 9, 1e-18)]);
    expect(hauls.map(({ from, to }) => from + to)).toEqual(["ap", "bp"]);
  });

  it("refuses a volume or a place that is no number", () => {
    const pad = heap("pad", 0, 0, 1);
    expect(() => planHaul([heap("hole", 0, 0, NaN)], [pad])).toThrow(/"hole": got volume NaN/);
    expect(() => planHaul([heap("hole", 0, 0, -1)], [pad])).toThrow(/"hole": got volume -1/);
    expect(() => planHaul([heap("hole", 0, Infinity, 1)], [pad])).toThrow(/"hole": got place/);
  });

  it("conserves volumes, uses up the lesser side and takes few lines", () => {
    const heaps = fc.array(
      fc.record({
        at: fc.tuple(fc.integer({ min: -3, max: 3 }), fc.integer({ min: -3, max: 3 })),
        volume: fc.oneof(
          fc.constant(0),
          fc.constant(7.3),
          fc.double({ min: 0, max: 900, noNaN: true }),
        ),
      }),
      { maxLength: 9 },
    );
    const check = (cuts: Heap[], fills: Heap[]): void => {
      const hauls = planHaul(cuts, fills);
      const [given, taken] = [volumeOf(cuts), volumeOf(fills)];
      const slack = 1e-12 * Math.max(given, taken);
      expect(Math.abs(volumeOf(hauls) - Math.min(given, taken))).toBeLessThanOrEqual(slack);
      for (const { id, volume } of cuts) {
        const gone = volumeOf(hauls.filter(({ from }) => from === id));
        if (given <= taken) expect(Math.abs(gone - volume)).toBeLessThanOrEqual(slack);
        expect(gone).toBeLessThanOrEqual(volume + slack);
      }
      for (const { id, volume } of fills) {
        const come = volumeOf(hauls.filter(({ to }) => to === id));
        if (taken <= given) expect(Math.abs(come - volume)).toBeLessThanOrEqual(slack);
        expect(come).toBeLessThanOrEqual(volume + slack);
      }
      expect(hauls.length).toBeLessThanOrEqual(Math.max(0, cuts.length + fills.length - 1));
      expect(hauls.every(({ volume }) => volume > 0)).toBe(true);
      expect(planHaul(cuts, fills)).toEqual(hauls);
    };
    fc.assert(
      fc.property(heaps, heaps, (out, into) => {
        const named = (side: string, list: typeof out): Heap[] =>
          list.map((each, i) => ({ id: `${side}${i}`, ...each }));
        check(named("cut", out), named("fill", into));
      }),
      { seed: 20261125, numRuns: 500 },
    );
  });
});

function volumeOf(list: readonly { volume: number }[]): number {
  return list.reduce((sum, { volume }) => sum + volume, 0);
}
