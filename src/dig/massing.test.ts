import { describe, expect, it } from "vitest";
import { baseGround } from "../ground/index.js";
import type { Bed, Work } from "../site/index.js";
import { plainPad, plainSite } from "../site/site.fixture.js";
import { digScheme } from "./dig.js";

const bed: Bed = {
  kind: "bed",
  id: "bed",
  name: "Raised bed",
  at: [0, 0],
  bearing: 90,
  length: 5,
  width: 3,
  height: 0.6,
  wall: 0.1,
  base: 100,
  filling: [],
};

/** Codes of what is said about the bed, on ground that falls to the east by `slope`. */
function saidOf(works: Work[], slope = 0): string[] {
  const site = plainSite({ works, height: (x) => 100 - slope * x });
  const base = baseGround(site);
  const scheme = site.schemes[0];
  if (!base.ok || scheme === undefined) throw new Error("the plain site was not laid");
  const { result } = digScheme(site, scheme, base.base);
  return result.findings.filter((each) => each.where === "bed").map((each) => each.code);
}

describe("a raised bed", () => {
  it("says nothing on its ground, nor 9 cm above it", () => {
    expect(saidOf([bed])).toEqual([]);
    expect(saidOf([{ ...bed, base: 100.09 }])).toEqual([]);
  });

  it("hangs 11 cm above flat ground", () => {
    expect(saidOf([{ ...bed, base: 100.11 }])).toEqual(["bed.hangs"]);
  });

  it("on a slope hangs on one side and is buried on the other: 2.5 m × 8% is 20 cm", () => {
    expect(saidOf([bed], 0.08)).toEqual(["bed.below-ground", "bed.hangs"]);
  });

  it("stands on the fill of its pad, but not beside it, and not before it", () => {
    const pad = plainPad({ top: 100.5 });
    const raised = { ...bed, base: 100.5 };
    expect(saidOf([pad, raised])).toEqual([]);
    expect(saidOf([pad, { ...raised, at: [8, 0] }])).toEqual(["bed.hangs"]);
    expect(saidOf([raised, pad])).toEqual(["bed.hangs"]);
  });
});
