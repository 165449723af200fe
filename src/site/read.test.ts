import { describe, expect, it } from "vitest";
import { problemLine } from "./problem.js";
import { checkSite, readSite, writeSite } from "./read.js";
import { plainPad, plainSite, plainTank, plainTrench } from "./site.fixture.js";

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
