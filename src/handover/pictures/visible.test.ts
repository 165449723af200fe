import { describe, expect, it } from "vitest";
import { chainsOf, outlinesOf } from "./outlines.js";
import { facetOf, FacetMap, seenOf, twiceArea, type Facet, type Spot } from "./visible.js";

/** A rectangle whose nearness is `near` at its west and `east` at its east side. */
function slab(box: readonly [number, number, number, number], near: number, east = near): Facet {
  const [left, top, right, bottom] = box;
  const facet = facetOf(
    [
      { x: left, y: top, near },
      { x: right, y: top, near: east },
      { x: right, y: bottom, near: east },
      { x: left, y: bottom, near },
    ],
    { slack: 1e-6, layer: "", light: 0 },
  );
  if (facet === null) throw new Error("a slab that is seen edge on");
  return facet;
}

const areaOf = (parts: readonly (readonly Spot[])[]): number =>
  parts.reduce((sum, part) => sum + twiceArea(part) / 2, 0);

describe("what is seen of facets", () => {
  it("is what nearer ones leave of them, whatever their order", () => {
    const far = slab([0, 0, 10, 10], 0);
    const near = slab([2, 3, 6, 8], 5);
    for (const facets of [
      [far, near],
      [near, far],
    ]) {
      const map = new FacetMap(facets);
      expect(areaOf(map.partsOf(far))).toBeCloseTo(100 - 20, 6);
      expect(areaOf(map.partsOf(near))).toBeCloseTo(20, 6);
    }
  });

  it("is nothing where all is covered, by two together as well", () => {
    const far = slab([0, 0, 10, 10], 0);
    const map = new FacetMap([far, slab([-1, -1, 5, 11], 1), slab([5, -1, 11, 11], 1)]);
    expect(areaOf(map.partsOf(far))).toBeCloseTo(0, 6);
  });

  it("ends where two run through each other", () => {
    const level = slab([0, 0, 10, 10], 0);
    const slanted = slab([0, 0, 10, 10], -3, 7);
    const map = new FacetMap([level, slanted]);
    // They meet at x = 3: the level one is nearer to the west of it, the slanted one to the east.
    expect(areaOf(map.partsOf(level))).toBeCloseTo(30, 3);
    expect(areaOf(map.partsOf(slanted))).toBeCloseTo(70, 3);
  });

  it("leaves facets that only touch alone", () => {
    const [one, other] = [slab([0, 0, 5, 5], 1), slab([5, 0, 9, 5], 9)];
    const map = new FacetMap([one, other]);
    expect(map.partsOf(one)).toEqual([one.outline]);
    expect(map.partsOf(other)).toEqual([other.outline]);
  });

  it("hides the stretches of a line that lie behind", () => {
    const map = new FacetMap([
      slab([2, 0, 4, 10], 5),
      slab([3, 0, 6, 10], 5),
      slab([8, 0, 9, 10], -5),
    ]);
    const hidden = map.hiddenOf({
      from: { x: 0, y: 5, near: 0 },
      to: { x: 10, y: 5, near: 0 },
      slack: 1e-6,
    });
    expect(hidden).toHaveLength(1);
    expect(hidden[0]![0]).toBeCloseTo(0.2, 9);
    expect(hidden[0]![1]).toBeCloseTo(0.6, 9);
    expect(seenOf(hidden).map(([low, high]) => high - low)).toEqual([
      expect.closeTo(0.2, 9),
      expect.closeTo(0.4, 9),
    ]);
  });
});

describe("what is put together", () => {
  it("has no line between areas side by side, and keeps a hole", () => {
    const square = (x: number, y: number): Spot[] => [
      [x, y],
      [x + 1, y],
      [x + 1, y + 1],
      [x, y + 1],
    ];
    expect(outlinesOf([square(0, 0), square(1, 0)])).toHaveLength(1);
    const places = [0, 1, 2].flatMap((x) => [0, 1, 2].map((y) => [x, y] as const));
    const ring = outlinesOf(
      places.filter(([x, y]) => x !== 1 || y !== 1).map(([x, y]) => square(x, y)),
    );
    expect(ring.map((loop) => Math.abs(twiceArea(loop)) / 2).toSorted((a, b) => a - b)).toEqual([
      1, 9,
    ]);
    expect(ring.map(twiceArea).reduce((a, b) => a + b)).toBeCloseTo(16, 9);
  });

  it("joins lines that go on", () => {
    expect(
      chainsOf([
        [
          [0, 0],
          [1, 0],
        ],
        [
          [1, 0],
          [1, 1],
        ],
        [
          [5, 5],
          [6, 6],
        ],
      ]),
    ).toHaveLength(2);
  });
});
