/**
 * The raised bed's footprint. US EPA 625/1-80-012, Onsite Wastewater Treatment and Disposal Systems
 * (1980), Example 7-1, pages 251 and 252 (read). Ohio State University Extension Bulletin 813, Mound
 * Systems for On-site Wastewater Treatment, Tables 3 and 4 and the design example (read). Mound
 * design worksheet for flows up to 1,200 gal/day, Minnesota, figure D-34 (read in permit files).
 */
import { describe, expect, it } from "vitest";
import {
  downslopeCorrection,
  moundFootprint,
  upslopeCorrection,
  type Mound,
  type MoundAsk,
} from "../../src/hydraulics/index.js";

/** ft and ft²: 450 gal/day on soil that takes 0.25 gal/day on each ft². */
const EPA: MoundAsk = {
  bedWidth: 6,
  bedLength: 65,
  slope: 0.06,
  sand: 1,
  bed: 0.75,
  capEdge: 1,
  capMiddle: 1.5,
  side: 3,
  basalArea: 450 / 0.25,
};

function standing(ask: MoundAsk): Mound {
  const mound = moundFootprint(ask);
  if (mound === null) throw new Error("got no mound, expected one");
  return mound;
}

describe("EPA 1980, Example 7-1, ft", () => {
  const mound = standing(EPA);
  it("E 1.4, rounded from 1.36", () => {
    expect(mound.sandDownslope).toBeCloseTo(1.36, 9);
    expect(Math.round(mound.sandDownslope * 10) / 10).toBe(1.4);
  });
  it("K 11 and L 87: the manual goes up to the next foot from 3 × 3.45", () => {
    expect(mound.ends).toBeGreaterThan(10);
    expect(Math.ceil(mound.ends)).toBe(11);
    expect(EPA.bedLength + 2 * Math.ceil(mound.ends)).toBe(87);
    // Unrounded, each end is shorter by less than the foot that rounding can add.
    expect(87 - mound.length).toBeGreaterThanOrEqual(0);
    expect(87 - mound.length).toBeLessThan(2);
  });
  it("I 22 from 21.7, set by the basal area", () => {
    expect(mound.downslope).toBeCloseTo(21.7, 1);
    expect(Math.ceil(mound.downslope)).toBe(22);
    expect(mound.setByBasalArea).toBe(true);
  });
  it("the slope's own reach downhill is 9.5 before correction, E rounded up to 1.4", () => {
    const bySide = standing({ ...EPA, basalArea: 0 });
    expect(bySide.setByBasalArea).toBe(false);
    const uncorrected = bySide.downslope / (downslopeCorrection(0.06, 3) ?? NaN);
    expect(Math.abs(uncorrected - 9.5)).toBeLessThan(3 * (1.4 - 1.36) + 0.06);
  });
  it("J: 8.25 on the level, said to be less on the slope and taken as 8", () => {
    expect(standing({ ...EPA, slope: 0 }).upslope).toBeCloseTo(8.25, 9);
    expect(mound.upslope).toBeLessThan(8);
    expect(mound.upslope).toBeCloseTo(8.25 * 0.85, 1);
  });
  it("W 36 as rounded there; unrounded no more, and less by under 1.6", () => {
    expect(Math.floor(8.25) + EPA.bedWidth + Math.ceil(mound.downslope)).toBe(36);
    expect(mound.width).toBeLessThan(36);
    // J 8 for 6.99 (1.01) and I 22 for 21.69 (0.31).
    expect(36 - mound.width).toBeLessThan(1.6);
  });
});

describe("Ohio Bulletin 813", () => {
  const up = [97, 94, 92, 89, 87, 85, 83, 81, 79, 77, 75, 73, 72, 70, 69];
  const down = [103, 106, 110, 114, 118, 122, 127, 132, 137, 143, 149, 156, 164, 172, 182];
  up.forEach((factor, i) => {
    it(`Table 3, ${i + 1}%: ${factor / 100}`, () => {
      // One unit of the last figure: the table cuts some off and rounds others up.
      expect(Math.abs(upslopeCorrection((i + 1) / 100, 3) * 100 - factor)).toBeLessThan(1);
    });
  });
  down.forEach((factor, i) => {
    it(`Table 4, ${i + 1}%: ${factor / 100}`, () => {
      expect(Math.abs((downslopeCorrection((i + 1) / 100, 3) ?? NaN) * 100 - factor)).toBeLessThan(
        1,
      );
    });
  });
  it("design example at 12%, in: sand 22 to 28, upslope 81, downslope 201, width 27.5 ft", () => {
    const mound = standing({
      bedWidth: 48,
      bedLength: 1080,
      slope: 0.12,
      sand: 22,
      bed: 9,
      capEdge: 6,
      capMiddle: 6,
      side: 3,
    });
    expect(Math.abs(mound.sandDownslope - 28)).toBeLessThan(0.5);
    expect(Math.abs(mound.upslope - 81)).toBeLessThan(1);
    expect(Math.abs(mound.downslope - 201)).toBeLessThan(1);
    expect(mound.width / 12).toBeCloseTo(27.5, 1);
  });
});

describe("Minnesota worksheet, figure D-34: side × correction", () => {
  for (const [side, percent, upslope, downslope] of [
    [3, 1, 2.91, 3.09],
    [3, 5, 2.61, 3.53],
    [3, 6, 2.54, 3.66],
    [3, 9, 2.36, 4.11],
    [4, 5, 3.33, 5.0],
    [4, 10, 2.86, 6.67],
    [5, 8, 3.57, 8.33],
  ] as const) {
    it(`${side}:1 at ${percent}%: ${upslope} and ${downslope}`, () => {
      const slope = percent / 100;
      expect(Math.abs(side * upslopeCorrection(slope, side) - upslope)).toBeLessThan(0.01);
      expect(Math.abs(side * (downslopeCorrection(slope, side) ?? NaN) - downslope)).toBeLessThan(
        0.01,
      );
    });
  }
});

it("has no mound where the ground falls as steeply as its side", () => {
  expect(moundFootprint({ ...EPA, slope: 0.33 })).not.toBeNull();
  expect(moundFootprint({ ...EPA, slope: 0.34 })).toBeNull();
});

it("throws on a measure that is none", () => {
  expect(() => moundFootprint({ ...EPA, slope: NaN })).toThrow("slope");
  expect(() => moundFootprint({ ...EPA, sand: -1 })).toThrow("sand");
});
