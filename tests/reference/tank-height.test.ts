import { describe, expect, it } from "vitest";
import alder from "../../shared/sites/alder-flat.site.json" with { type: "json" };
import quarry from "../../shared/sites/quarry-lane.site.json" with { type: "json" };
import { estimate } from "../../src/estimate/index.js";
import { findWork } from "../../src/site/index.js";
import type { Site } from "../../src/site/index.js";
import { withFall, withTankRaised } from "../../src/desk/flow/raised.js";

describe.each([
  { site: alder as unknown as Site, scheme: "gravity", name: "Alder Flat" },
  { site: quarry as unknown as Site, scheme: "gravity", name: "Quarry Lane" },
])("the tank of $name as high as its drain allows", ({ site, scheme }) => {
  const { flow } = estimate(site, scheme);
  const highest = flow.highest[0];
  if (highest === undefined) throw new Error("got no tank that a drain enters, expected one");
  const after = estimate(withTankRaised(site, scheme, highest, flow.joints), scheme);

  it("has its drain fall just the least, and every joint meet", () => {
    const drain = after.flow.pipes.find((pipe) => pipe.id === highest.drain);
    expect(drain?.fall).toBeCloseTo(drain?.leastFall?.value ?? NaN, 9);
    for (const joint of after.flow.joints) expect(Math.abs(joint.off)).toBeLessThan(1e-9);
  });
  it("digs less where it stands higher", () => {
    const before = estimate(site, scheme);
    expect(highest.rise).toBeGreaterThan(0);
    expect(after.earth.bank).toBeLessThan(before.earth.bank);
  });
  it("can be raised no more", () => {
    expect(Math.abs(after.flow.highest[0]?.rise ?? NaN)).toBeLessThan(1e-9);
  });
});

it("a chosen fall moves the far end only", () => {
  const trench = findWork(alder as unknown as Site, "pumped", "house-drain-trench");
  const pipe = trench?.kind === "trench" ? trench.pipes[0] : undefined;
  if (pipe?.grade.by !== "inverts") throw new Error("expected a drain laid by inverts");
  const fallen = withFall(pipe, 0.02, 10);
  expect(fallen?.grade).toEqual({ ...pipe.grade, end: pipe.grade.start - 0.2 });
});
