import { describe, expect, it } from "vitest";
import { baseGround } from "../ground/index.js";
import { plainSite, plainTrench } from "../site/site.fixture.js";
import type { PlanPoint, Site } from "../site/index.js";
import { digScheme } from "./dig.js";

/** Two trenches north to south, so many metres apart. */
function codes(apart: number, rules: Site["rules"] = []): string[] {
  const path = (x: number): PlanPoint[] => [
    [x, -6],
    [x, 6],
  ];
  const works = [
    plainTrench({ id: "a", path: path(0) }),
    plainTrench({ id: "b", name: "Second", path: path(apart) }),
  ];
  const site: Site = { ...plainSite({ works }), rules };
  const ground = baseGround(site);
  if (!ground.ok) throw new Error(ground.problem.text);
  const { result } = digScheme(site, site.schemes[0]!, ground.base);
  return result.findings.map(({ code, where }) => `${code} ${where}`);
}

describe("a work over an earlier one", () => {
  it("is told when it digs out what that put in, and not when it lies beside it", () => {
    expect(codes(0)).toContain("dig.digs-earlier-work b");
    expect(codes(5).filter((code) => code.startsWith("dig.digs-earlier-work"))).toEqual([]);
  });

  it("begins at the volume that the site asks for", () => {
    expect(codes(0, [{ id: "dug-again-from", value: 100 }])).not.toContain(
      "dig.digs-earlier-work b",
    );
  });
});
