/**
 * Holes in laterals. Source: University of Minnesota, onsite sewage treatment, perforation discharge
 * table, gpm by head and hole; q = 11.79 d² √h (gpm, in, ft; recalled).
 */
import { describe, expect, it } from "vitest";
import { ORIFICE_COEFFICIENT, orificeFlow, orificeHead } from "../../src/hydraulics/index.js";
import { flow } from "../../src/units/index.js";

const INCH = 0.0254;
const FOOT = 0.3048;
const HOLES = [1 / 8, 3 / 16, 7 / 32, 1 / 4];
const TABLE = [
  [1, 0.18, 0.41, 0.56, 0.74],
  [2, 0.26, 0.59, 0.8, 1.04],
  [3, 0.32, 0.72, 0.98, 1.28],
  [5, 0.41, 0.93, 1.26, 1.65],
] as const;

describe("University of Minnesota perforation discharges", () => {
  for (const [head, ...gallons] of TABLE) {
    gallons.forEach((wanted, i) => {
      const hole = HOLES[i]!;
      it(`${hole} in under ${head} ft gives ${wanted} gpm`, () => {
        const got = orificeFlow(hole * INCH, head * FOOT, ORIFICE_COEFFICIENT);
        // Printed to 0.01 gpm.
        expect(Math.abs(flow.toSystem(got, "us") - wanted)).toBeLessThan(0.0101);
      });
    });
  }
});

it("is a coefficient of about 0.6 on the hole's area", () => {
  expect(ORIFICE_COEFFICIENT).toBeGreaterThan(0.59);
  expect(ORIFICE_COEFFICIENT).toBeLessThan(0.62);
});

it("goes back from flow to head, and sucks nothing", () => {
  const q = orificeFlow(0.005, 0.7, 0.61);
  expect(orificeHead(0.005, q, 0.61)).toBeCloseTo(0.7, 12);
  expect(orificeFlow(0.005, -1, 0.61)).toBe(0);
});
