import { describe, expect, it } from "vitest";
import type { Building, PlanPoint } from "../site/index.js";
import { plainSite } from "../site/site.fixture.js";
import { lowestSide, outletInvert } from "./newOutlet.js";
import { withPlacedOutlet } from "./placedLimit.js";

const shed: Building = {
  kind: "building",
  id: "shed",
  name: "Shed",
  outline: [
    [0, 0],
    [8, 0],
    [8, 6],
    [0, 6],
  ],
  base: 100,
  height: 3,
};
// Falls 0.2 per m to the east, from 100 at x = 0.
const slope = plainSite({ height: (x) => 100 - 0.2 * x, works: [shed] });

describe("a building's new outlet", () => {
  it("goes in the middle of the lowest side, 0.6 m under the ground there", () => {
    const at = lowestSide(slope, shed);
    expect(at).toEqual([8, 3]);
    // 100 − 0.2 × 8 − 0.6: under the floor alone it would hang 1 m over the ground.
    expect(outletInvert(slope, shed, at)).toBe(97.8);
  });

  it("lies under the floor where the ground is above it, and beyond the survey", () => {
    expect(outletInvert(slope, shed, [-4, 3])).toBe(99.4);
    expect(outletInvert(slope, shed, [500, 500])).toBe(99.4);
  });

  it("is never out of the ground where it is put by hand", () => {
    const place: PlanPoint = [4, 6];
    const [after] = withPlacedOutlet(slope, "plan", "shed", place)?.schemes[0]?.works ?? [];
    expect(after).toMatchObject({ outlets: [{ at: place, invert: 98.6 }] });
  });
});
