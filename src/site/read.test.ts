import { describe, expect, it } from "vitest";
import { crossProblems as checkProblems, MOST_POINTS } from "./crossCheck.js";
import { problemLine } from "./problem.js";
import { checkSite, readSite, writeSite } from "./read.js";
import type { Site, Work } from "./schema.js";
import { plainPad, plainSite, plainStrip, plainTank, plainTrench } from "./site.fixture.js";

function problemsOf(value: unknown): string[] {
  const read = checkSite(value);
  return read.ok ? [] : read.problems.map((problem) => `${problem.code} ${problem.path}`);
}

describe("readSite", () => {
  const site = plainSite({ works: [plainTank(), plainTrench(), plainPad()], layers: [0.3, 1] });

  it("gives back what writeSite wrote, unknown fields included", () => {
    const more = { ...site, later: { kept: true } };
    const read = readSite(writeSite(more));
    expect(read).toEqual({ ok: true, value: more });
  });

  it("says where JSON breaks", () => {
    const read = readSite('{\n  "format": "bankyard-site",\n  oops\n}');
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.problems[0]?.code).toBe("not-json");
    expect(read.problems[0]?.path).toBe("line 3, column 3");
    expect(problemLine(read.problems[0]!)).toContain("this is not JSON");
  });

  it("refuses more points than can be worked on, and says how many can", () => {
    const point = site.survey.points[0];
    const points = Array.from({ length: MOST_POINTS + 1 }, () => point);
    const read = checkProblems({ ...site, survey: { points } } as Site);
    expect(read.filter(({ path }) => path === "survey.points")).toMatchObject([
      { code: "too-large", text: "has 1,000,001 points; up to 1,000,000 can be worked on" },
    ]);
  });

  it("refuses another kind of file and a newer version by name", () => {
    expect(problemsOf({ format: "else" })).toEqual(["not-a-site format"]);
    expect(problemsOf([])).toEqual(["not-a-site format"]);
    expect(problemsOf({ ...site, version: 2 })).toEqual(["newer-version version"]);
  });

  it.each([
    ["a width below zero", plainTrench({ width: -1 }), "bad-field schemes[0].works[0].width"],
    [
      "text for a number",
      plainTank({ base: "deep" as unknown as number }),
      "bad-field schemes[0].works[0].base",
    ],
    [
      "an unknown material",
      plainTank({ backfill: "cheese" }),
      "unknown-id schemes[0].works[0].backfill",
    ],
    [
      "native as bedding",
      plainTank({ bedding: { depth: 0.1, material: "native" } }),
      "unknown-id schemes[0].works[0].bedding.material",
    ],
    [
      "a path of no length",
      plainTrench({
        path: [
          [1, 1],
          [1, 1],
        ],
      }),
      "bad-shape schemes[0].works[0].path",
    ],
    [
      "an outline that crosses itself",
      plainPad({
        outline: [
          [0, 0],
          [2, 2],
          [2, 0],
          [0, 2],
        ],
      }),
      "bad-shape schemes[0].works[0].outline",
    ],
    ["a trench without a pipe", plainTrench({ pipes: [] }), "bad-field schemes[0].works[0].pipes"],
  ])("places %s", (_, work, expected) => {
    expect(problemsOf(plainSite({ works: [work] }))).toEqual([expected]);
  });

  const square: [number, number][] = [
    [0, 0],
    [4, 0],
    [4, 4],
    [0, 4],
  ];
  const bowTie: [number, number][] = [
    [0, 0],
    [2, 2],
    [2, 0],
    [0, 2],
  ];
  const run = (...sides: number[]) => ({ by: "run", run: 1, sides }) as const;
  it.each<[string, Work[], string]>([
    [
      "three slopes for a tank's four sides",
      [plainTank({ walls: run(1, 1, 1) })],
      "wrong-count schemes[0].works[0].walls.sides",
    ],
    [
      "four slopes for a trench's two sides",
      [plainTrench({ walls: run(1, 1, 1, 1) })],
      "wrong-count schemes[0].works[0].walls.sides",
    ],
    [
      "four slopes for a pad of five corners",
      [plainPad({ outline: [...square, [-1, 2]], walls: run(1, 1, 1, 1) })],
      "wrong-count schemes[0].works[0].walls.sides",
    ],
    [
      "a level that the sides' slopes do not fit",
      [
        plainPad({
          walls: run(1, 1, 1, 1),
          levels: [{ outline: square.slice(0, 3), top: 99 }],
        }),
      ],
      "wrong-count schemes[0].works[0].levels[0].outline",
    ],
    [
      "a level that crosses itself",
      [plainPad({ levels: [{ outline: bowTie, top: 99 }] })],
      "bad-shape schemes[0].works[0].levels[0].outline",
    ],
    [
      "a pad that falls at more than one in one",
      [plainPad({ fall: { bearing: 90, slope: 1.01 } })],
      "bad-field schemes[0].works[0].fall.slope",
    ],
    [
      "a crown of more than half the depth",
      [plainTank({ crown: 0.51 })],
      "bad-field schemes[0].works[0].crown",
    ],
    [
      "a strip over a work that is not there",
      [plainStrip({ area: { by: "work", work: "pad", beyond: 1 } })],
      "unknown-id schemes[0].works[0].area.work",
    ],
    [
      "a strip over a trench",
      [plainTrench(), plainStrip({ area: { by: "work", work: "trench", beyond: 1 } })],
      "bad-shape schemes[0].works[1].area.work",
    ],
    [
      "a strip that crosses itself",
      [plainStrip({ area: { by: "outline", outline: bowTie } })],
      "bad-shape schemes[0].works[0].area.outline",
    ],
  ])("places %s", (_, works, expected) => {
    expect(problemsOf(plainSite({ works }))).toEqual([expected]);
  });

  it("takes what fits: sides, levels, strips before and after their work", () => {
    const works: Work[] = [
      plainStrip({ area: { by: "work", work: "pad", beyond: 0 } }),
      plainPad({
        walls: run(0, 1, 2, 3),
        fall: { bearing: -30, slope: 0.02 },
        levels: [{ outline: square, top: 99 }],
      }),
      plainTank({ walls: run(0, 1, 2, 3), crown: 0.5 }),
      plainTrench({ walls: run(0, 1), ends: { start: 1 } }),
      plainStrip({ id: "strip-2", area: { by: "work", work: "tank", beyond: 1 } }),
      { kind: "pile", id: "pile", name: "Pile", at: [5, 5], material: "native", keepOff: 0 },
    ];
    expect(problemsOf(plainSite({ works }))).toEqual([]);
    const level = { outline: square.slice(0, 3), top: 99 };
    expect(problemsOf(plainSite({ works: [plainPad({ levels: [level] })] }))).toEqual([]);
  });

  it("refuses a tolerance that is not above nothing", () => {
    const none = { ...site, survey: { ...site.survey, tolerance: 0 } };
    expect(problemsOf(none)).toEqual(["bad-field survey.tolerance"]);
  });

  it("places repeated ids, wrong counts and unknown survey points", () => {
    const twice = plainSite({ works: [plainTank(), plainTank()] });
    expect(problemsOf(twice)).toEqual(["duplicate-id schemes[0].works[1].id"]);
    const short = {
      ...site,
      ground: { ...site.ground, probes: [{ id: "t1", x: 0, y: 0, thickness: [1] }] },
    };
    expect(problemsOf(short)).toEqual(["wrong-count ground.probes[0].thickness"]);
    const lost = { ...site, survey: { ...site.survey, breaklines: [["p00", "nowhere"]] } };
    expect(problemsOf(lost)).toEqual(["unknown-id survey.breaklines[0][1]"]);
  });

  it("lists every bad field, each with what would mend it", () => {
    const bad = plainSite({
      works: [plainTrench({ width: 0 }), plainTank({ overdig: -1, id: "" })],
    });
    const read = checkSite({ ...bad, currency: "dollars", units: "feet" });
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.problems.map((problem) => problem.path).sort()).toEqual([
      "currency",
      "schemes[0].works[0].width",
      "schemes[0].works[1].id",
      "schemes[0].works[1].overdig",
      "units",
    ]);
    for (const problem of read.problems) expect(problem.mend).not.toBe("");
  });
});
