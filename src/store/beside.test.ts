import { describe, expect, it } from "vitest";
import { findWork } from "../site/index.js";
import type { Work } from "../site/index.js";
import { plainPad, plainSite, plainStrip, plainTank } from "../site/site.fixture.js";
import { besideOffset } from "./beside.js";

const under = (tank: Work): number[] => {
  const [dx, dy] = besideOffset(plainSite({ works: [tank] }), [tank]);
  return [dx, dy].map((metres) => Math.round(metres * 100) / 100);
};

describe("where a copy goes", () => {
  it("is beside the original with a gap, to the east", () => {
    expect(under(plainTank())).toEqual([3, 0]);
    expect(under(plainTank({ bearing: 90 }))).toEqual([4, 0]);
  });

  it("is another way where the survey ends", () => {
    expect(under(plainTank({ at: [18, 0] }))).toEqual([0, -4]);
    expect(under(plainTank({ at: [18, -17] }))).toEqual([-3, 0]);
  });

  it("clears all of several together", () => {
    const works = [plainTank({ at: [-4, 0] }), plainPad()];
    const site = plainSite({ works });
    expect(besideOffset(site, works)[0]).toBeCloseTo(9, 6);
    expect(findWork(site, "plan", "pad")).not.toBeNull();
  });

  it("is nowhere for a strip that lies over a work", () => {
    const over = plainStrip({ area: { by: "work", work: "pad", beyond: 1 } });
    expect(besideOffset(plainSite({}), [over])).toEqual([0, 0]);
  });
});
