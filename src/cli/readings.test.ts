import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import type { Column, Section, StageContours } from "../estimate/index.js";
import { plainSite, plainTank } from "../site/site.fixture.js";
import {
  readGround,
  readingOf,
  tiedArguments,
  UnusableFlag,
  type PrintedMesh,
  type ReadingFlags,
} from "./readings.js";

const site = plainSite({ works: [plainTank({ overdig: 0.5 })], layers: [0.3, 1] });

function read(flags: ReadingFlags): object {
  const reading = readingOf(flags);
  if (!reading) throw new Error("got no reading, expected one");
  return readGround(site, "plan", reading);
}

function fault(flags: ReadingFlags): string {
  try {
    read(flags);
  } catch (error) {
    if (error instanceof UnusableFlag) return error.message;
    throw error;
  }
  throw new Error("got an answer, expected a fault");
}

describe("readings of the ground", () => {
  it("asks for none without a flag", () => {
    expect(readingOf({})).toBeNull();
  });

  it("cuts a section along a line of places", () => {
    const section = read({ section: "-10,0.1,10,0.1;10,5", stage: "dug" }) as Section;
    expect(section).toMatchObject({ format: "bankyard-section", stage: "dug", scheme: "plan" });
    expect(section.length).toBeCloseTo(24.9, 9);
    expect(section.bends).toEqual([expect.closeTo(20, 9)]);
    expect(section.areas.find((area) => area.material === "topsoil")?.area).toBeGreaterThan(1);
  });

  it("gives the column at a place, at the last stage unless told", () => {
    const column = read({ at: "0.3, 0.2" }) as Column;
    expect(column.stage).toBe("backfilled");
    expect(column.now.layers[0]).toMatchObject({ material: "native", work: "tank" });
  });

  it("gives contours with places for their figures", () => {
    const contours = read({ contours: "0.5", stage: "dug" }) as StageContours;
    expect(contours.lines.map((line) => line.elevation)).toEqual([98, 98.5, 99, 99.5]);
    expect(contours.lines.every((line) => line.closed)).toBe(true);
    expect(contours.lines.flatMap((line) => line.labels).length).toBeGreaterThan(0);
  });

  it("gives the mesh in plain arrays of one length per corner", () => {
    const mesh = read({ mesh: true, stage: "set" }) as PrintedMesh;
    const corners = mesh.positions.length / 3;
    expect(corners % 3).toBe(0);
    expect(mesh.normals).toHaveLength(3 * corners);
    expect(mesh.materialOf).toHaveLength(corners);
    expect(mesh.faceOf).toHaveLength(corners);
    expect(mesh.edges.length % 6).toBe(0);
    expect(mesh.materials).toContain("pea-gravel");
  });

  it.each([
    [{ section: "1,2,3" }, /^--section: "1,2,3" is no line; give/],
    [{ section: "1,2,x,4" }, /^--section: .*give/],
    [{ section: "1,2,1,2" }, /^--section: .*give two different/],
    [{ section: "90,90,99,99" }, /^--section: lies beyond the survey; give .*x -20 to 20/],
    [{ at: "1" }, /^--at: "1" is no place; give/],
    [{ at: "1,2,3" }, /^--at: /],
    [{ at: "40,0" }, /^--at: lies beyond the survey; give/],
    [{ contours: "0" }, /^--contours: "0" is no step; give/],
    [{ contours: "-1" }, /^--contours: /],
    [{ contours: "fine" }, /^--contours: /],
    [
      { at: "0,0", stage: "finished" },
      /^--stage: no stage is called "finished"; use one of: found,/,
    ],
    [{ stage: "dug" }, /^--stage: goes with .*add one/],
    [{ at: "0,0", mesh: true }, /^--at and --mesh: .*give one/],
  ] as [ReadingFlags, RegExp][])("says what is wrong with %j, and the mend", (flags, expected) => {
    expect(fault(flags)).toMatch(expected);
    expect(fault(flags)).not.toContain("\n");
  });

  it("keeps a step from giving levels without end", () => {
    const steep = plainSite({ height: (x) => 100 + x });
    const reading = readingOf({ contours: "0.001" });
    if (!reading) throw new Error("got no reading, expected one");
    expect(() => readGround(steep, "plan", reading)).toThrow(/--contours: .*use 0.02 or more/);
  });

  it("reads a value that starts with a minus sign as the flag's", () => {
    expect(tiedArguments(["f", "--at", "-3,4", "--json", "--section", "-.5,0,1,1"])).toEqual([
      "f",
      "--at=-3,4",
      "--json",
      "--section=-.5,0,1,1",
    ]);
  });
});

describe("the command", () => {
  const root = fileURLToPath(new URL("../../", import.meta.url));
  const run = (...flags: string[]): { status: number | null; out: string; err: string } => {
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      ["--import", "tsx", "src/cli/estimate.ts", "shared/sites/alder-flat.site.json", ...flags],
      { cwd: root, encoding: "utf8" },
    );
    return { status, out: stdout, err: stderr };
  };

  it("prints one object on standard output and nothing else", () => {
    const { status, out, err } = run("--at", "30,20", "--stage", "dug");
    expect(err).toBe("");
    expect(status).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ format: "bankyard-column", stage: "dug" });
  });

  it("ends with 2 and one line on standard error when a flag cannot be used", () => {
    const { status, out, err } = run("--section", "-1,2,x");
    expect(status).toBe(2);
    expect(out).toBe("");
    expect(err).toMatch(/^--section: .*give.*\n$/);
  });
});
