import { describe, expect, it } from "vitest";
import { planDistance } from "../flow/index.js";
import type { Limit, PlanPoint, Scheme, Work } from "../site/index.js";
import { plainTank } from "../site/site.fixture.js";
import { nearestLimits, setbackBands } from "./bands.js";
import { distanceBetween, keptSetbacks } from "./setbacks.js";
import { limitShapes } from "./shapes.js";

const FOOT = 0.3048;
const tank = plainTank({ id: "t" });
const bed: Work = {
  ...{ kind: "bed", id: "b", name: "Bed", at: [50, 0], bearing: 0, length: 6, width: 2 },
  ...{ height: 0.6, wall: 0, base: 100, filling: [] },
};
const scheme = (works: Work[]): Scheme => ({ id: "s", name: "S", works });
const lot: PlanPoint[] = [
  [-40, -40],
  [80, -40],
  [80, 60],
  [-40, 60],
];

const LIMITS: Limit[] = [
  { id: "w", kind: "well", name: "Well", at: [10, 20], radius: 0.5 },
  { id: "l", kind: "lot-line", closed: true, path: lot },
  {
    ...{ id: "c", kind: "watercourse" },
    path: [
      [0, 0],
      [10, 5],
      [12, 30],
    ],
  },
  { id: "h", kind: "building", closed: true, path: lot.map(([x, y]) => [x / 10, y / 10]) },
  {
    ...{ id: "e", kind: "easement", width: 6, setback: 1 },
    path: [
      [0, 0],
      [20, 0],
      [20, 20],
    ],
  },
];

describe("bands of setbacks", () => {
  it.each(LIMITS)("of a $kind: every place is exactly as far off as asked", (limit) => {
    const bands = setbackBands({ limits: [limit] }, scheme([tank, bed]));
    expect(bands.length).toBeGreaterThan(0);
    for (const { pieces, distance } of bands) {
      for (const at of pieces.flat()) {
        const far = distanceBetween([{ points: [at], closed: false }], limitShapes(limit));
        // The figures of 160 corners for circles are up to 0.02% too small.
        expect(Math.abs(far - distance)).toBeLessThan(0.0007);
      }
    }
  });

  it("are one for each distance, with the parts that keep it", () => {
    const of = (limits: Limit[], works: Work[]) =>
      setbackBands({ limits }, scheme(works)).map(({ distance, parts }) => [
        Math.round(distance / FOOT),
        parts,
      ]);
    expect(of([LIMITS[0]!], [tank, bed])).toEqual([
      [100, ["field"]],
      [50, ["tank"]],
    ]);
    expect(of([LIMITS[0]!], [tank])).toEqual([[50, ["tank"]]]);
    // No part yet: all that the table has.
    expect(of([LIMITS[0]!], [])).toHaveLength(2);
    const line: Limit = { id: "x", kind: "water-line", path: lot };
    expect(of([line], [tank, bed])).toEqual([[10, ["field", "tank"]]]);
  });

  it("go by the limit's own setback, and by the site's own table", () => {
    const own = { ...LIMITS[0]!, setback: 7, setbackReplaces: true };
    const [band, ...more] = setbackBands({ limits: [own] }, scheme([tank, bed]));
    expect(more).toEqual([]);
    expect(band).toMatchObject({ distance: 7, parts: ["field", "tank"], own: true });
    // Without that word the greater of the two holds, for each part by itself.
    const between = { ...LIMITS[0]!, setback: 20 };
    expect(setbackBands({ limits: [between] }, scheme([tank, bed]))).toMatchObject([
      { distance: 100 * FOOT, parts: ["field"], own: false },
      { distance: 20, parts: ["tank"], own: true },
    ]);
    expect(setbackBands({ limits: [between] }, scheme([]))).toMatchObject([
      { distance: 20, parts: [], own: true },
      { distance: 100 * FOOT, parts: ["field"], own: false },
    ]);
    const setbacks = [{ from: "tank", to: "well", distance: 3, source: "test" }];
    const site = { limits: [LIMITS[0]!], setbacks };
    expect(setbackBands(site, scheme([tank])).map(({ distance }) => distance)).toEqual([3]);
  });

  it("lie within a lot line that closes, and outside a building", () => {
    const inLot = setbackBands({ limits: [LIMITS[1]!] }, scheme([tank]))[0]!;
    for (const [x, y] of inLot.pieces.flat()) {
      expect(x > -40 && x < 80 && y > -40 && y < 60).toBe(true);
    }
    const house = setbackBands({ limits: [LIMITS[3]!] }, scheme([tank]))[0]!;
    for (const [x, y] of house.pieces.flat()) {
      expect(x > -4 && x < 8 && y > -4 && y < 6).toBe(false);
    }
  });

  it("stand about buildings of the scheme too", () => {
    const building: Work = {
      ...{ kind: "building", id: "g", name: "House", base: 100, height: 3 },
      outline: lot,
    };
    expect(setbackBands({}, scheme([tank, building]))).toMatchObject([{ to: "g" }]);
  });
});

describe("lines to the nearest limits", () => {
  it("are one for each tank and field, as long as the distance kept", () => {
    const site = { limits: LIMITS.slice(0, 3) };
    const plan = scheme([plainTank({ id: "t", at: [-20, -20] }), bed]);
    const setbacks = keptSetbacks(site, plan, []);
    const lines = nearestLimits(site, plan, setbacks);
    expect(lines.map(({ kept }) => kept.work)).toEqual(["t", "b"]);
    for (const { kept, from, to } of lines) {
      expect(Math.hypot(from[0] - to[0], from[1] - to[1])).toBeCloseTo(kept.distance, 6);
      const others = setbacks.filter(({ work }) => work === kept.work);
      expect(Math.min(...others.map(({ distance }) => distance))).toBe(kept.distance);
    }
  });
});

describe("a limit with a width", () => {
  const path: PlanPoint[] = [
    [0, 0],
    [20, 0],
    [20, 20],
  ];
  const wide: Limit = { id: "e", kind: "easement", path, width: 6 };

  it("is measured from its edge, half its width nearer than its middle", () => {
    for (const at of [
      [10, -9],
      [10, 4],
      [29, -5],
      [40, 10],
    ] as PlanPoint[]) {
      const place = { points: [at], closed: false };
      const middle = planDistance(place, { points: path, closed: false });
      expect(distanceBetween([place], limitShapes(wide))).toBeCloseTo(middle - 3, 2);
    }
    const on = { points: [[10, 2]] as PlanPoint[], closed: false };
    expect(distanceBetween([on], limitShapes(wide))).toBe(0);
  });
});
