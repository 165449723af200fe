/** Lifting against published figures: distances from lines, reading a load chart, outrigger pads. */
import { describe, expect, it } from "vitest";
import { chartRow, lineClearance, padAreaNeeded } from "../../src/machines/index.js";
import { publishedRule } from "../../src/site/index.js";

const FOOT = 0.3048;
const POUND = 0.45359237;
const POUND_FORCE = POUND * 9.80665;

describe("29 CFR 1926.1408 Table A: least distance from power lines (quoted second hand)", () => {
  it.each([
    [1, 10],
    [50, 10],
    [50.001, 15],
    [200, 15],
    [201, 20],
    [350, 20],
    [351, 25],
    [500, 25],
    [501, 35],
    [750, 35],
    [751, 45],
    [1000, 45],
  ])("%d kV: %d ft", (kilovolts, feet) => {
    const { least, isOwners, source } = lineClearance(kilovolts * 1000);
    expect(least).toBeCloseTo(feet * FOOT, 9);
    expect(isOwners).toBe(false);
    expect(source).toContain("1926.1408, Table A");
  });

  it("over 1,000 kV leaves it to the line's owner", () => {
    expect(lineClearance(1_000_001).isOwners).toBe(true);
  });

  it("asks first within 20 ft, and keeps 20 ft from a line of unknown voltage", () => {
    expect(publishedRule("line-ask").value).toBeCloseTo(20 * FOOT, 12);
    expect(lineClearance(undefined).least).toBeCloseTo(20 * FOOT, 12);
  });
});

describe("US Navy NAVEDTRA 14081 (second hand): between two lines the longer radius counts", () => {
  // The chart is invented; the rule is what is checked.
  const chart = [
    { radius: 10, load: 2700 },
    { radius: 3, load: 11000 },
    { radius: 6, load: 5200 },
  ];
  it.each([
    [1, 3],
    [3, 3],
    [3.01, 6],
    [6, 6],
    [6.001, 10],
    [10, 10],
  ])("at %d m the row of %d m", (radius, row) => {
    expect(chartRow(chart, radius)?.radius).toBe(row);
  });

  it("has no rating beyond the last line", () => {
    expect(chartRow(chart, 10.01)).toBeNull();
  });
});

it("65% of 50,000 lb on 2,000 lb/ft² needs a pad of 16.3 ft² (computed in the reference)", () => {
  const bearing = (2000 * POUND_FORCE) / FOOT ** 2;
  const area = padAreaNeeded(50_000 * POUND, 0.65, bearing) / FOOT ** 2;
  expect(area).toBeCloseTo(16.25, 9);
  expect(Math.ceil(area * 10 - 1e-9) / 10).toBe(16.3);
});
