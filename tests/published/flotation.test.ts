/**
 * An empty tank in groundwater. Source: an engineering forum's worked case, 68 × 126 × 64 in,
 * 11,000 lb: displaced 317 ft³, uplift 19,802 lb; 59.5 ft² of cover at 80 lb/ft³, 4,760 lb per foot;
 * balance at about 1.85 ft; factor at least 1.1.
 */
import { describe, expect, it } from "vitest";
import { flotation, GRAVITY } from "../../src/hydraulics/index.js";

const INCH = 0.0254;
const FOOT = 0.3048;
const POUND = 0.45359237;
const newtonsToPounds = (force: number): number => force / GRAVITY / POUND;

const tank = {
  length: 126 * INCH,
  width: 68 * INCH,
  height: 64 * INCH,
  emptyMass: 11_000 * POUND,
  water: 64 * INCH,
  cover: 0,
  soilDensity: (80 * POUND) / FOOT ** 3,
  anchor: 0,
  factor: 1,
};

describe("68 × 126 × 64 in, 11,000 lb, water at its top", () => {
  const empty = flotation(tank);
  it("is lifted by 19,802 lb", () => {
    // The source takes 317.3 ft³ at 62.4 lb/ft³.
    expect(Math.abs(newtonsToPounds(empty.uplift) - 19_802)).toBeLessThan(20);
  });
  it("is held by 4,760 lb for each foot of cover at 80 lb/ft³", () => {
    const covered = flotation({ ...tank, cover: FOOT });
    expect(Math.abs(newtonsToPounds(covered.soil) - 4_760)).toBeLessThan(5);
  });
  it("is in balance at about 1.85 ft of cover", () => {
    expect(empty.coverMore / FOOT).toBeCloseTo(1.85, 1);
    expect(flotation({ ...tank, cover: empty.coverMore }).factor).toBeCloseTo(1, 9);
  });
  it("wants more for a factor of 1.1, by cover or by anchor alike", () => {
    const wanted = flotation({ ...tank, factor: 1.1 });
    expect(flotation({ ...tank, cover: wanted.coverMore }).factor).toBeCloseTo(1.1, 9);
    expect(flotation({ ...tank, anchor: wanted.anchorMore }).factor).toBeCloseTo(1.1, 9);
  });
  it("has drowned cover weigh less by the water's weight", () => {
    const dry = flotation({ ...tank, cover: 1, water: tank.height });
    const wet = flotation({ ...tank, cover: 1, water: tank.height + 1 });
    const lighter = (dry.soil - wet.soil) / GRAVITY;
    expect(lighter / (tank.length * tank.width)).toBeCloseTo(1000, 6);
  });
  it("floats not at all without water", () => {
    const dry = flotation({ ...tank, water: 0 });
    expect(dry.factor).toBe(Infinity);
    expect(dry.coverMore).toBe(0);
  });
});
