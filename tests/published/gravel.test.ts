/**
 * Gravel by weight and by volume against published values.
 * Marks: read = seen in a copy of the source; second = seen quoted; recalled = from memory.
 */
import { describe, expect, it } from "vitest";
import { importLoads, massInPlace } from "../../src/cost/index.js";
import { catalogueMaterials } from "../../src/site/index.js";

const CUBIC_YARD = 0.9144 ** 3;
const SHORT_TON = 2000 * 0.45359237;

function material(id: string) {
  const found = catalogueMaterials().get(id);
  if (!found) throw new Error(`got no material "${id}", expected it in the catalogue`);
  return found;
}

const gravel = material("crushed-gravel");

describe("a US state highway construction manual, §109, 2003 (read)", () => {
  it("958.5 yd³ of gravel weigh 1,347.65 short tons", () => {
    const tons = massInPlace(958.5 * CUBIC_YARD, gravel) / SHORT_TON;
    // The catalogue's density is rounded to 1 kg/m³: 6 parts in 10,000.
    expect(Math.abs(tons / 1347.65 - 1)).toBeLessThan(6e-4);
  });

  it("1,370.642 short tons of gravel are 975.9 yd³", () => {
    const yards = (1370.642 * SHORT_TON) / gravel.density / CUBIC_YARD;
    // The manual's 0.712 is 1/1.406 rounded up by 1 part in 1,000.
    expect(Math.abs(yards / 975.9 - 1)).toBeLessThan(1.5e-3);
  });
});

describe("handbook weights, doi 10.1201/b12981-45 (read in the abstract)", () => {
  it("gravel, ¼ to 2 in, dry, 1,682 kg/m³; dry sand 1,602", () => {
    expect(material("pea-gravel").density).toBe(1682);
    expect(material("drain-sand").density).toBe(1602);
  });

  it("solid limestone 2,596, granite 2,690, sandstone 2,412, shale 2,637 kg/m³", () => {
    expect(material("limestone").density).toBe(2596);
    expect(material("granite").density).toBe(2690);
    expect(material("sandstone").density).toBe(2412);
    expect(material("shale").density).toBe(2637);
  });
});

describe("by the load", () => {
  it("a truck of 7 yd³ takes 6 in of gravel under a tank hole of 10 × 8 ft in one load", () => {
    // 6 in of compacted gravel under a precast tank: common practice, no source. 1.48 yd³.
    const placed = (10 * 8 * 0.5 * CUBIC_YARD) / 27;
    const coming = importLoads(placed, gravel, 7 * CUBIC_YARD);
    expect(coming.loads.value).toBe(1);
    expect(coming.mass.value / SHORT_TON).toBeCloseTo(1.406 * (40 / 27), 2);
  });
});
