import { describe, expect, it } from "vitest";
import { baseGround, type BaseGround } from "../ground/index.js";
import { plainPad, plainSite } from "../site/site.fixture.js";
import type { Site } from "../site/index.js";
import { checkRunoff, waterFrom } from "./checkRunoff.js";

/** What is known to be there. */
function present<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new Error("expected a value, got none");
  return value;
}

function groundOf(site: Site): BaseGround {
  const ground = baseGround(site);
  if (!ground.ok) throw new Error(ground.problem.text);
  return ground.base;
}

/** A pad 8 m square about the origin, on ground 80 m square. */
function padOn(height: (x: number, y: number) => number, rules: Site["rules"] = []): Site {
  const outline: [number, number][] = [
    [-4, -4],
    [4, -4],
    [4, 4],
    [-4, 4],
  ];
  return { ...plainSite({ height, half: 40, works: [plainPad({ outline })] }), rules };
}

const codes = (site: Site): string[] =>
  checkRunoff(site, site.schemes[0]!, [], groundOf(site)).findings.map(({ code }) => code);

describe("water that comes to a work", () => {
  const slope = (_: number, y: number): number => 100 + 0.1 * y;
  // 8 m wide and from the pad's upper edge at 4 m to the survey's at 40 m: 288 m².
  it("is told from the area that the site asks for, and not just under it", () => {
    const site = padOn(slope);
    const runoff = present(checkRunoff(site, site.schemes[0]!, [], groundOf(site)).works[0]);
    expect(Math.abs(runoff.area - 288)).toBeLessThan(20);
    const above = [{ id: "inflow-from", value: runoff.area + 1 }];
    const under = [{ id: "inflow-from", value: runoff.area - 1 }];
    expect(codes(padOn(slope, above))).not.toContain("runoff.comes-in");
    expect(codes(padOn(slope, under))).toContain("runoff.comes-in");
    expect(runoff.ditch?.length).toBeGreaterThan(5);
  });

  it("is led round by a ditch that falls as the site's rule says", () => {
    const site = padOn(slope, [{ id: "ditch-fall", value: 0.02 }]);
    const runoff = present(checkRunoff(site, site.schemes[0]!, [], groundOf(site)).works[0]);
    const ditch = present(runoff.ditch);
    const [first, last] = [ditch[0]!, ditch[ditch.length - 1]!];
    expect(first[2] - last[2]).toBeCloseTo(0.02 * 0.5 * (ditch.length - 1), 3);
  });
});

describe("a hollow", () => {
  // A cone 0.1 m deep in level ground, its lowest place a survey point under the pad.
  const cone = (x: number, y: number): number => 100 - Math.max(0, 0.1 - Math.hypot(x, y) / 300);
  it("is told from the depth that the site asks for, and not just under it", () => {
    expect(codes(padOn(cone, [{ id: "hollow-from", value: 0.0999 }]))).toContain("runoff.hollow");
    expect(codes(padOn(cone, [{ id: "hollow-from", value: 0.1001 }]))).not.toContain(
      "runoff.hollow",
    );
  });
});

describe("the way of water from a place", () => {
  it("is given in the site's own coordinates", () => {
    const site = padOn((_, y) => 100 + 0.1 * y);
    const way = present(waterFrom(groundOf(site), [3, 10]));
    expect(way.path[0]).toEqual([3, 10, expect.closeTo(101, 9)]);
    expect(way.path.at(-1)).toEqual([expect.closeTo(3, 9), -40, expect.closeTo(96, 9)]);
    expect(waterFrom(groundOf(site), [300, 0])).toBeNull();
  });
});
