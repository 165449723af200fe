import { describe, expect, it } from "vitest";
import { catalogueMaterials, materialsOf } from "./catalogue.js";
import type { Material } from "./schema.js";

/** kg/m³ of 1 lb/yd³: 0.45359237 kg ÷ 0.9144³ m³. */
const POUND_PER_YARD = 0.45359237 / 0.9144 ** 3;

function material(id: string): Material {
  const found = catalogueMaterials().get(id);
  if (!found) throw new Error(`got no material "${id}", expected it in the catalogue`);
  return found;
}

describe("the catalogue's materials", () => {
  it("hold one of every kind, keyed by their own id, each with a source", () => {
    const all = [...catalogueMaterials()];
    expect(new Set(all.map(([, m]) => m.kind))).toEqual(
      new Set(["topsoil", "soil", "rippable", "rock", "aggregate", "fill"]),
    );
    for (const [id, m] of all) {
      expect(m.id).toBe(id);
      expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(m.source.length).toBeGreaterThan(10);
    }
  });

  it("swell when loosened, and only earth shrinks when compacted", () => {
    for (const m of catalogueMaterials().values()) {
      expect(m.loose, m.id).toBeGreaterThan(1);
      const isBroken = m.kind === "rippable" || m.kind === "rock";
      if (isBroken) expect(m.compacted, m.id).toBeGreaterThan(1);
      else expect(m.compacted, m.id).toBeLessThanOrEqual(1);
    }
  });

  it("say of every wall that typing the soil is a competent person's call", () => {
    for (const m of catalogueMaterials().values()) {
      expect(m.source, m.id).toMatch(/1926/);
      expect(m.source, m.id).toMatch(/competent person/);
      if (m.kind !== "rock") expect(m.wallRun, m.id).toBeGreaterThanOrEqual(1);
    }
  });

  it("carry the published bank weights, to the nearest kg/m³", () => {
    // Nunnally, Construction Methods and Management, Table 2-5 (second hand): lb per bank yd³.
    const published = { clay: 3000, "common-earth": 3100, "shelf-rock": 4600 };
    for (const [id, pounds] of Object.entries(published)) {
      expect(Math.abs(material(id).density - pounds * POUND_PER_YARD), id).toBeLessThan(1);
    }
  });

  it("never send topsoil back as backfill", () => {
    expect(material("topsoil").reusable).toBe(0);
  });
});

describe("the materials of a site", () => {
  const ownClay: Material = {
    ...material("clay"),
    density: 1900,
    source: "our own test pit",
  };
  const rubble: Material = {
    ...material("shelf-rock"),
    id: "rubble",
    name: "Rubble",
  };

  it("are the catalogue when the site has none of its own", () => {
    expect([...materialsOf({}).keys()]).toEqual([...catalogueMaterials().keys()]);
  });

  it("let the site's own override and add, and leave the catalogue as it was", () => {
    const all = materialsOf({ materials: [ownClay, rubble] });
    expect(all.get("clay")?.density).toBe(1900);
    expect(all.get("rubble")?.name).toBe("Rubble");
    expect(all.size).toBe(catalogueMaterials().size + 1);
    expect(catalogueMaterials().get("clay")?.density).toBe(1780);
    expect(catalogueMaterials().has("rubble")).toBe(false);
  });
});
