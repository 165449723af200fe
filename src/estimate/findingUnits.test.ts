import { describe, expect, it } from "vitest";
import { plainSite, plainTank } from "../site/site.fixture.js";
import type { Site } from "../site/index.js";
import { FOOT, markLength, printMarked } from "../units/index.js";
import { estimate } from "./estimate.js";

const textOf = (site: Site, code: string): string => {
  const found = estimate(site, site.schemes[0]!.id).findings.find((one) => one.code === code);
  if (found === undefined) throw new Error(`expected a finding ${code}`);
  return `${found.text} (${found.source})`;
};

describe("findings of the ground", () => {
  const plain = plainSite({});
  const first = plain.survey.points[0]!;
  const twice = { ...first, id: "twice", z: first.z + FOOT };
  const survey = { ...plain.survey, points: [...plain.survey.points, twice] };

  it("say lengths in the site's units, also when those change and the survey does not", () => {
    const metric = textOf({ ...plain, survey, units: "metric" }, "survey.two-heights");
    expect(metric).toContain("0.30 m apart in height");
    expect(metric).toContain("points within 1 mm in plan");
    const us = textOf({ ...plain, survey, units: "us" }, "survey.two-heights");
    expect(us).toContain("1′ 0″ apart in height");
    expect(us).not.toMatch(/\d m\b|mm/);
  });

  it("say in feet where a work runs off the survey", () => {
    const off = plainSite({ works: [plainTank({ at: [60, 0] })] });
    expect(textOf({ ...off, units: "us" }, "survey.too-small")).toMatch(
      /near east [\d,.]+ ft, north/,
    );
  });
});

describe("a marked length", () => {
  it("prints in the units of whoever reads it, and leaves other text alone", () => {
    const text = `rim ${markLength(FOOT)}, x ${markLength(-2 * FOOT, "distance")}`;
    expect(printMarked(text, "us")).toBe("rim 1′ 0″, x -2.0 ft");
    expect(printMarked(text, "metric")).toBe("rim 0.30 m, x -0.61 m");
    expect(printMarked("length 5 m", "us")).toBe("length 5 m");
  });
});
