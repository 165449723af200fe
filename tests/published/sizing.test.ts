/**
 * Design flow, tanks and loading rates, each against the table it names: Minnesota Rules 7080.1860
 * and Table IXa; 25 Pa. Code 73.31; Town of Queensbury, New York; Montana DEQ-4 Table 8-1;
 * Washington WAC 246-272A-0234; US EPA 625/R-00/008 Table 4-3 (recalled).
 */
import { describe, expect, it } from "vitest";
import {
  designFlow,
  leastTank,
  loadingByClass,
  loadingByPercolation,
} from "../../src/hydraulics/index.js";

const GALLON = 3.785411784e-3;
const FOOT = 0.3048;
const aDay = (flow: number): number => (flow * 86400) / GALLON;
/** gal a day on each ft². */
const onFoot = (rate: number): number => aDay(rate) * FOOT ** 2;
const perInch = (minutes: number): number => (minutes * 60) / 0.0254;

describe("gallons a day by bedrooms", () => {
  for (const [table, flows] of [
    ["minnesota-1", { 2: 300, 3: 450, 4: 600 }],
    ["minnesota-2", { 2: 225, 3: 300, 4: 375 }],
    ["minnesota-3", { 2: 180, 3: 218, 4: 256 }],
    ["pennsylvania", { 3: 400, 4: 500, 5: 600 }],
  ] as const) {
    for (const [bedrooms, gallons] of Object.entries(flows)) {
      it(`${table}, ${bedrooms}: ${gallons}`, () => {
        expect(aDay(designFlow(Number(bedrooms), table)?.value ?? NaN)).toBeCloseTo(gallons, 4);
      });
    }
  }
  it("knows no table of another name", () => {
    expect(designFlow(3, "nowhere")).toBeNull();
  });
});

it("Queensbury tanks: 1,000 gal to three bedrooms, 1,250 for four, 1,500 for five, no row for six", () => {
  const gallons = [2, 3, 4, 5].map((bedrooms) => (leastTank(bedrooms)?.value ?? NaN) / GALLON);
  [1000, 1000, 1250, 1500].forEach((wanted, i) => {
    expect(gallons[i]).toBeCloseTo(wanted, 4);
  });
  expect(leastTank(6)).toBeNull();
});

describe("loading by percolation", () => {
  it("Minnesota Table IXa, in min/in", () => {
    for (const [minutes, rate] of [
      [0.1, 1.2],
      [5, 1.2],
      [10, 0.78],
      [15, 0.78],
      [30, 0.6],
      [45, 0.5],
      [60, 0.45],
    ] as const) {
      expect(onFoot(loadingByPercolation(perInch(minutes))?.value ?? NaN)).toBeCloseTo(rate, 5);
    }
    expect(loadingByPercolation(perInch(61))).toBeNull();
    expect(loadingByPercolation(perInch(0.05))).toBeNull();
  });
  it("375 gal/d at 46 to 60 min/in wants 833 ft² (worked example)", () => {
    const rate = loadingByPercolation(perInch(50))?.value ?? NaN;
    const area = (375 * GALLON) / 86400 / rate / FOOT ** 2;
    expect(Math.round(area)).toBe(833);
  });
  it("Montana Table 8-1, whose rows are under their limits", () => {
    for (const [minutes, rate] of [
      [5.9, 0.8],
      [6, 0.6],
      [10, 0.5],
      [16, 0.4],
      [31, 0.3],
      [51, 0.2],
    ] as const) {
      const got = loadingByPercolation(perInch(minutes), "montana");
      expect(onFoot(got?.value ?? NaN)).toBeCloseTo(rate, 5);
    }
    expect(loadingByPercolation(perInch(121), "montana")).toBeNull();
  });
});

it("loading by class: Washington types 1 to 7, and EPA textures", () => {
  const rates = ["1", "2", "3", "4", "5", "6", "7"].map((type) =>
    onFoot(loadingByClass(type)?.value ?? NaN),
  );
  [1, 1, 0.8, 0.6, 0.4, 0.2, 0].forEach((wanted, i) => {
    expect(rates[i]).toBeCloseTo(wanted, 5);
  });
  for (const [texture, rate] of [
    ["sandy-loam", 0.6],
    ["loam", 0.6],
    ["silt-loam", 0.6],
    ["clay-loam", 0.4],
    ["clay", 0.2],
  ] as const) {
    expect(onFoot(loadingByClass(texture, "epa")?.value ?? NaN)).toBeCloseTo(rate, 5);
  }
  expect(loadingByClass("chalk", "epa")).toBeNull();
});
