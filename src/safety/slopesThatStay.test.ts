// Clark County Code 14.07.060 (Clark County, Washington): cuts to 2:1 without a report, rock to 1:1.
import { describe, expect, it } from "vitest";
import type { WorkQuantities } from "../dig/index.js";
import { wordingFor } from "../flow/index.js";
import type { Material, Pad } from "../site/index.js";
import { checkSlopesThatStay } from "./slopesThatStay.js";

const material = (id: string, kind: Material["kind"], wallRun: number): [string, Material] => [
  id,
  {
    ...{ id, name: id, kind, density: 1800, loose: 1.25, compacted: 0.9, wallRun, reusable: 1 },
    source: "test",
  },
];
const materials = new Map([
  material("clay", "soil", 1.5),
  material("shale", "rippable", 1.2),
  material("ledge", "rock", 0.9),
]);

function codes(
  pad: Partial<Pad>,
  hole: Partial<WorkQuantities> = {},
  rules: { id: string; value: number }[] = [],
): string[] {
  const work: Pad = {
    ...{ kind: "pad", id: "p", name: "Pad", top: 100, walls: { by: "run", run: 3 }, fill: "clay" },
    outline: [
      [0, 0],
      [10, 0],
      [10, 5],
      [0, 5],
    ],
    fillRun: 3,
    ...pad,
  };
  const dug: WorkQuantities = {
    ...{ id: "p", name: "Pad", kind: "pad", cut: {}, fill: { clay: 5 }, displaced: 0 },
    floor: { lowest: 100, highest: 100 },
    ...{ deepest: 1, tallestFace: 1, daylight: 10, materialsMet: ["clay", "ledge"] },
    ...hole,
  };
  const context = { materials, words: wordingFor("us"), units: "us", locality: { rules } } as const;
  return checkSlopesThatStay(work, dug, context).map(({ code }) => code);
}

describe("slopes of a pad that stay", () => {
  it("fill: told steeper than 2:1, silent at it and flatter", () => {
    expect(codes({ fillRun: 1.99 })).toEqual(["slope.fill-stays"]);
    expect(codes({ fillRun: 2 })).toEqual([]);
    expect(codes({ fillRun: 2.01 })).toEqual([]);
  });

  it("says nothing of fill where there is none, the course set aside", () => {
    expect(codes({ fillRun: 1 }, { fill: {} })).toEqual([]);
    const course = { depth: 0.1, material: "clay" };
    expect(codes({ fillRun: 1, course }, { fill: { clay: 5 } })).toEqual([]);
    expect(codes({ fillRun: 1, course }, { fill: { clay: 5.1 } })).toEqual(["slope.fill-stays"]);
  });

  it("cut in earth, or in earth over rock: 2:1", () => {
    expect(codes({ walls: { by: "run", run: 1.99 } })).toEqual(["slope.cut-stays"]);
    expect(codes({ walls: { by: "run", run: 2 } })).toEqual([]);
    expect(codes({ walls: { by: "run", run: 3, sides: [3, 3, 1.9, 3] } })).toEqual([
      "slope.cut-stays",
    ]);
  });

  it("cut in rock alone: 1:1; what can be ripped is earth", () => {
    const rock = { materialsMet: ["ledge"] };
    expect(codes({ walls: { by: "run", run: 0.99 } }, rock)).toEqual(["slope.cut-stays"]);
    expect(codes({ walls: { by: "run", run: 1 } }, rock)).toEqual([]);
    const shale = { materialsMet: ["shale"] };
    expect(codes({ walls: { by: "run", run: 1.99 } }, shale)).toEqual(["slope.cut-stays"]);
  });

  it("benches by their mean slope, walls by layer by each material", () => {
    expect(codes({ walls: { by: "benches", rise: 1, tread: 1.99 } })).toEqual(["slope.cut-stays"]);
    expect(codes({ walls: { by: "benches", rise: 1, tread: 2 } })).toEqual([]);
    // Ledge at 0.9, clay at 1.5: both are steeper than theirs.
    expect(codes({ walls: { by: "layers" } })).toEqual(["slope.cut-stays"]);
    const gentle = [
      { id: "slope-stays-soil", value: 1.5 },
      { id: "slope-stays-rock", value: 0.9 },
    ];
    expect(codes({ walls: { by: "layers" } }, {}, gentle)).toEqual([]);
  });

  it("says nothing where nothing is cut, and goes by the site's own number", () => {
    expect(codes({ walls: { by: "run", run: 0 } }, { tallestFace: 0 })).toEqual([]);
    const own = [{ id: "slope-stays-soil", value: 1.5 }];
    expect(codes({ fillRun: 1.5 }, {}, own)).toEqual([]);
    expect(codes({ fillRun: 1.49 }, {}, own)).toEqual(["slope.fill-stays"]);
  });
});
