/** Temporary trench walls against US 29 CFR 1926 Subpart P. Method: level ground, plane walls. */
import { describe, expect, it } from "vitest";
import { depthTriggers, layeredRuns, topWidth, wallClasses } from "../../src/safety/index.js";

const FOOT = 0.3048;

function runOf(id: string): number {
  const found = wallClasses().find((each) => each.id === id);
  if (found === undefined) throw new Error(`got no class ${id}, expected it in the catalogue`);
  return found.run;
}

describe("29 CFR 1926 Subpart P, Appendix B, Table B-1: steepest walls up to 20 ft", () => {
  // Runs quoted second hand; the angles that the table prints beside them recalled.
  it.each([
    ["stable-rock", 0, 90],
    ["type-a", 3 / 4, 53],
    ["type-a-short", 1 / 2, 63],
    ["type-b", 1, 45],
    ["type-c", 3 / 2, 34],
  ])("%s: %f to 1, %d°", (id, run, angle) => {
    expect(runOf(id)).toBe(run);
    expect(Math.round((Math.atan2(1, runOf(id)) * 180) / Math.PI)).toBe(angle);
  });
});

describe("depths and distances at which the rules begin (read)", () => {
  it.each([
    ["protectFrom", 5, "1926.652(a)(1)"],
    ["wayOutFrom", 4, "1926.651(c)(2)"],
    ["wayOutWithin", 25, "1926.651(c)(2)"],
    ["engineerOver", 20, "Table B-1 note"],
    ["spoilBack", 2, "1926.651(j)(2)"],
  ] as const)("%s: %d ft, %s", (name, feet, cite) => {
    const trigger = depthTriggers()[name];
    expect(trigger.value).toBeCloseTo(feet * FOOT, 12);
    expect(trigger.source).toContain(cite);
  });
});

describe("OSHA training material on 29 CFR 1926 Subpart P (read): trench 2 ft wide, 6 ft deep", () => {
  it.each([
    ["type-b", 14],
    ["type-c", 20],
  ])("%s: %d ft wide at the top", (id, feet) => {
    expect(topWidth(2 * FOOT, [6 * FOOT], [runOf(id)]) / FOOT).toBeCloseTo(feet, 9);
  });
});

describe("layers, Subpart P App. A (c)(4) (second hand; widths derived): 8 ft floor, 8 ft deep", () => {
  it.each([
    ["type-c", "stable-rock", 4.5, 17],
    ["type-c", "type-a", 8.25, 24.5],
    ["type-a", "type-c", 12, 32],
  ])("3 ft of %s over 5 ft of %s: %f ft a side, top %f ft", (upper, lower, offset, top) => {
    const thickness = [3 * FOOT, 5 * FOOT];
    const runs = layeredRuns([runOf(upper), runOf(lower)]);
    expect(topWidth(0, thickness, runs) / 2 / FOOT).toBeCloseTo(offset, 9);
    expect(topWidth(8 * FOOT, thickness, runs) / FOOT).toBeCloseTo(top, 9);
  });

  it("no layer is steeper than any below it", () => {
    expect(layeredRuns([0.75, 1.5, 0, 1, 0])).toEqual([1.5, 1.5, 1, 1, 0]);
  });
});
