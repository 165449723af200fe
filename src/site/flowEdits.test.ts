import { describe, expect, it } from "vitest";
import alder from "../../shared/sites/alder-flat.site.json" with { type: "json" };
import {
  changeBranch,
  changeFlow,
  changePressure,
  checkSite,
  removePressure,
  setFlowRule,
} from "./index.js";
import type { Site } from "./index.js";

const site = alder as unknown as Site;
const flowOf = (now: Site) => now.schemes[0]?.flow;

describe("edits of the flow", () => {
  it("keep the survey and the ground as they are, and what they make can be read", () => {
    const next = changePressure(site, "pumped", "lift", { distalHead: 0.6 });
    expect(next.survey).toBe(site.survey);
    expect(flowOf(next)?.pressure?.[0]?.distalHead).toBe(0.6);
    expect(checkSite(next).ok).toBe(true);
  });
  it("take a field out when it is given as undefined, and the whole flow with the last", () => {
    const bare = changeFlow(site, "gravity", {
      design: undefined,
      soil: undefined,
      field: undefined,
      flotation: undefined,
    });
    expect("flow" in (bare.schemes[1] ?? {})).toBe(false);
  });
  it("set a rule and put it back", () => {
    const own = setFlowRule(site, "gravity", "manning", 0.011);
    expect(own.schemes[1]?.flow?.rules).toEqual([{ id: "manning", value: 0.011 }]);
    expect(setFlowRule(own, "gravity", "manning", null).schemes[1]?.flow?.rules).toBeUndefined();
  });
  it("change one branch and leave the other the same object", () => {
    const next = changeBranch(site, "pumped", "lift", "west", (one) => ({ ...one, share: 2 }));
    const [east, west] = flowOf(next)?.pressure?.[0]?.branches ?? [];
    expect(west?.share).toBe(2);
    expect(east).toBe(flowOf(site)?.pressure?.[0]?.branches[0]);
  });
  it("remove a system, and do nothing to one that is not there", () => {
    expect(flowOf(removePressure(site, "pumped", "lift"))?.pressure).toBeUndefined();
    expect(changePressure(site, "pumped", "none", { distalHead: 1 })).toBe(site);
  });
});
