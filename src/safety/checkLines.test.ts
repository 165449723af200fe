import { describe, expect, it } from "vitest";
import { digOf, schemeOf, workOf } from "../dig/dig.fixture.js";
import type { Limit, Site } from "../site/index.js";
import { plainTank } from "../site/site.fixture.js";
import { checkLines } from "./checkLines.js";

type Given = Partial<Pick<Site, "locate" | "rules">>;

const DIG = digOf([workOf({ id: "tank", cut: { clay: 4 } })]);
const AT: [number, number] = [1, 2];

function check(site: Given) {
  return checkLines({ units: "us", ...site }, schemeOf(), DIG, []);
}

function near(depth: number | undefined, hole: number, distance = 0) {
  const limit: Limit = { id: "g", kind: "buried-gas", name: "Gas line", path: [AT, [5, 5]] };
  const limits = [{ ...limit, ...(depth !== undefined && { depth }) }];
  const site = { units: "metric" as const, limits, locate: { ticket: "1", date: "2027-04-01" } };
  const cut = { work: "tank", limit: "g", area: 1, cut: { clay: 2 }, at: AT, distance };
  return checkLines(site, schemeOf({ works: [plainTank()] }), DIG, [{ ...cut, depth: hole }])[0];
}

describe("the locate call (29 CFR 1926.651(b))", () => {
  it("is asked for until ticket and date are written down", () => {
    expect(check({})[0]).toMatchObject({ code: "line.locate", level: "caution" });
    expect(check({ locate: { ticket: "A 12" } })[0]?.text).toContain("no date of the call");
    expect(check({ locate: { date: "2027-04-01" } })[0]?.text).toContain("no ticket number");
    expect(check({ locate: { ticket: "A 12", date: "2027-04-01" } })).toEqual([]);
  });

  it("is not asked for where nothing is dug", () => {
    expect(checkLines({ units: "us" }, schemeOf(), digOf([workOf({ id: "w" })]), [])).toEqual([]);
  });
});

describe("a hole at a buried line", () => {
  it("is found at its place, with its depth against the line's", () => {
    expect(near(1, 2)).toMatchObject({ code: "line.by-hand", where: "tank", at: AT });
    expect(near(1, 2)?.text).toContain("laid bare");
    expect(near(2, 1)?.text).toContain("under its floor");
    expect(near(1, 1)?.text).toContain("its floor is at the line");
    expect(near(undefined, 1)?.text).toContain("no depth of the line is entered");
  });

  it("says what is dug by hand, and whether the line runs through it", () => {
    expect(near(1, 1)?.text).toContain("crosses Gas line");
    expect(near(1, 1)?.text).toContain("2.0 m³");
    expect(near(1, 1, 0.3)?.text).toContain("comes within 0.30 m of Gas line");
    expect(near(1, 2, 0.3)?.text).toContain("goes deeper than the line beside it");
  });
});
