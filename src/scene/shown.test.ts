import { describe, expect, it } from "vitest";
import { setMark } from "../site/index.js";
import type { Site } from "../site/index.js";
import { plainPad, plainSite, plainStrip, plainTank } from "../site/site.fixture.js";
import { idsAmong, isAmong, shownLimits, shownProbes, shownWorks } from "./shown.js";

const site: Site = {
  ...plainSite({ works: [plainTank(), plainPad()], layers: [0.3, 1] }),
  limits: [{ id: "well", kind: "well", at: [1, 1] }],
};

describe("what shows", () => {
  it("is all but what is hidden", () => {
    const hidden = setMark(
      site,
      "plan",
      [
        { kind: "work", id: "tank" },
        { kind: "probe", id: "t1" },
        { kind: "limit", id: "well" },
      ],
      "hidden",
      true,
    );
    const works = (one: Site) => shownWorks(one.schemes[0]?.works ?? []).map((work) => work.id);
    expect([works(site), shownProbes(site).length, shownLimits(site).length]).toEqual([
      ["tank", "pad"],
      1,
      1,
    ]);
    expect([works(hidden), shownProbes(hidden), shownLimits(hidden)]).toEqual([["pad"], [], []]);
  });

  it("leaves out a strip that lies over a work", () => {
    const over = plainStrip({ id: "over", area: { by: "work", work: "pad", beyond: 1 } });
    expect(shownWorks([over, plainStrip()]).map((work) => work.id)).toEqual(["strip"]);
  });

  it("tells what is chosen by kind and id", () => {
    const chosen = [{ kind: "work", id: "a" } as const, null, { kind: "probe", id: "b" } as const];
    expect(isAmong(chosen, { kind: "work", id: "a" })).toBe(true);
    expect(isAmong(chosen, { kind: "work", id: "b" })).toBe(false);
    expect([...idsAmong(chosen, "work")]).toEqual(["a"]);
  });
});
