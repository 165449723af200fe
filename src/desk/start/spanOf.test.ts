import { describe, expect, it } from "vitest";
import { distance } from "../../units/index.js";
import { spanOf } from "./spanOf.js";

const POINTS = [
  { id: "1", x: 100, y: 40, z: 512 },
  { id: "2", x: 186, y: 100, z: 521 },
  { id: "3", x: 120, y: 70, z: 515 },
];

describe("how far the points of a new site reach", () => {
  it.each(["metric", "us"] as const)("is told east, north and in height, %s", (units) => {
    const [east, north, height] = [86, 60, 9].map((metres) => distance.print(metres, units));
    expect(spanOf(POINTS, units)).toContain(`${east} × ${north}, and ${height} of height`);
  });

  it("is another where the same numbers are read in feet", () => {
    const inFeet = POINTS.map(({ id, x, y, z }) => {
      return { id, x: x * 0.3048, y: y * 0.3048, z: z * 0.3048 };
    });
    expect(spanOf(inFeet, "metric")).not.toBe(spanOf(POINTS, "metric"));
    expect(spanOf(inFeet, "us")).toContain(distance.print(86 * 0.3048, "us"));
  });
});
