// 29 CFR 1926.651(i)(2) and (j)(2) (US Occupational Safety and Health Administration); the line of
// 1 : 1 and the one depth are common practice, no source.
import { describe, expect, it } from "vitest";
import type { Building, Work } from "../site/index.js";
import { plainTank } from "../site/site.fixture.js";
import { digOf, schemeOf, workOf } from "../dig/dig.fixture.js";
import { wordingFor } from "../flow/index.js";
import { checkLoads, checkUndermining, checkWater, type EdgeLoad } from "./edges.js";
import { floorLines } from "./holeFloor.js";
import type { HoleReport } from "./holes.js";

const hole = (over: Partial<HoleReport> = {}): HoleReport => ({
  work: "tank",
  name: "Tank",
  face: 2,
  layers: [],
  layersOver: null,
  width: null,
  change: null,
  shortTerm: false,
  water: null,
  ladders: [],
  ...over,
});

const SITE = { units: "metric" } as const;
const WORDS = wordingFor("metric");
const square: [number, number][] = [
  [-2, -2],
  [2, -2],
  [2, 2],
  [-2, 2],
];
const DIG = digOf([workOf({ id: "tank", outlines: { daylight: [square], toe: [] } })]);

describe("loads near the edge of a hole", () => {
  const load = (x: number, over: Partial<EdgeLoad> = {}): EdgeLoad => ({
    ...{ name: "the crane's pads", shape: { points: [[x, 0]], closed: false }, except: [] },
    ...over,
  });
  const said = (...loads: EdgeLoad[]) => checkLoads([hole()], DIG, loads, SITE);

  it("count within its depth and not beyond", () => {
    expect(said(load(3.99))).toHaveLength(1);
    expect(said(load(4.01))).toEqual([]);
    expect(said(load(4.01, { out: 0.1 }))).toHaveLength(1);
  });

  it("are named in one finding with their distance", () => {
    const [one, ...more] = said(load(3), load(2.5, { name: "trucks on the drive" }));
    expect(more).toEqual([]);
    expect(one?.text).toContain("the crane's pads (1.00 m), trucks on the drive (0.50 m)");
    expect(one?.level).toBe("caution");
  });

  it("are only noted where they need not stand, and not told of a hole they are let off", () => {
    expect(said(load(3, { passing: true }))[0]?.level).toBe("note");
    expect(said(load(3, { except: ["tank"] }))).toEqual([]);
  });

  it("are cautioned nearer than 2 ft even where they need not stand: 29 CFR 1926.651(j)(2)", () => {
    const [near] = said(load(2 + 0.609, { passing: true }));
    expect(near?.level).toBe("caution");
    expect(near?.text).toContain("Keep spoil and equipment at least 0.61 m from the edge");
    expect(near?.source).toContain("29 CFR 1926.651(j)(2)");
    const [off] = said(load(2 + 0.61, { passing: true }));
    expect(off?.level).toBe("note");
    expect(off?.text).not.toContain("Keep spoil");
    const rules = [{ id: "spoil-back", value: 0.9, source: "invented county code, § 1" }];
    const far = [load(2 + 0.89, { passing: true })];
    expect(checkLoads([hole()], DIG, far, { ...SITE, rules })[0]?.level).toBe("caution");
  });

  it("do not matter beside a hole of less than 4 ft", () => {
    expect(checkLoads([hole({ face: 1.2 })], DIG, [load(2.1)], SITE)).toEqual([]);
  });
});

describe("a hole that goes under a base", () => {
  // The tank's floor is at 97.8, its edge 1 m east of the middle.
  const house = (x: number, base: number): Building => ({
    kind: "building",
    id: "house",
    name: "House",
    outline: [
      [x, -5],
      [x + 5, -5],
      [x + 5, 5],
      [x, 5],
    ],
    base,
    height: 3,
  });
  const said = (...works: Work[]) =>
    checkUndermining(
      schemeOf({ works }),
      [hole()],
      (work) => floorLines(work, [], () => 100),
      SITE,
      WORDS,
    );

  it("is told where it comes below the line of 1 : 1 from it", () => {
    expect(said(house(2.9, 99.8), plainTank())).toHaveLength(1);
    expect(said(house(3.1, 99.8), plainTank())).toEqual([]);
    expect(said(house(2.9, 97.8), plainTank())).toEqual([]);
  });

  it("counts a tank that is set before, and none that comes after", () => {
    const other = plainTank({ id: "other", name: "Other", at: [2.5, 0], base: 99 });
    expect(said(other, plainTank())[0]?.text).toContain("base of Other");
    expect(said(plainTank(), other)).toEqual([]);
  });
});

describe("the highest groundwater of the year", () => {
  it("is one note for all holes that it would come into", () => {
    const water = { depth: 1, overFloor: 1, met: false };
    const found = checkWater([hole({ water }), hole({ work: "b", name: "B", water })], WORDS);
    expect(found.map(({ code, level }) => [code, level])).toEqual([["water.season", "note"]]);
    expect(found[0]?.text).toContain("Tank (1.00 m), B (1.00 m)");
  });

  it("is not told where it stays below the floor", () => {
    expect(checkWater([hole({ water: { depth: 3, overFloor: -1, met: false } })], WORDS)).toEqual(
      [],
    );
  });
});
