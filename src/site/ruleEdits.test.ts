import { describe, expect, it } from "vitest";
import {
  acceptanceOf,
  acceptFinding,
  setLocalRule,
  setSetbacks,
  withdrawAcceptance,
} from "./ruleEdits.js";
import { plainSite } from "./site.fixture.js";

const caution = { level: "caution", code: "limit.too-near", where: "tank-1" } as const;

describe("findings taken on", () => {
  it("keeps the reason for one finding of one scheme, and gives it up again", () => {
    const site = acceptFinding(plainSite({}), "a", caution, { reason: " surveyed by the county " });
    expect(acceptanceOf(site, "a", caution)?.reason).toBe("surveyed by the county");
    expect(acceptanceOf(site, "b", caution)).toBeNull();
    expect(acceptanceOf(site, "a", { ...caution, where: "tank-2" })).toBeNull();
    const twice = acceptFinding(site, "a", caution, { reason: "measured again" });
    expect(twice.accepted).toHaveLength(1);
    expect(withdrawAcceptance(twice, "a", caution).accepted).toEqual([]);
  });

  it("never takes on a stop, nor without a reason", () => {
    const site = plainSite({});
    const stop = { ...caution, level: "stop" } as const;
    expect(acceptFinding(site, "a", stop, { reason: "it will do" })).toBe(site);
    expect(acceptFinding(site, "a", caution, { reason: "  " })).toBe(site);
    const accepted = [{ ...caution, reason: "written into the file by hand" }];
    expect(acceptanceOf({ accepted }, "a", stop)).toBeNull();
  });
});

describe("local rules", () => {
  it("replaces a number and goes back to the published one", () => {
    const local = setLocalRule(plainSite({}), "protect-from", {
      value: 1.2192,
      source: "state rule",
    });
    expect(local.rules).toEqual([{ id: "protect-from", value: 1.2192, source: "state rule" }]);
    expect(setLocalRule(local, "protect-from", null).rules).toEqual([]);
  });

  it("sets and gives up the table of setbacks", () => {
    const own = setSetbacks(plainSite({}), [
      { from: "tank", to: "well", distance: 15.24, source: "county table" },
    ]);
    expect(own.setbacks).toHaveLength(1);
    expect("setbacks" in setSetbacks(own, null)).toBe(false);
  });
});
