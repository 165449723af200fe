import { describe, expect, it } from "vitest";
import type { Limit, PlanPoint, Site } from "../../site/index.js";
import { plainSite, plainTank } from "../../site/site.fixture.js";
import { layoutPlan } from "./index.js";
import { jobOf, sheetsFrom, textsOf } from "./plan.fixture.js";

const LOT: PlanPoint[] = [
  [-18, -18],
  [18, -18],
  [18, 18],
  [-18, 18],
];
const lot = (id: string, path: PlanPoint[]): Limit => ({
  ...{ id, kind: "lot-line", name: id, path, closed: true },
});

function namesOn(site: Site): string[] {
  return sheetsFrom(layoutPlan, jobOf(site, "letter"))
    .flatMap(textsOf)
    .map(({ text }) => text)
    .filter((text) => /corner \d/.test(text));
}

describe("corners of the lot on the layout", () => {
  const plain = plainSite({ works: [plainTank()] });

  it("carry the numbers of the stakes' list", () => {
    const names = namesOn({ ...plain, limits: [lot("Lot", LOT)] });
    expect(new Set(names)).toEqual(new Set(["corner 1", "corner 2", "corner 3", "corner 4"]));
  });

  it("say which lot line they belong to where there are several", () => {
    const west = LOT.map(([x, y]): PlanPoint => [x / 2 - 9, y]);
    const names = namesOn({ ...plain, limits: [lot("East", LOT), lot("West", west)] });
    expect(names).toContain("East, corner 2");
    expect(names).toContain("West, corner 2");
  });

  it("name the mark in the ground that stands there or beside it, and no other point", () => {
    const { points } = plain.survey;
    const more = [
      { id: "p1", x: -18, y: -18, z: 100, note: "iron pin" },
      { id: "p2", x: 18.2, y: -18, z: 100, note: "iron pin" },
      { id: "p3", x: 18, y: 18, z: 100, note: "top of bank" },
    ];
    const site: Site = {
      ...plain,
      survey: { ...plain.survey, points: [...points, ...more] },
      limits: [lot("Lot", LOT)],
    };
    expect(new Set(namesOn(site))).toEqual(
      new Set(["corner 1, point p1", "corner 2, beside point p2", "corner 3", "corner 4"]),
    );
  });
});
