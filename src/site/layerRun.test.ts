// Runs of the classes: 29 CFR 1926 Subpart P, Appendix B, Table B-1 (second).
import { describe, expect, it } from "vitest";
import { materialsOf } from "./catalogue.js";
import { classRun, layerRun, runsByMaterial } from "./layerRun.js";
import type { Layer } from "./schema.js";

const clay = (soil?: Layer["soil"]): Layer => ({
  id: "l",
  name: "Clay",
  material: "clay",
  ...(soil !== undefined && { soil }),
});
const materials = materialsOf({});

describe("the run that a layer is given", () => {
  it("is its material's until its soil is typed, then its class's", () => {
    expect(layerRun(clay(), materials)).toBe(materials.get("clay")?.wallRun);
    expect(layerRun(clay({ ground: "soil" }), materials)).toBe(materials.get("clay")?.wallRun);
    expect(layerRun(clay({ ground: "soil", grain: "granular" }), materials)).toBe(1.5);
  });

  it("is the flatter where two layers are of one material", () => {
    const wet = clay({ ground: "soil", water: "seeps" });
    expect(runsByMaterial([clay({ ground: "rock", rock: "stable" }), wet], materials)).toEqual(
      new Map([["clay", 1.5]]),
    );
  });

  it("is that of Table B-1", () => {
    const ids = ["stable-rock", "type-a", "type-a-short", "type-b", "type-c"] as const;
    expect(ids.map(classRun)).toEqual([0, 0.75, 0.5, 1, 1.5]);
  });
});
