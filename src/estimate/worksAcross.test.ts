import { describe, expect, it } from "vitest";
import { digScheme } from "../dig/index.js";
import { baseGround } from "../ground/index.js";
import type { Bed, Building, PlanPoint } from "../site/index.js";
import { plainPad, plainSite } from "../site/site.fixture.js";
import { sectionAlong, type Section } from "./section.js";
import type { SectionArea } from "./sectionTypes.js";
import { STAGES } from "./stages.js";
import type { Stage } from "./types.js";

/** A bed of 6 × 4 m around the origin, long side north, walls 0.2 m thick and 1 m high. */
function plainBed(change: Partial<Bed> = {}): Bed {
  return {
    kind: "bed",
    id: "bed",
    name: "Bed",
    at: [0, 0],
    bearing: 0,
    length: 6,
    width: 4,
    height: 1,
    wall: 0.2,
    base: 100,
    filling: [
      { material: "drain-sand", depth: 0.6 },
      { material: "pea-gravel", depth: 0.2 },
      { material: "topsoil", depth: 0.1 },
    ],
    ...change,
  };
}

/** A building open to the north: 6 × 4 m less a court of 2 × 3 m; a "U" in plan. */
const court: Building = {
  kind: "building",
  id: "house",
  name: "House",
  outline: [
    [-3, -2],
    [3, -2],
    [3, 2],
    [1, 2],
    [1, -1],
    [-1, -1],
    [-1, 2],
    [-3, 2],
  ],
  base: 100.5,
  height: 3,
};

function standing(
  work: Bed | Building,
  line: readonly PlanPoint[],
  stage: Stage = "backfilled",
): readonly SectionArea[] {
  return sectionAlong(plainSite({ works: [work] }), "plan", stage, line).standing;
}

/** Area by material, m². */
function areas(pieces: readonly SectionArea[]): Record<string, number> {
  const sums: Record<string, number> = {};
  for (const { material, area } of pieces) sums[material] = (sums[material] ?? 0) + area;
  return sums;
}

const near = (value: number): number => expect.closeTo(value, 9) as number;

/** From and to along the line, of one material. */
function spans(pieces: readonly SectionArea[], material: string): number[][] {
  return pieces
    .filter((piece) => piece.material === material)
    .map(({ outline }) => [outline[0]![0], outline[1]![0]]);
}

const across: PlanPoint[] = [
  [-10, 0.1],
  [10, 0.1],
];

describe("a raised bed in a section", () => {
  it("shows each filling and both walls, from the level base up", () => {
    const pieces = standing(plainBed(), across);
    expect(areas(pieces)).toEqual({
      "drain-sand": near(3.6 * 0.6),
      "pea-gravel": near(3.6 * 0.2),
      topsoil: near(3.6 * 0.1),
      wall: near(2 * 0.2 * 1),
    });
    expect(pieces.map(({ kind }) => kind)).toEqual([
      ...["placed", "placed", "placed"],
      ...["structure", "structure"],
    ]);
    expect(pieces.every(({ work, holes }) => work === "bed" && holes.length === 0)).toBe(true);
    expect(pieces[1]?.outline).toEqual([
      [near(8.2), near(100.6)],
      [near(11.8), near(100.6)],
      [near(11.8), near(100.8)],
      [near(8.2), near(100.8)],
    ]);
    expect(spans(pieces, "wall")).toEqual([
      [near(8), near(8.2)],
      [near(11.8), near(12)],
    ]);
  });

  it("is longer along the line where the bed is turned", () => {
    // Its long side bears 30°: a line east through the middle cuts 4 m ÷ cos 30° of the 4 m width.
    const pieces = standing(plainBed({ bearing: 30 }), [
      [-10, 0],
      [10, 0],
    ]);
    const slant = 1 / Math.cos(Math.PI / 6);
    expect(areas(pieces)["drain-sand"]).toBeCloseTo(3.6 * slant * 0.6, 9);
    expect(areas(pieces)["wall"]).toBeCloseTo(0.4 * slant, 9);
  });

  it("is cut on a diagonal through two neighbouring sides", () => {
    // x + y = 4 enters the outline (|x| ≤ 2, |y| ≤ 3) at (1, 3) and leaves at (2, 2); inside the
    // walls (|x| ≤ 1.8, |y| ≤ 2.8) it runs from (1.2, 2.8) to (1.8, 2.2).
    const pieces = standing(plainBed(), [
      [-2, 6],
      [6, -2],
    ]);
    expect(areas(pieces)["drain-sand"]).toBeCloseTo(0.6 * Math.SQRT2 * 0.6, 9);
    expect(areas(pieces)["wall"]).toBeCloseTo(0.4 * Math.SQRT2, 9);
    expect(spans(pieces, "drain-sand")[0]![0]).toBeCloseTo(3.2 * Math.SQRT2, 9);
  });

  it("is one piece round a bend within it, and two where the line comes back", () => {
    const bent = standing(plainBed(), [
      [-10, 0],
      [0, 0],
      [0, 10],
    ]);
    expect(spans(bent, "drain-sand")).toEqual([[near(8.2), near(12.8)]]);
    const twice = standing(plainBed(), [
      [-5, 1],
      [5, 1],
      [5, -1],
      [-5, -1],
    ]);
    expect(spans(twice, "drain-sand")).toEqual([
      [near(3.2), near(6.8)],
      [near(15.2), near(18.8)],
    ]);
    expect(areas(twice)["wall"]).toBeCloseTo(0.8, 9);
  });

  it("begins or ends with a line that does so within it", () => {
    const pieces = standing(plainBed(), [
      [0, 0],
      [0, 1],
    ]);
    expect(areas(pieces)).toEqual({
      "drain-sand": near(0.6),
      "pea-gravel": near(0.2),
      topsoil: near(0.1),
    });
  });

  it("shows its wall along a line within the wall, and what lies to the left of a side", () => {
    const along = (x: number, way: 1 | -1): Record<string, number> =>
      areas(
        standing(plainBed({ filling: [{ material: "drain-sand", depth: 0.5 }] }), [
          [x, -10 * way],
          [x, 10 * way],
        ]),
      );
    expect(along(1.9, 1)).toEqual({ wall: near(6) });
    // Northward along the east side the bed lies to the left; southward it lies to the right.
    expect(along(2, 1)).toEqual({ wall: near(6) });
    expect(along(2, -1)).toEqual({});
    expect(along(1.8, 1)).toEqual({ "drain-sand": near(5.6 * 0.5), wall: near(0.4) });
  });

  it("holds no more than its walls do, and no fillings where they are all wall", () => {
    const filling = [
      { material: "drain-sand", depth: 0.6 },
      { material: "pea-gravel", depth: 0.6 },
      { material: "topsoil", depth: 0.1 },
    ];
    expect(areas(standing(plainBed({ filling }), across))).toEqual({
      "drain-sand": near(3.6 * 0.6),
      "pea-gravel": near(3.6 * 0.4),
      wall: near(0.4),
    });
    expect(areas(standing(plainBed({ wall: 2 }), across))).toEqual({ wall: near(4) });
    expect(areas(standing(plainBed({ wall: 0 }), across))).toEqual({
      "drain-sand": near(4 * 0.6),
      "pea-gravel": near(4 * 0.2),
      topsoil: near(4 * 0.1),
    });
  });

  it("has walls once things are set and fillings once the job is backfilled", () => {
    const shown = STAGES.map((stage) => Object.keys(areas(standing(plainBed(), across, stage))));
    const all = ["drain-sand", "pea-gravel", "topsoil", "wall"];
    expect(STAGES.map((stage, i) => [stage, shown[i]!])).toEqual([
      ["found", []],
      ["stripped", []],
      ["dug", []],
      ["bedded", []],
      ["set", ["wall"]],
      ["zone", ["wall"]],
      ["backfilled", all],
    ]);
  });

  it("stands on the pad below it, and leaves the ground's own areas as they are", () => {
    const works = [plainPad({ top: 100.4 }), plainBed({ base: 100.4 })];
    const cut = (count: number): Section =>
      sectionAlong(plainSite({ works: works.slice(0, count) }), "plan", "backfilled", across, 95);
    const { areas: ground, surface, standing: pieces } = cut(2);
    expect(ground).toEqual(cut(1).areas);
    expect(surface.flat()).toEqual([
      [near(0), near(100)],
      [near(7), near(100)],
      [near(7), near(100.4)],
      [near(13), near(100.4)],
      [near(13), near(100)],
      [near(20), near(100)],
    ]);
    const lowest = Math.min(...pieces.flatMap(({ outline }) => outline.map(([, z]) => z)));
    expect(lowest).toBeCloseTo(100.4, 9);
  });
});

it("sweeps the volumes of fillings that the dig counts", () => {
  const bed = plainBed({ bearing: 90 });
  const site = plainSite({ works: [bed] });
  const built = baseGround(site);
  if (!built.ok) throw new Error(built.problem.text);
  const { result } = digScheme(site, site.schemes[0]!, built.base);
  // The bed's ends at x = ±2.8 lie between slices, so each slice is wholly within or without.
  const slice = 0.05;
  const swept: Record<string, number> = {};
  for (let x = -4 + slice / 2; x < 4; x += slice) {
    const cut = areas(
      standing(bed, [
        [x, -10],
        [x, 10],
      ]),
    );
    for (const material of Object.keys(result.works[0]!.fill)) {
      swept[material] = (swept[material] ?? 0) + slice * (cut[material] ?? 0);
    }
  }
  expect(swept["drain-sand"]).toBeCloseTo(5.6 * 3.6 * 0.6, 9);
  for (const [material, volume] of Object.entries(result.works[0]!.fill)) {
    expect(swept[material]).toBeCloseTo(volume, 9);
  }
});

describe("a building in a section", () => {
  it("is one outline for each stretch of a concave plan, at every stage", () => {
    for (const stage of STAGES) {
      const pieces = standing(court, across, stage);
      expect(pieces.map(({ material, kind, work }) => [material, kind, work])).toEqual([
        ["building", "structure", "house"],
        ["building", "structure", "house"],
      ]);
      expect(spans(pieces, "building")).toEqual([
        [near(7), near(9)],
        [near(11), near(13)],
      ]);
      expect(areas(pieces)["building"]).toBeCloseTo(4 * 3, 9);
      expect(pieces[0]!.outline.map(([, z]) => z)).toEqual([100.5, 100.5, 103.5, 103.5]);
    }
  });

  it("is whole along the foot of its court on one side, and parted on the other", () => {
    // y = −1 runs along the court's foot: eastward the court lies to the left, westward the house.
    const foot = (way: 1 | -1): number[][] =>
      spans(
        standing(court, [
          [-10 * way, -1],
          [10 * way, -1],
        ]),
        "building",
      );
    expect(foot(1)).toHaveLength(2);
    expect(foot(-1)).toEqual([[near(7), near(13)]]);
  });

  it("is the same whichever way round its outline goes", () => {
    const turned = { ...court, outline: [...court.outline].reverse() };
    expect(standing(turned, across)).toEqual(standing(court, across));
  });

  it("lowers the section's foot where its base is below all ground", () => {
    const cellar = { ...court, base: 96 };
    const { datum } = sectionAlong(plainSite({ works: [cellar] }), "plan", "found", across);
    expect(datum).toBeCloseTo(95, 9);
  });
});
