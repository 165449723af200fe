/** No limit of the flow stands there for nothing: each, set anew, changes a figure or a finding. */
import { describe, expect, it } from "vitest";
import alder from "../../shared/sites/alder-flat.site.json" with { type: "json" };
import { estimate, flowRules } from "../../src/estimate/index.js";
import {
  changeBranch,
  changePipe,
  changePressure,
  setFlowRule,
  type Site,
} from "../../src/site/index.js";

const plain = alder as unknown as Site;

/** The example with what its own figures leave out of sight. */
const held = changePressure(plain, "pumped", "lift", { checkValve: true });
const bends = changePipe(held, "pumped", "house-drain", (pipe) => ({ ...pipe, cleanouts: [0] }));
const fine = changeBranch(plain, "pumped", "lift", "west", (branch) => ({
  ...branch,
  laterals: { ...branch.laterals, holes: { ...branch.laterals.holes, diameter: 0.004 } },
}));
const SITES: readonly [site: Site, scheme: string][] = [
  [bends, "pumped"],
  [fine, "pumped"],
  [plain, "gravity"],
];

function flowOf(site: Site, scheme: string): string {
  const { flow, findings } = estimate(site, scheme);
  return JSON.stringify([flow, findings]);
}

const before = SITES.map(([site, scheme]) => flowOf(site, scheme));

describe.each(flowRules())("$id", ({ id, value }) => {
  it("changes what the flow says", () => {
    const others = value === 0 ? [5] : [value / 10, value * 10, value / 1e4];
    const changes = SITES.some(([site, scheme], i) =>
      others.some((other) => flowOf(setFlowRule(site, scheme, id, other), scheme) !== before[i]),
    );
    expect(changes).toBe(true);
  });
});
