import { describe, expect, it } from "vitest";
import { plainSite } from "../../site/site.fixture.js";
import { lotOutline, outlinePath } from "./lotOutline.js";

const site = plainSite({ half: 20 });

describe("the outline of a lot", () => {
  it("is the hull of its points, without those along an edge", () => {
    const sorted = [...lotOutline(site)].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
    expect(sorted).toEqual([
      [-20, -20],
      [-20, 20],
      [20, -20],
      [20, 20],
    ]);
  });

  it("is the boundary where there is one", () => {
    const boundary: [number, number][] = [
      [0, 0],
      [5, 0],
      [0, 5],
    ];
    expect(lotOutline({ ...site, survey: { ...site.survey, boundary } })).toBe(boundary);
  });

  it("has no area when the points lie on one line", () => {
    const points = [1, 2, 3].map((x) => ({ id: `${x}`, x, y: x, z: 0 }));
    expect(lotOutline({ ...site, survey: { points } })).toEqual([]);
    expect(outlinePath([], { width: 300, height: 200 })).toBe("");
  });
});

describe("its path on the page", () => {
  it("keeps north up and the proportions, in the middle", () => {
    const corner: [number, number][] = [
      [10, 10],
      [30, 10],
      [10, 30],
    ];
    expect(outlinePath(corner, { width: 300, height: 200 })).toBe(
      "M50.0 200.0L250.0 200.0L50.0 0.0Z",
    );
  });
});
