/**
 * US EPA 625/1-80-012 (1980), Table 7-1 (recalled): 2 to 4 ft of unsaturated soil under the bottom of
 * a trench or bed. Levels by hand: ground at 100 m, a bed at 100 m with 0.6 m of sand, a trench whose
 * floor lies 0.105 m under its pipe's invert of 99 m (0.005 m of wall, 0.1 m of gravel).
 */
import { describe, expect, it } from "vitest";
import type { Bed, Finding, Scheme, Site } from "../../src/site/index.js";
import { plainSite, plainTrench } from "../../src/site/site.fixture.js";
import { estimated, type Job } from "../fixtures/job.js";

const FT = 0.3048;
const bed = (change: Partial<Bed> = {}): Bed => ({
  ...{ kind: "bed", id: "bed", name: "Bed", at: [0, 0], bearing: 0, length: 6, width: 2 },
  ...{ height: 1, wall: 0, base: 100 },
  filling: [
    { material: "drain-sand", depth: 0.6 },
    { material: "pea-gravel", depth: 0.2 },
  ],
  ...change,
});

const told = (job: Job): Finding[] =>
  estimated(job).findings.filter(({ code }) => code === "field.little-soil");
const wetAt = (water: number, field: string[] = []): Scheme["flow"] => ({
  flotation: { water },
  field,
});
/** Topsoil over clay over shelf rock, as its probe tells. */
const rockAt = (depth: number, probe: Partial<Site["ground"]["probes"][number]> = {}) => {
  const { ground } = plainSite({ layers: [0.2, depth - 0.2] });
  return { ...ground, probes: ground.probes.map((each) => ({ ...each, ...probe })) };
};

describe("soil under a raised bed, over groundwater", () => {
  const under = (soil: number) => told({ works: [bed()], flow: wetAt(soil - 0.6) });

  it.each([
    ["less than 2 ft", 2 * FT - 0.006, ["caution"]],
    ["2 ft", 2 * FT, ["note"]],
    ["less than 4 ft", 4 * FT - 0.006, ["note"]],
    ["4 ft", 4 * FT, []],
  ])("of %s", (_, soil, levels) => {
    expect(under(soil).map(({ level }) => level)).toEqual(levels);
  });

  it("is told from which level it is counted, and where", () => {
    const [found] = under(0.5 + 0.1);
    expect(found?.where).toBe("bed");
    expect(found?.text).toContain("counted from the top of its 0.60 m of sand");
    expect(found?.text).toMatch(/0\.60 m down to groundwater as high as set, in its/);
  });

  it("counts from the bottom where gravel lies there", () => {
    const gravel = bed({ filling: [{ material: "pea-gravel", depth: 0.6 }] });
    expect(told({ works: [gravel], flow: wetAt(0.7) })[0]?.text).toMatch(
      /from its bottom: 0\.70 m down/,
    );
  });

  it("is the least over its plan where the ground rises", () => {
    // 0.1 m per m eastward: 0.1 m more of water under the long side in the east.
    const height = (x: number): number => 100 + 0.1 * x;
    const [found] = told({ works: [bed()], height, flow: wetAt(0.1) });
    expect(found?.text).toMatch(/0\.60 m down to groundwater as high as set, in its .*east/);
  });

  it("follows the scheme's own numbers", () => {
    const rules = [
      { id: "soak-depth", value: 0.3 },
      { id: "soak-depth-usual", value: 0.3 },
    ];
    expect(told({ works: [bed()], flow: { flotation: { water: 0 }, rules } })).toEqual([]);
    const more = [{ id: "soak-depth", value: 2, source: "invented county code, § 1" }];
    const [found] = told({ works: [bed()], flow: { flotation: { water: 1 }, rules: more } });
    expect([found?.level, found?.source]).toEqual(["caution", "invented county code, § 1"]);
  });
});

describe("soil under a raised bed, over rock", () => {
  it("is what the probes leave over it", () => {
    const [found] = told({ works: [bed()], ground: rockAt(0.4) });
    expect(found?.level).toBe("note");
    expect(found?.text).toMatch(/1\.00 m down to shelf rock/);
    expect(told({ works: [bed()], ground: rockAt(0.7) })).toEqual([]);
  });

  it("is not known where no probe came down to it", () => {
    const ground = rockAt(0.4, { stoppedIn: "clay" });
    expect(told({ works: [bed()], ground })).toEqual([]);
    expect(told({ works: [bed()], ground: { ...ground, probes: [] } })).toEqual([]);
  });

  it("is silent where neither water nor rock is known", () => {
    expect(told({ works: [bed()] })).toEqual([]);
  });
});

describe("soil under a trench", () => {
  it("is counted from its floor, if the trench is of the field", () => {
    const works = [plainTrench()];
    const [found, ...more] = told({ works, flow: wetAt(1.405, ["trench"]) });
    expect(more).toEqual([]);
    expect(found?.level).toBe("caution");
    expect(found?.text).toMatch(/from its bottom: 0\.30 m down to groundwater .* at its start/);
    expect(told({ works, flow: wetAt(1.405) })).toEqual([]);
  });

  it("says how far the water comes over it", () => {
    const works = [plainTrench()];
    const [found] = told({ works, flow: wetAt(0.805, ["trench"]) });
    expect(found?.text).toContain("groundwater as high as set comes 0.30 m over that level");
  });

  it("counts from the top of sand that it is bedded on", () => {
    const works = [plainTrench({ bedding: { depth: 0.5, material: "drain-sand" } })];
    const [found] = told({ works, flow: wetAt(1.405, ["trench"]) });
    expect(found?.text).toMatch(/top of its 0\.50 m of sand.*: 0\.40 m down/);
  });

  it("takes the water that the probes met where that is higher", () => {
    const ground = rockAt(9, { water: 1.205 });
    const [found] = told({ works: [plainTrench()], ground, flow: wetAt(1.405, ["trench"]) });
    expect(found?.text).toMatch(/100 mm down to groundwater as the probes met it/);
  });
});
