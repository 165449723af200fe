import { describe, expect, it } from "vitest";
import { catalogueMaterials } from "../site/index.js";
import { catalogueDiggers } from "./catalogue.js";
import type { Digger } from "./catalogue.js";
import { cyclesPerHour, digOutput, swingDepthFactor, wayOfDigging } from "./output.js";

const OPEN = { depth: 1, widest: Infinity };

function digger(id: string): Digger {
  const found = catalogueDiggers().find((d) => d.id === id);
  if (!found) throw new Error(`got no digger "${id}", expected it in the catalogue`);
  return found;
}

describe("the diggers of the catalogue", () => {
  it("grow in every figure with their class", () => {
    const all = catalogueDiggers();
    for (let i = 1; i < all.length; i++) {
      const [small, large] = [all[i - 1], all[i]];
      if (!small || !large) throw new Error("expected neighbours");
      for (const key of ["mass", "digDepth", "reach", "bucket", "width", "fuelPerHour"] as const) {
        expect(large[key], `${large.id} ${key}`).toBeGreaterThan(small[key]);
      }
      expect(large.rates.day.likely).toBeGreaterThan(small.rates.day.likely);
      expect(large.hammer.likely).toBeGreaterThan(small.hammer.likely);
      expect(large.narrowBucket).toBeLessThanOrEqual(large.bucketWidth);
    }
  });
});

describe("output", () => {
  it("is the product of its factors", () => {
    const way = wayOfDigging("native");
    const d = digger("digger-5-5t");
    // Soft, 250 cycles; depth 1 of 3.8 m is below 30%, factor 1.15 held only up to 30%.
    const depth = 0.3 * d.digDepth;
    const out = digOutput(d, way, { depth, widest: Infinity }, 0.75);
    expect(out.loosePerHour.likely).toBeCloseTo(250 * 1.15 * 0.18 * 0.95 * 0.75 * 0.5, 9);
    expect(out.loosePerHour.low).toBeCloseTo(250 * 1.15 * 0.18 * 0.8 * 0.75 * 0.3, 9);
    expect(out.loosePerHour.high).toBeCloseTo(250 * 1.15 * 0.18 * 1.1 * 0.75 * 0.7, 9);
  });

  it("falls from soil to rippable to hard rock's clearing", () => {
    const d = digger("digger-8t");
    const rate = (id: string) => {
      const material = catalogueMaterials().get(id);
      if (!material) throw new Error(`got no ${id}`);
      return digOutput(d, wayOfDigging(material), OPEN, 0.75).loosePerHour.likely;
    };
    expect(rate("sand")).toBeGreaterThan(rate("common-earth"));
    expect(rate("common-earth")).toBeGreaterThan(rate("clay"));
    expect(rate("clay")).toBeGreaterThan(rate("weathered-rock"));
  });

  it("shrinks with the bucket that a narrow trench lets in", () => {
    const d = digger("digger-8t");
    const way = wayOfDigging("native");
    const open = digOutput(d, way, OPEN, 0.75).loosePerHour.likely;
    const narrow = digOutput(d, way, { depth: 1, widest: d.bucketWidth / 2 }, 0.75);
    expect(narrow.loosePerHour.likely).toBeCloseTo(open / 2, 9);
  });

  it("interpolates the swing–depth factor and holds it outside the table", () => {
    expect(swingDepthFactor(0)).toBe(1.15);
    expect(swingDepthFactor(0.4)).toBeCloseTo(1.125, 12);
    expect(swingDepthFactor(0.6)).toBeCloseTo(1.05, 12);
    expect(swingDepthFactor(1.4)).toBe(0.9);
  });

  it("keeps the last row of cycles for the largest buckets", () => {
    expect(cyclesPerHour(5, "hard")).toBe(cyclesPerHour(1.5, "hard"));
  });
});
