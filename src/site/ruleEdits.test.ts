import { describe, expect, it } from "vitest";
import {
  acceptanceOf,
  acceptFinding,
  setLocalRule,
  setSetbacks,
  withdrawAcceptance,
} from "./ruleEdits.js";
import { plainSite } from "./site.fixture.js";

const caution = {
  ...({ level: "caution", code: "limit.too-near", where: "tank-1" } as const),
  text: "Tank 1 is 29.1 ft from Mill creek; the setback in the table is 50.0 ft. Move it 21′ 0″ farther off.",
};

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

  it("covers no other finding of the same code and place, and the same with other figures", () => {
    const site = acceptFinding(plainSite({}), "a", caution, { reason: "as agreed" });
    const ofWell = { ...caution, text: caution.text.replace("Mill creek", "Well 2") };
    expect(acceptanceOf(site, "a", ofWell)).toBeNull();
    const crossed = { ...caution, text: caution.text.replace("is 29.1 ft from", "crosses") };
    expect(acceptanceOf(site, "a", crossed)).toBeNull();
    const moved = { ...caution, text: caution.text.replace("29.1 ft", "8.5 m") };
    expect(acceptanceOf(site, "a", moved)?.said).toBe(
      "Tank 1 is 29.1 ft from Mill creek; the setback in the table is 50.0 ft.",
    );
    const both = acceptFinding(site, "a", ofWell, { reason: "old well, sealed" });
    expect(both.accepted).toHaveLength(2);
    expect(withdrawAcceptance(both, "a", caution).accepted).toHaveLength(1);
  });

  it("never takes on a stop, nor without a reason", () => {
    const site = plainSite({});
    const stop = { ...caution, level: "stop" } as const;
    expect(acceptFinding(site, "a", stop, { reason: "it will do" })).toBe(site);
    expect(acceptFinding(site, "a", caution, { reason: "  " })).toBe(site);
    const { code, where } = caution;
    const accepted = [{ code, where, reason: "written into the file by hand" }];
    expect(acceptanceOf({ accepted }, "a", stop)).toBeNull();
    expect(acceptanceOf({ accepted }, "a", caution)).not.toBeNull();
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
