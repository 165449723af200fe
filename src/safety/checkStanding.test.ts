import { describe, expect, it } from "vitest";
import { wordingFor } from "../flow/index.js";
import type { PlanPoint, Scheme, Work } from "../site/index.js";
import { plainTank } from "../site/site.fixture.js";
import { checkStanding } from "./checkStanding.js";

const words = wordingFor("metric");
const found = (work: Work, after: (place: PlanPoint) => number) => {
  const scheme: Scheme = { id: "s", name: "S", works: [work] };
  return checkStanding(scheme, after, words);
};

// The top of the plain tank (3 × 2 m about the origin) lies at 98 + 1.5.
describe("a tank's top against the ground as the job leaves it", () => {
  const top = 99.5;

  it("is cautioned just above it, and not just under", () => {
    expect(found(plainTank(), () => top - 0.004)).toEqual([]);
    expect(found(plainTank(), () => top + 1)).toEqual([]);
    expect(found(plainTank(), () => top - 0.006)).toMatchObject([
      { code: "tank.out-of-ground", level: "caution", where: "tank" },
    ]);
    expect(found(plainTank(), () => NaN)).toEqual([]);
  });

  it("tells the lowest side, half a metre off the body", () => {
    // Falls 0.1 per m to the east: the low side's ground, at x = 1 + 0.5, is 99.5 + 0.05 − 0.15.
    const [finding] = found(plainTank(), ([x]) => top + 0.05 - 0.1 * x);
    expect(finding?.text).toContain("stands up to 0.10 m above the ground");
    const turned = plainTank({ bearing: 90 });
    expect(found(turned, ([x]) => top + 0.05 - 0.1 * x)[0]?.text).toContain("up to 0.15 m");
  });
});

// 1 ft: common practice, no source (rule book, floor-gap).
describe("a gap under a building's floor", () => {
  const building: Work = {
    kind: "building",
    id: "b",
    name: "Shed",
    outline: [
      [0, 0],
      [6, 0],
      [6, 4],
      [0, 4],
    ],
    base: 100,
    height: 3,
  };

  it("is spoken of from 1 ft over the low corner, and not under", () => {
    const slope = (gap: number) => found(building, ([x]) => 100 - (gap * x) / 6);
    expect(slope(0.3048)).toEqual([]);
    expect(slope(0.32)).toMatchObject([{ code: "building.gap", level: "note" }]);
    expect(slope(0.9)[0]?.text).toContain("0.90 m at the low corner");
  });
});
