// Our check of outlines against turf's (kinks, boolean-point-in-polygon), which work on plain
// coordinates for these two questions.
import { booleanPointInPolygon } from "@turf/boolean-point-in-polygon";
import { point, polygon } from "@turf/helpers";
import { kinks } from "@turf/kinks";
import { describe, expect, it } from "vitest";
import { insideOutline } from "../../src/ground/index.js";
import { outlineProblem, type PlanPoint } from "../../src/site/index.js";
import { seeded } from "../fixtures/seeded.js";

const SEED = 20261125;

function ring(random: () => number, corners: number): PlanPoint[] {
  return Array.from({ length: corners }, (): PlanPoint => [10 * random(), 10 * random()]);
}

describe(`random outlines, seed ${SEED}`, () => {
  it("are called crossing exactly when turf finds kinks in them", () => {
    const random = seeded(SEED).next;
    let crossing = 0;
    for (let round = 0; round < 400; round++) {
      const outline = ring(random, 4 + (round % 4));
      const found = kinks(polygon([[...outline, outline[0]!]])).features.length > 0;
      expect(outlineProblem(outline) !== null, JSON.stringify(outline)).toBe(found);
      if (found) crossing += 1;
    }
    expect(crossing).toBeGreaterThan(50);
    expect(crossing).toBeLessThan(390);
  });

  it("hold the same places as turf says", () => {
    const random = seeded(SEED + 1).next;
    let held = 0;
    for (let round = 0; round < 300; round++) {
      const outline = ring(random, 5);
      if (outlineProblem(outline) !== null) continue;
      const shape = polygon([[...outline, outline[0]!]]);
      for (let k = 0; k < 20; k++) {
        const [x, y] = [10 * random(), 10 * random()];
        const inside = booleanPointInPolygon(point([x, y]), shape);
        expect(insideOutline(outline, x, y)).toBe(inside);
        if (inside) held += 1;
      }
    }
    expect(held).toBeGreaterThan(100);
  });
});
