import { describe, expect, it } from "vitest";
import type { Limit, PlanPoint, Scheme, Work } from "../site/index.js";
import { plainTank } from "../site/site.fixture.js";
import { setbackField, setbacksAsked, type SetbackField } from "./bandField.js";
import { setbackBands } from "./bands.js";
import { distanceBetween } from "./setbacks.js";
import { limitShapes } from "./shapes.js";

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
  { id: "c", kind: "watercourse", path: [lot[0]!, [10, 5], [12, 30]] },
  {
    id: "e",
    kind: "easement",
    width: 6,
    setback: 1,
    path: [
      [0, 0],
      [20, 0],
      [20, 20],
    ],
  },
  { id: "h", kind: "building", closed: true, path: lot.map(([x, y]) => [x / 10, y / 10]) },
];
const BOX = { west: -50, south: -50, east: 90, north: 70 };

function fieldOf(limits: Limit[], works: Work[]): SetbackField {
  const field = setbackField(setbacksAsked({ limits }, scheme(works)), BOX);
  if (field === null) throw new Error("nothing is asked");
  return field;
}

const placeOf = ({ west, south, step, columns }: SetbackField, i: number): PlanPoint => [
  west + (i % columns) * step,
  south + Math.floor(i / columns) * step,
];

/** The value nearest a place. */
function at(field: SetbackField, [x, y]: PlanPoint, of: "some" | "every"): number {
  const column = Math.round((x - field.west) / field.step);
  return field[of][Math.round((y - field.south) / field.step) * field.columns + column]!;
}

describe("the field of setbacks", () => {
  it.each(LIMITS)(
    "of a $kind is the setback less the distance, at every place outside it",
    (limit) => {
      const field = fieldOf([limit], [tank, bed]);
      const bands = setbackBands({ limits: [limit] }, scheme([tank, bed]));
      const most = Math.max(...bands.map(({ distance }) => distance));
      const least = Math.min(...bands.map(({ distance }) => distance));
      for (let i = 0; i < field.some.length; i += 7) {
        const place = { points: [placeOf(field, i)], closed: false };
        const off = distanceBetween([place], limitShapes(limit));
        if (off === 0) {
          expect(field.every[i]).toBeGreaterThanOrEqual(least - 1e-6);
          continue;
        }
        if (off > most + field.step) {
          expect(field.some[i]).toBeLessThan(0);
          continue;
        }
        // Circles of 160 corners are up to 0.02% too small.
        expect(Math.abs(field.some[i]! - (most - off))).toBeLessThan(0.001);
        expect(Math.abs(field.every[i]! - (least - off))).toBeLessThan(0.001);
      }
    },
  );

  it("lies inside a lot line that closes, and ends at it", () => {
    const field = fieldOf(
      [{ id: "l", kind: "lot-line", closed: true, path: lot, setback: 3 }],
      [tank],
    );
    expect(at(field, [-39, 0], "some")).toBeGreaterThan(0);
    expect(at(field, [-45, 0], "some")).toBeLessThan(0);
    expect(at(field, [0, 0], "some")).toBeLessThan(0);
  });

  it("is that of every part only where all of them are asked to keep off", () => {
    const near: PlanPoint = [10, 30];
    const between: PlanPoint = [10, 42];
    const well = LIMITS[0]!;
    const field = fieldOf([well], [tank, bed]);
    // 50 ft for a tank, 100 ft for a field.
    expect(at(field, near, "every")).toBeGreaterThan(0);
    expect(at(field, between, "some")).toBeGreaterThan(0);
    expect(at(field, between, "every")).toBeLessThan(0);
    // Off a water line a tank has to stay too, but here only the field is asked to.
    const setbacks = [{ from: "field", to: "well", distance: 30, source: "test" }] as const;
    const one = setbacksAsked({ limits: [well], setbacks: [...setbacks] }, scheme([tank, bed]));
    expect(one.parts).toEqual(["field"]);
  });

  it("is not there where nothing is asked", () => {
    const tree: Limit = { id: "x", kind: "tree", at: [0, 0] };
    expect(setbackField(setbacksAsked({ limits: [tree] }, scheme([tank])), BOX)).toBeNull();
    expect(setbackField(setbacksAsked({}, scheme([])), BOX)).toBeNull();
  });

  it("knows a limit's own setback before there is any work or row", () => {
    const limits = [{ ...LIMITS[0]!, setback: 4 }];
    const field = setbackField(setbacksAsked({ limits, setbacks: [] }, scheme([])), BOX);
    expect(field && at(field, [10, 23], "every")).toBeGreaterThan(0);
  });
});
