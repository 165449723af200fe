import { describe, expect, it } from "vitest";
import type { Site, Work } from "../site/index.js";
import { plainSite } from "../site/site.fixture.js";
import { estimate } from "./estimate.js";
import { steepGround } from "./steepGround.js";

const bed: Work = {
  ...{ kind: "bed", id: "b", name: "Bed", at: [0, 0], bearing: 0, length: 6, width: 2 },
  ...{ height: 0.6, wall: 0, base: 100, filling: [] },
};

/** Flat to the west of x = 0, falling east of it by this slope; 40 × 40 m. */
const hill = (slope: number, more: Partial<Site> = {}, works: Work[] = []): Site => ({
  ...plainSite({ height: (x) => 100 - slope * Math.max(0, x), works }),
  ...more,
});
const found = (site: Site): string[] =>
  estimate(site, "plan")
    .findings.filter(({ code }) => code === "ground.steep")
    .map(({ text }) => text);

// 25%: common practice, no source; the rule book's own.
describe("steep ground", () => {
  it("is none just under the rule's slope, and half of the lot at it", () => {
    expect(steepGround(hill(0.2499))).toMatchObject({ area: 0, edge: [], triangles: [] });
    expect(steepGround(hill(0.2501)).area).toBeCloseTo(800, 6);
  });

  it("has an edge about it: 20 + 40 + 20 + 40 m", () => {
    const { edge } = steepGround(hill(0.3));
    const length = edge.reduce((sum, [a, b]) => sum + Math.hypot(a[0] - b[0], a[1] - b[1]), 0);
    expect(length).toBeCloseTo(120, 6);
  });

  it("goes by the site's own number", () => {
    const rules = [{ id: "steep-from", value: 0.35 }];
    expect(steepGround(hill(0.3, { rules })).area).toBe(0);
    expect(found(hill(0.3, { rules }, [bed]))).toEqual([]);
  });

  it("within the survey's boundary alone", () => {
    const site = hill(0.3);
    const boundary: [number, number][] = [
      [-20, -20],
      [10, -20],
      [10, 20],
      [-20, 20],
    ];
    const survey = { ...site.survey, boundary };
    expect(steepGround({ ...site, survey }).area).toBeCloseTo(400, 6);
  });

  it("tells of a field with exactly what of it stands there, and of nothing else", () => {
    // A bed of 2 m across the break of slope: 1 m by 6 m on the steep side.
    expect(found(hill(0.3, {}, [bed]))).toEqual([expect.stringMatching(/^6\.0+ m² of Bed/)]);
    expect(found(hill(0.24, {}, [bed]))).toEqual([]);
    expect(found(hill(0.3, {}, [{ ...bed, at: [-1.01, 0] }]))).toEqual([]);
    expect(found(hill(0.3, {}, [{ ...bed, at: [-0.9, 0] }]))).toHaveLength(1);
  });
});
