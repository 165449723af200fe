import { describe, expect, it } from "vitest";
import type { PlanPoint } from "../site/index.js";
import { firstPlaces, placesBeside } from "./besideHole.js";

const body = { length: 3, width: 2, height: 1.5 };

/** A hole 6 m along the bearing 0 and 4 m across it, about the tank at 10, 20. */
const tank = { at: [10, 20] as PlanPoint, bearing: 0, body };
const edge = [
  [
    [8, 17],
    [12, 17],
    [12, 23],
    [8, 23],
  ] as const,
];

describe("places beside a tank's hole", () => {
  it("keep off the edge by what is kept and half the diagonal of the pads from the edge, on four sides", () => {
    const spread = 2 * Math.SQRT2;
    const places = placesBeside(tank, { edge, keepOff: 3 }, spread);
    // Along: 3 m to the edge, across: 2 m; and 3 m + 2 m kept from it.
    const wanted = [
      [10, 28],
      [17, 20],
      [10, 12],
      [3, 20],
    ];
    expect(places).toHaveLength(4);
    places.forEach(([x, y], i) => {
      expect(x).toBeCloseTo(wanted[i]![0]!, 6);
      expect(y).toBeCloseTo(wanted[i]![1]!, 6);
    });
  });

  it("turn with the tank", () => {
    const turned = { at: [0, 0] as PlanPoint, bearing: 90, body };
    const square = [
      [
        [-3, -2],
        [3, -2],
        [3, 2],
        [-3, 2],
      ] as const,
    ];
    const [ahead, right] = placesBeside(turned, { edge: square, keepOff: 3 }, 0);
    expect(ahead?.[0]).toBeCloseTo(6, 6);
    expect(ahead?.[1]).toBeCloseTo(0, 6);
    expect(right?.[0]).toBeCloseTo(0, 6);
    expect(right?.[1]).toBeCloseTo(-5, 6);
  });

  it("keep off the tank itself where the hole has no edge", () => {
    const [[east, north] = [NaN, NaN]] = placesBeside(tank, { edge: [], keepOff: 0 }, 0);
    expect(Math.hypot(east - 10, north - 20)).toBeCloseTo(Math.hypot(3, 2) / 2, 9);
  });
});

describe("the first two places", () => {
  it("are one along the bearing and one across it, each the nearer", () => {
    const aside = [
      [
        [8, 17],
        [13, 17],
        [13, 24],
        [8, 24],
      ] as const,
    ];
    const [along, across] = firstPlaces(tank, { edge: aside, keepOff: 3 }, 0, () => true);
    expect(along?.[1]).toBeCloseTo(14, 6);
    expect(across?.[0]).toBeCloseTo(5, 6);
  });

  it("take another side where a place does not fit", () => {
    const [along] = firstPlaces(tank, { edge, keepOff: 3 }, 0, ([, y]) => y >= 20 - 1e-9);
    expect(along?.[1]).toBeCloseTo(26, 6);
  });

  it("are given all the same where none fits", () => {
    expect(firstPlaces(tank, { edge, keepOff: 3 }, 0, () => false)).toHaveLength(2);
  });
});
