import { describe, expect, it } from "vitest";
import { baseGround, type BaseGround } from "../ground/index.js";
import { plainPad, plainSite, plainTrench } from "../site/site.fixture.js";
import type { Limit, Site } from "../site/index.js";
import { area as areaMeasure } from "../units/index.js";
import { checkRunoff } from "./checkRunoff.js";
import { limitsMet } from "./ditchLimits.js";

type Dug = Parameters<typeof checkRunoff>[2];

/** What is known to be there. */
function present<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new Error("expected a value, got none");
  return value;
}

function groundOf(site: Site): BaseGround {
  const ground = baseGround(site);
  if (!ground.ok) throw new Error(ground.problem.text);
  return ground.base;
}

/** A pad 8 m square about the origin, on ground 80 m square. */
function padOn(height: (x: number, y: number) => number, rules: Site["rules"] = []): Site {
  const outline: [number, number][] = [
    [-4, -4],
    [4, -4],
    [4, 4],
    [-4, 4],
  ];
  return { ...plainSite({ height, half: 40, works: [plainPad({ outline })] }), rules };
}

const codes = (site: Site): string[] =>
  checkRunoff(site, site.schemes[0]!, [], groundOf(site)).findings.map(({ code }) => code);

describe("water that comes to a work", () => {
  const slope = (_: number, y: number): number => 100 + 0.1 * y;
  // 8 m wide and from the pad's upper edge at 4 m to the survey's at 40 m: 288 m².
  it("is told from the area that the site asks for, and not just under it", () => {
    const site = padOn(slope);
    const runoff = present(checkRunoff(site, site.schemes[0]!, [], groundOf(site)).works[0]);
    expect(Math.abs(runoff.area - 288)).toBeLessThan(20);
    const above = [{ id: "inflow-from", value: runoff.area + 1 }];
    const under = [{ id: "inflow-from", value: runoff.area - 1 }];
    expect(codes(padOn(slope, above))).not.toContain("runoff.comes-in");
    expect(codes(padOn(slope, under))).toContain("runoff.comes-in");
    expect(runoff.ditch?.length).toBeGreaterThan(5);
  });

  it("is led round by a ditch that falls as the site's rule says", () => {
    const site = padOn(slope, [{ id: "ditch-fall", value: 0.02 }]);
    const runoff = present(checkRunoff(site, site.schemes[0]!, [], groundOf(site)).works[0]);
    const ditch = present(runoff.ditch);
    const [first, last] = [ditch[0]!, ditch[ditch.length - 1]!];
    expect(first[2] - last[2]).toBeCloseTo(0.02 * 0.5 * (ditch.length - 1), 3);
  });
});

describe("the ditch that is offered", () => {
  // Falls to the south and a little to the west: the shorter ditch lets its water go in the west.
  const slope = (x: number, y: number): number => 100 + 0.1 * y + 0.01 * x;
  const pad = (id: string, [west, south, east, north]: [number, number, number, number]) =>
    plainPad({
      ...{ id, name: id.toUpperCase() },
      outline: [
        [west, south],
        [east, south],
        [east, north],
        [west, north],
      ],
    });
  const siteWith = (...others: ReturnType<typeof pad>[]): Site =>
    plainSite({ height: slope, half: 40, works: [pad("a", [-4, -4, 4, 4]), ...others] });
  const ran = (site: Site) => checkRunoff(site, site.schemes[0]!, [], groundOf(site));
  const ofA = (site: Site) => present(ran(site).works.find(({ work }) => work === "a"));
  const endOf = (site: Site) => present(present(ofA(site).ditch).at(-1));

  it("lets its water go where no other work stands", () => {
    const alone = siteWith();
    expect(endOf(alone)[0]).toBeLessThan(-4);
    expect(ofA(alone).ditchMeets).toEqual([]);
    // A work where that water would come down turns it to the other side.
    const west = siteWith(pad("b", [-13, -16, -5, -8]));
    expect(endOf(west)[0]).toBeGreaterThan(4);
    expect(ofA(west).ditchMeets).toEqual([]);
  });

  it("goes farther aside when a work stands on both sides", () => {
    const both = siteWith(pad("b", [-13, -16, -5, -8]), pad("c", [4, -16, 12, -8]));
    expect(ofA(both).ditchMeets).toEqual([]);
    expect(Math.abs(endOf(both)[0])).toBeGreaterThan(12);
  });

  it("says what it runs into where it cannot be helped, before it is added", () => {
    const wide = siteWith(pad("b", [-38, -30, -4, -12]), pad("c", [4, -30, 38, -12]));
    const { ditchMeets, ditch } = ofA(wide);
    expect(ditchMeets).toEqual([{ work: "b", how: "lets-go" }]);
    const said = ran(wide).findings.find(({ where }) => where === "a");
    expect(said?.text).toContain("But it would let its water go into B.");
    // What is said before is what is seen after: drawn, it brings B more than it had.
    const drawn: Site = {
      ...wide,
      limits: [{ id: "d1", kind: "ditch", path: present(ditch).map(([x, y]) => [x, y]) }],
    };
    const b = present(ran(drawn).works.find(({ work }) => work === "b"));
    expect(b.area).toBeGreaterThan(b.undrained);
  });

  it("says when its line would go through a work", () => {
    // Room for a ditch close above the pad, then none.
    expect(ofA(siteWith(pad("b", [-30, 6.5, 30, 20]))).ditchMeets).toEqual([]);
    const across = siteWith(pad("b", [-30, 4.5, 30, 20]));
    expect(ofA(across).ditchMeets).toEqual([{ work: "b", how: "crosses" }]);
    const said = ran(across).findings.find(({ where }) => where === "a");
    expect(said?.text).toContain("But it would go through B.");
  });
});

describe("the limits that the offered ditch meets", () => {
  // Falls to the south and a little to the west: the ditch runs from east to west, north of the pad.
  const slope = (x: number, y: number): number => 100 + 0.1 * y + 0.01 * x;
  const withLimits = (...limits: Limit[]): Site => ({ ...padOn(slope), limits });
  const run = (site: Site) => checkRunoff(site, site.schemes[0]!, [], groundOf(site));
  const met = (site: Site): string[] =>
    present(run(site).works[0]).ditchLimits.map(({ limit, how }) => `${how} ${limit}`);
  /** A line from the survey's north to its south, so that no ditch on both sides of it keeps clear. */
  const along = (kind: string, x: number): Limit => ({
    ...{ id: kind, kind, name: `the ${kind}` },
    path: [
      [x, -40],
      [x, 40],
    ],
  });
  const box = (half: number): [number, number][] => [
    [-half, -half],
    [half, -half],
    [half, half],
    [-half, half],
  ];

  it("are none where none is near", () => {
    expect(met(withLimits(along("drive", 39)))).toEqual([]);
  });

  it("are named where it crosses them, on the page's row and in the finding", () => {
    const site = withLimits(along("drive", 0), along("buried-gas", 1), along("drive", 39));
    expect(met(site)).toEqual(["crosses drive", "crosses buried-gas"]);
    const said = run(site).findings.find(({ code }) => code === "runoff.comes-in");
    expect(said?.text).toContain("But it would cross the drive, the buried-gas.");
  });

  it("are named where it ends nearer than is asked, with what is asked and by whom", () => {
    const { ditch } = present(run(withLimits()).works[0]);
    const end = present(present(ditch).at(-1));
    // One beyond either end, so that a ditch that lets go on the other side ends near one too.
    const wires = [end[0] - 4, -end[0] + 4].map((x, i) => ({
      ...along("overhead-line", x),
      id: `wire-${i}`,
    }));
    const site = withLimits(...wires);
    const meeting = present(
      present(run(site).works[0]).ditchLimits.find(({ how }) => how === "ends"),
    );
    expect(meeting.wanted).toBeCloseTo(6.096, 9);
    expect(meeting.distance).toBeGreaterThan(0);
    expect(meeting.distance).toBeLessThan(6.096);
    const said = run(site).findings.find(({ code }) => code === "runoff.comes-in");
    expect(said?.text).toContain("end at the overhead-line (");
    expect(said?.source).toContain("1926.1408");
  });

  it("count a well by its own setback, just within it and not just beyond", () => {
    const { ditch } = present(run(withLimits()).works[0]);
    const line = present(ditch);
    const [x, y] = line[Math.floor(line.length / 2)]!;
    // 20 m uphill of the nearest ditch; those tried later lie farther up, so the least is this one's.
    const well = (setback: number): Limit => ({ id: "w", kind: "well", at: [x, y + 20], setback });
    expect(met(withLimits(well(15)))).toEqual([]);
    expect(met(withLimits(well(35)))).toEqual(["ends w"]);
    // Past it, where its lower end keeps off.
    const past = { id: "p", kind: "well", at: [0, 3] as [number, number], setback: 3.01 };
    const level: [number, number][] = [
      [0, 0],
      [10, 0],
    ];
    expect(limitsMet({ limits: [past] }, level, level)).toMatchObject([
      { how: "near", distance: 3 },
    ]);
    expect(limitsMet({ limits: [{ ...past, setback: 2.99 }] }, level, level)).toEqual([]);
  });

  it("say that it leaves the lot, and are left alone within it", () => {
    const lot = (half: number): Limit => ({
      ...{ id: "lot", kind: "lot-line", closed: true, path: box(half) },
    });
    expect(met(withLimits(lot(39)))).toEqual([]);
    expect(met(withLimits(lot(4.5)))).toEqual(["off-lot lot"]);
  });

  it("are fewer where another ditch meets none", () => {
    const { ditch } = present(run(withLimits()).works[0]);
    const end = present(present(ditch).at(-1));
    const tree: Limit = { id: "oak", kind: "tree", at: [end[0], end[1]], radius: 1 };
    expect(met(withLimits(tree))).toEqual([]);
  });

  it("tell of a building or drive to which its water would run", () => {
    const house = (west: number, east: number, id: string): Limit => ({
      ...{ id, kind: "building", closed: true },
      path: [
        [west, -30],
        [east, -30],
        [east, -20],
        [west, -20],
      ],
    });
    expect(met(withLimits(house(-39, 39, "h")))).toEqual(["lets-go h"]);
  });
});

describe("water that comes to a trench", () => {
  it("has one figure for all of it, on the leaf and in the finding, besides what comes together", () => {
    const slope = (_: number, y: number): number => 100 + 0.1 * y;
    const work = plainTrench();
    const ring = [
      [-15, -0.3],
      [15, -0.3],
      [15, 0.3],
      [-15, 0.3],
    ];
    const dug = [{ id: "trench", outlines: { daylight: [ring] } }] as unknown as Dug;
    const site: Site = {
      ...plainSite({ height: slope, half: 40, works: [work] }),
      rules: [{ id: "inflow-from", value: 50 }],
    };
    const { works, findings } = checkRunoff(site, site.schemes[0]!, dug, groundOf(site));
    const { area, gathered } = present(works[0]);
    expect(gathered).toBeGreaterThan(50);
    expect(gathered).toBeLessThan(area / 2);
    const print = (value: number): string => areaMeasure.print(value, "metric");
    const said = present(findings.find(({ code }) => code === "runoff.comes-in")).text;
    expect(said).toContain(`Water from about ${print(area)} of the slope`);
    expect(said).toContain(`, ${print(gathered)} of it within 3`);
  });
});

describe("a ditch that is drawn", () => {
  // Falls to the south; the pad's upper edge is at y = 4.
  const slope = (_: number, y: number): number => 100 + 0.1 * y;
  type Line = [number, number][];
  const drawn = (paths: readonly Line[], kind = "ditch", asked?: number): Site => ({
    ...padOn(slope, asked === undefined ? [] : [{ id: "inflow-from", value: asked }]),
    limits: paths.map((path, i) => ({ id: `limit-${i}`, kind, path })),
  });
  const runoffOf = (site: Site) =>
    present(checkRunoff(site, site.schemes[0]!, [], groundOf(site)).works[0]);
  const across: Line = [
    [-8, 9],
    [8, 7.9],
  ];

  it("takes away the finding where it leads the water past the work", () => {
    expect(codes(drawn([]))).toContain("runoff.comes-in");
    expect(codes(drawn([across]))).toEqual([]);
    // What falls between the ditch and the pad still comes: 8 m by about 4.45 m.
    const { area, undrained } = runoffOf(drawn([across]));
    expect(Math.abs(area - 35.6)).toBeLessThan(8);
    expect(Math.abs(undrained - 288)).toBeLessThan(20);
  });

  it("leads to its lower end, whichever way it was drawn", () => {
    expect(codes(drawn([[...across].reverse()]))).toEqual([]);
  });

  it("takes nothing away when it lies below the work, is level, or is no ditch", () => {
    const under: Line = across.map(([x, y]) => [x, y - 16]);
    const level: Line = across.map(([x]) => [x, 8]);
    for (const site of [drawn([under]), drawn([level]), drawn([across], "flood-path")]) {
      expect(codes(site)).toContain("runoff.comes-in");
      expect(runoffOf(site).area).toBe(runoffOf(site).undrained);
    }
  });

  it("takes nothing away when it lets its water go above the work", () => {
    const short: Line = [
      [-8, 9],
      [2, 7.9],
    ];
    expect(codes(drawn([short]))).toContain("runoff.comes-in");
  });

  it("that only catches part leaves the finding from the area that is asked for", () => {
    const half: Line = [
      [-8, 7.9],
      [0, 9],
    ];
    const { area } = runoffOf(drawn([half]));
    // 4 m by 36 m pass it, and what falls on some 4 m by 4.2 m below it.
    expect(Math.abs(area - 161)).toBeLessThan(16);
    expect(codes(drawn([half], "ditch", area - 1))).toContain("runoff.comes-in");
    expect(codes(drawn([half], "ditch", area + 1))).not.toContain("runoff.comes-in");
  });

  it("brings water to a work that it ends above, and a second one leads that on", () => {
    const to: Line = [
      [30, 12],
      [0, 8],
    ];
    const { area, undrained } = runoffOf(drawn([to]));
    expect(area).toBeGreaterThan(undrained + 500);
    const said = checkRunoff(drawn([to]), drawn([to]).schemes[0]!, [], groundOf(drawn([to])));
    expect(said.findings[0]?.text).toContain("A ditch that is drawn lets water go above it.");
    const on: Line = [
      [8, 7],
      [-8, 5],
    ];
    expect(codes(drawn([to, on]))).toEqual([]);
  });
});

describe("a hollow", () => {
  // A cone 0.1 m deep in level ground, its lowest place a survey point under the pad.
  const cone = (x: number, y: number): number => 100 - Math.max(0, 0.1 - Math.hypot(x, y) / 300);
  it("is told from the depth that the site asks for, and not just under it", () => {
    expect(codes(padOn(cone, [{ id: "hollow-from", value: 0.0999 }]))).toContain("runoff.hollow");
    expect(codes(padOn(cone, [{ id: "hollow-from", value: 0.1001 }]))).not.toContain(
      "runoff.hollow",
    );
  });
});
