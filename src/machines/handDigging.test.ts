import { describe, expect, it } from "vitest";
import { workOf } from "../dig/dig.fixture.js";
import { catalogueMaterials, type Limit } from "../site/index.js";
import { handDigging } from "./handDigging.js";

// A square opening of 4 m a side, 1 m deep in firm soil.
const PIT = workOf({
  id: "pit",
  cut: { "common-earth": 12, clay: 4 },
  deepest: 1,
  outlines: {
    daylight: [
      [
        [0, 0],
        [4, 0],
        [4, 4],
        [0, 4],
      ],
    ],
    toe: [],
  },
});
const cable = (x: number, kind = "buried-cable"): Limit => ({
  id: "c",
  kind,
  name: "Cable",
  path: [
    [x, -10],
    [x, 10],
  ],
});
const MATERIALS = catalogueMaterials();

describe("digging by hand beside what is buried", () => {
  it("is the part within two feet of the line, at the rates by hand", () => {
    const [part] = handDigging([PIT], [cable(2)], MATERIALS);
    // A strip 2 × 0.6096 m wide across an opening of 4 m, sampled at 400 places.
    const share = (2 * 0.6096) / 4;
    expect(part?.share).toBeGreaterThan(share - 0.02);
    expect(part?.share).toBeLessThan(share + 0.02);
    const exact = part?.share ?? NaN;
    expect(part?.volume).toBeCloseTo(16 * exact, 9);
    expect(part?.hours.likely).toBeCloseTo(exact * (12 / 0.57 + 4 / 0.46), 9);
    expect(part?.hours.high).toBeCloseTo(exact * (12 / 0.46 + 4 / 0.38), 9);
  });

  it("begins just within the tolerance of the edge, and not just beyond it", () => {
    expect(handDigging([PIT], [cable(-0.5)], MATERIALS)).toHaveLength(1);
    expect(handDigging([PIT], [cable(-0.62)], MATERIALS)).toEqual([]);
  });

  it("is none beside a lot line, or for a work that opens nothing", () => {
    expect(handDigging([PIT], [cable(2, "lot-line")], MATERIALS)).toEqual([]);
    expect(handDigging([workOf({ id: "w" })], [cable(2)], MATERIALS)).toEqual([]);
  });
});
