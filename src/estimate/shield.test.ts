import { describe, expect, it } from "vitest";
import type { Site, Work } from "../site/index.js";
import { plainPad, plainSite, plainTank } from "../site/site.fixture.js";
import { estimate } from "./estimate.js";
import { shieldChange, withShield } from "./shield.js";

const tank = (run: number): Work => plainTank({ walls: { by: "run", run } });
const site = (run: number, over: Partial<Site> = {}): Site => ({
  ...plainSite({ works: [tank(run), plainPad({ top: 99.5 })], layers: [0.3, 0.9] }),
  ...over,
});

describe("a shield in a hole", () => {
  it("makes the walls of that hole upright and leaves the others", () => {
    const works = withShield(site(1), "plan", "tank").schemes[0]?.works ?? [];
    expect(works[0]).toMatchObject({ walls: { by: "run", run: 0 } });
    expect(works[1]).toEqual(plainPad({ top: 99.5 }));
  });

  it("changes nothing but the hire where the walls are upright already", () => {
    // Called already: waiting for the marks would let another digger be cheapest.
    const drawn = site(0, { locate: { ticket: "A 12", date: "2027-04-01" } });
    const change = shieldChange(drawn, "plan", "tank", estimate(drawn, "plan"));
    expect([change.cut, change.rock, change.spoil]).toEqual([0, 0, 0]);
    expect(change.cost).toEqual({ low: 0, likely: 0, high: 0 });
    expect(change.total).toEqual(change.hire.amount);
    expect(change.hire.days.low).toBe(1);
  });

  it("saves what the slopes would have cut, by two estimates", () => {
    const drawn = site(1);
    const now = estimate(drawn, "plan");
    const change = shieldChange(drawn, "plan", "tank", now);
    const upright = estimate(site(0), "plan");
    const all = (cut: object): number =>
      Object.values(cut as Record<string, number>).reduce((a, b) => a + b, 0);
    expect(change.cut).toBeCloseTo(all(upright.cut) - all(now.cut), 9);
    expect(change.cut).toBeLessThan(-5);
    expect(change.rock).toBeLessThan(0);
    expect(change.cost.low).toBeLessThanOrEqual(change.cost.likely);
    expect(change.cost.likely).toBeLessThanOrEqual(change.cost.high);
  });

  it("is priced by a demo price until the scheme has its own", () => {
    const demo = site(1);
    expect(shieldChange(demo, "plan", "tank", estimate(demo, "plan")).hire.source).toMatch(/demo/);
    const own = {
      ...demo,
      schemes: [{ ...demo.schemes[0]!, prices: [{ id: "shield-hire", price: 50 }] }],
    };
    const { hire } = shieldChange(own, "plan", "tank", estimate(own, "plan"));
    expect(hire.own).toBe(true);
    expect(hire.amount.likely).toBe(50 * hire.days.likely);
  });
});
