/** A site moved, turned, lifted or scaled digs the same, as far as doubles can tell. */
import { describe, expect, it } from "vitest";
import type { Site } from "../../src/site/index.js";
import { largestGap, largestStretch, movedSite, STILL, type Moved } from "../fixtures/moved.js";
import { seeded } from "../fixtures/seeded.js";
import { dug, siteOf, total } from "../fixtures/site.js";
import { smallSite } from "../fixtures/smallSite.js";
import { threeWorks } from "../fixtures/threeWorks.js";

const PRECISION = 1e-9;
const SCALES = [0.001, 0.002, 0.01, 0.1, 0.5, 3, 10, 100, 1000];

const site = siteOf(threeWorks());
const reference = dug(site);

describe("the site with three works that the rest is compared with", () => {
  it("digs, fills and balances", () => {
    expect(reference.gap).toBeLessThan(1e-11);
    for (const id of ["tank", "pad", "trench"]) {
      expect(total(reference.work(id).cut)).toBeGreaterThan(5);
      expect(total(reference.work(id).fill)).toBeGreaterThan(5);
    }
  });
});

function expectSame(moved: Moved, precision = PRECISION): void {
  const again = dug(movedSite(site, moved));
  expect(largestGap(reference, again, moved.scale)).toBeLessThan(precision);
  expect(largestStretch(reference, again, moved)).toBeLessThan(10 * precision);
  expect(again.gap).toBeLessThan(PRECISION);
}

describe("moved and turned", () => {
  it.each(Array.from({ length: 12 }, (_, i) => 300 + i))("by any amount, seed %d", (seed) => {
    const { between } = seeded(seed);
    const [east, north] = [between(-500, 500), between(-500, 500)];
    expectSame({ ...STILL, turn: between(0, 360), east, north, lift: between(-99, 99) }, 1e-10);
  });

  it.each([90, 180, 270])("by %d degrees", (turn) => {
    expectSame({ ...STILL, turn }, 1e-11);
  });

  it("a million metres away, where a coordinate holds less than a nanometre", () => {
    expectSame({ ...STILL, east: 1_000_000, north: 5_000_000, lift: 2000 }, 1e-10);
  });

  it("a million metres away and turned", () => {
    expectSame({ ...STILL, turn: 77, east: -1_000_000, north: 1_000_000 });
  });
});

describe("scaled: volumes by the cube, areas by the square, lengths in proportion", () => {
  it.each(SCALES)("three works, by %d", (scale) => {
    expectSame({ ...STILL, scale });
  });

  it.each(SCALES)("three works turned and lifted too, by %d", (scale) => {
    expectSame({ turn: 123, east: 7 * scale, north: -11 * scale, lift: 13 * scale, scale });
  });
});

/** A small random site whose points lie on no common circles, so that its triangles are certain. */
function certainSite(seed: number): Site {
  const made = smallSite(seed);
  const { between } = seeded(seed + 0.5);
  const points = made.survey.points.map((point) => ({
    ...point,
    x: point.x + between(-0.3, 0.3),
    y: point.y + between(-0.3, 0.3),
  }));
  return { ...made, survey: { points } };
}

const FIRST = 20_000;
const COUNT = 120;

describe(`${COUNT} small random sites, seeds ${FIRST} to ${FIRST + COUNT - 1}`, () => {
  it.each([
    ["turned by any amount and moved", 0],
    ["a million metres off", 1],
    ...SCALES.map((scale) => [`scaled by ${scale}`, scale] as const),
  ] as const)("%s", (what, scale) => {
    const faults: string[] = [];
    for (let seed = FIRST; seed < FIRST + COUNT; seed++) {
      const { between } = seeded(seed);
      const moved: Moved =
        scale === 0
          ? { ...STILL, turn: between(0, 360), east: between(-99, 99), north: between(-99, 99) }
          : scale === 1
            ? { ...STILL, east: 1_000_000, north: -1_000_000, lift: 1000 }
            : { ...STILL, scale };
      const given = certainSite(seed);
      const [before, after] = [dug(given), dug(movedSite(given, moved))];
      const gap = largestGap(before, after, moved.scale);
      if (!(gap < PRECISION)) faults.push(`seed ${seed}, ${what}: volumes are ${gap} apart`);
    }
    expect(faults).toEqual([]);
  });
});
