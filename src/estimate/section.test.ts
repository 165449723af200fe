import { describe, expect, it } from "vitest";
import { plainPad, plainSite, plainTank, plainTrench } from "../site/site.fixture.js";
import type { PlanPoint, Site } from "../site/index.js";
import { columnAt, sectionAlong, type Section } from "./section.js";
import type { Stage } from "./types.js";

/** Area by material (and kind, for what is not natural), m². */
function areas(section: Section): Record<string, number> {
  const sums: Record<string, number> = {};
  for (const { material, kind, area } of section.areas) {
    const key = kind === "natural" ? material : `${kind} ${material}`;
    sums[key] = (sums[key] ?? 0) + area;
  }
  return sums;
}

function cut(site: Site, stage: Stage, line: readonly PlanPoint[], datum = 95): Section {
  return sectionAlong(site, "plan", stage, line, datum);
}

const layers = [0.3, 1] as const;
/** A tank 2 m wide and 3 m long on 0.2 m of gravel, its hole 3 × 4 m with vertical walls to 97.8. */
const tank = plainSite({ works: [plainTank({ overdig: 0.5 })], layers });
const across: PlanPoint[] = [
  [-10, 0.1],
  [10, 0.1],
];

describe("sectionAlong", () => {
  it("gives each layer its exact area, as found and dug", () => {
    const found = areas(cut(tank, "found", across));
    expect(found["topsoil"]).toBeCloseTo(20 * 0.3, 9);
    expect(found["clay"]).toBeCloseTo(20 * 1, 9);
    expect(found["shelf-rock"]).toBeCloseTo(20 * 3.7, 9);
    const dug = areas(cut(tank, "dug", across));
    expect(dug["topsoil"]).toBeCloseTo(17 * 0.3, 9);
    expect(dug["clay"]).toBeCloseTo(17 * 1, 9);
    expect(dug["shelf-rock"]).toBeCloseTo(20 * 3.7 - 3 * 0.9, 9);
  });

  it("shows bedding, tank and backfill, each as one piece with its work", () => {
    const section = cut(tank, "backfilled", across);
    const now = areas(section);
    expect(now["placed pea-gravel"]).toBeCloseTo(3 * 0.2, 9);
    expect(now["structure tank"]).toBeCloseTo(2 * 1.5, 9);
    expect(now["placed native"]).toBeCloseTo(3 * 2 - 2 * 1.5, 9);
    const placed = section.areas.filter((area) => area.kind !== "natural");
    expect(placed.map((area) => area.work)).toEqual(["tank", "tank", "tank"]);
    // The backfill goes up both sides and over the lid: one outline of eight corners.
    const native = placed.find((area) => area.material === "native");
    expect(native?.outline).toHaveLength(8);
    expect(section.areas.filter((area) => area.material === "shelf-rock")).toHaveLength(1);
    expect(section.areas.filter((area) => area.material === "topsoil")).toHaveLength(2);
  });

  it("keeps a tank that its own backfill surrounds as a hole in it", () => {
    const site = plainSite({
      works: [plainTank({ overdig: 0.5, backfill: "pea-gravel" })],
      layers,
    });
    const gravel = cut(site, "backfilled", across).areas.find((a) => a.material === "pea-gravel");
    expect(gravel?.holes).toHaveLength(1);
    expect(gravel?.area).toBeCloseTo(3 * 2.2 - 2 * 1.5, 9);
  });

  it("draws the surface as found and at the stage, with steps at vertical walls", () => {
    const section = cut(tank, "dug", across);
    expect(section.found).toEqual([
      [
        [0, 100],
        [20, 100],
      ],
    ]);
    const [surface] = section.surface;
    const rounded = (surface ?? []).map(([s, z]) => [Number(s.toFixed(6)), Number(z.toFixed(6))]);
    expect(rounded).toEqual([
      [0, 100],
      [8.5, 100],
      [8.5, 97.8],
      [11.5, 97.8],
      [11.5, 100],
      [20, 100],
    ]);
  });

  it.each([
    [
      "a corner of the survey and along its triangles' sides",
      [
        [-20, 0],
        [20, 0],
      ],
    ],
    [
      "the diagonal through corners",
      [
        [-20, -20],
        [20, 20],
      ],
    ],
    [
      "a bend, through the hole twice",
      [
        [-10, 0.1],
        [10, 0.1],
        [10, 5],
        [0.2, 5],
        [0.2, -5],
      ],
    ],
  ] as [string, PlanPoint[]][])("adds up to the ground over the datum on %s", (_, line) => {
    for (const stage of ["found", "dug", "bedded", "set", "backfilled"] as const) {
      const section = cut(tank, stage, line);
      const under = section.surface
        .flatMap((part) => part.slice(1).map((to, i) => [part[i]!, to] as const))
        .reduce((sum, [a, b]) => sum + ((b[0] - a[0]) * (a[1] + b[1] - 190)) / 2, 0);
      const sum = section.areas.reduce((total, { area }) => total + area, 0);
      expect(sum).toBeCloseTo(under, 8);
      expect(section.length).toBeGreaterThan(19);
    }
  });

  it("shows the ground on its left along a vertical wall", () => {
    // The hole's west wall is at x = −1.5, from y = −2 to 2.
    const north: PlanPoint[] = [
      [-1.5, -4],
      [-1.5, 4],
    ];
    const south: PlanPoint[] = [
      [-1.5, 4],
      [-1.5, -4],
    ];
    // Northward the undug ground lies to the left, southward the hole does.
    expect(cut(tank, "dug", north).surface[0]!.every(([, z]) => Math.abs(z - 100) < 1e-9)).toBe(
      true,
    );
    const dug = areas(cut(tank, "dug", south));
    expect(dug["topsoil"]).toBeCloseTo(4 * 0.3, 6);
    expect(dug["shelf-rock"]).toBeCloseTo(8 * 3.7 - 4 * 0.9, 6);
  });

  it("holds layers at the datum where they go below it", () => {
    const section = cut(tank, "found", across, 99.2);
    expect(areas(section)).toEqual({
      topsoil: expect.closeTo(6, 9) as number,
      clay: expect.closeTo(20 * 0.5, 9) as number,
    });
  });

  it("ends where the survey ends, and is empty beyond it", () => {
    const section = cut(tank, "found", [
      [-30, 0.1],
      [0, 0.1],
    ]);
    expect(section.surface).toHaveLength(1);
    expect(section.surface[0]![0]![0]).toBeCloseTo(10, 9);
    expect(
      cut(tank, "found", [
        [50, 50],
        [60, 60],
      ]).areas,
    ).toEqual([]);
  });

  it("finds the pipes that cross the line, and those that lie along it", () => {
    const site = plainSite({ works: [plainTrench()] });
    const aslant = cut(site, "set", [
      [-2, -2],
      [2, 2],
    ]);
    const [pipe, ...more] = aslant.pipes;
    expect(more).toEqual([]);
    expect(pipe).toMatchObject({ id: "pipe", work: "trench", outside: 0.11, laid: true });
    expect(pipe?.centre[0]).toBeCloseTo(2 * Math.SQRT2, 9);
    expect(pipe?.centre[1]).toBeCloseTo(99.05, 9);
    expect(pipe?.breadth).toBeCloseTo(0.11 * Math.SQRT2, 9);
    expect(
      cut(site, "dug", [
        [0, -2],
        [0, 2],
      ]).pipes[0]!.laid,
    ).toBe(false);
    const along = cut(site, "set", [
      [-8, 0],
      [8, 0],
    ]);
    expect(along.pipes).toEqual([]);
    expect(along.pipesAlong[0]!.centre.map(([s]) => s)).toEqual([
      expect.closeTo(3, 9) as number,
      expect.closeTo(8, 9) as number,
      expect.closeTo(13, 9) as number,
    ]);
  });

  it("throws on a line of one place", () => {
    expect(() =>
      sectionAlong(tank, "plan", "dug", [
        [1, 1],
        [1, 1],
      ]),
    ).toThrow(/two or more/);
  });
});

describe("columnAt", () => {
  it("lists the layers as found and at the stage, with who placed them", () => {
    const column = columnAt(tank, "plan", "backfilled", [0.3, 0.2]);
    expect(column?.found.layers.map(({ material, top }) => [material, top])).toEqual([
      ["topsoil", 100],
      ["clay", expect.closeTo(99.7, 9)],
      ["shelf-rock", expect.closeTo(98.7, 9)],
    ]);
    expect(column?.now.layers.map(({ material, work, kind }) => [material, work, kind])).toEqual([
      ["native", "tank", "placed"],
      ["tank", "tank", "structure"],
      ["pea-gravel", "tank", "placed"],
      ["shelf-rock", null, "natural"],
    ]);
    const [backfill, body, , rock] = column?.now.layers ?? [];
    expect(backfill?.thickness).toBeCloseTo(0.5, 9);
    expect(body?.top).toBeCloseTo(99.5, 9);
    expect(body?.bottom).toBeCloseTo(98, 9);
    expect(rock).toMatchObject({ bottom: null, thickness: null });
  });

  it("is null beyond the survey", () => {
    expect(columnAt(tank, "plan", "dug", [40, 0])).toBeNull();
  });

  it("tells fill on a pad from what lies below", () => {
    const site = plainSite({ works: [plainPad({ top: 100.5 })] });
    const now = columnAt(site, "plan", "backfilled", [0, 0])?.now;
    expect(now?.elevation).toBeCloseTo(100.5, 9);
    expect(now?.layers.map((layer) => layer.material)).toEqual(["native", "clay"]);
  });
});
