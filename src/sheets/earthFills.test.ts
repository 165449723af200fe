import { describe, expect, test } from "vitest";
import { catalogueMaterials, NATIVE } from "../site/index.js";
import { plainSite } from "../site/site.fixture.js";
import { earthFills, earthLegend, earthToneOf, WATER_FILL } from "./earthFills.js";

const BUILT = [NATIVE, "tank", "wall", "building"];

describe("fills of materials", () => {
  const site = plainSite({});
  const all = [...catalogueMaterials().keys(), ...BUILT];
  const fills = earthFills(site, all);

  test("every material of the catalogue is told apart by its hatch alone", () => {
    const hatches = [...fills.values(), WATER_FILL].map((fill) => JSON.stringify(fill.hatches));
    expect(hatches.length).toBe(all.length + 1);
    expect(new Set(hatches).size).toBe(hatches.length);
    expect(hatches.every((each) => each.length > 10)).toBe(true);
  });

  test("no hatch is thinner than prints", () => {
    for (const { hatches } of fills.values()) {
      for (const hatch of hatches ?? []) {
        expect(hatch.kind === "lines" ? hatch.pen.width : hatch.size).toBeGreaterThanOrEqual(0.18);
        expect(hatch.gap).toBeGreaterThan(3 * (hatch.kind === "lines" ? hatch.pen.width : 0.18));
      }
    }
  });

  test.each([
    ["drain-sand", "sand"],
    ["pea-gravel", "gravel"],
    ["sand-and-gravel", "soil"],
    ["sand", "sand"],
    ["sandy-loam", "soil"],
    ["common-earth", "soil"],
    ["clay", "clay"],
    ["silt", "silt"],
    ["sandstone", "rock"],
    ["imported-fill", "fill"],
    ["no-such-thing", "tank"],
  ])("%s is drawn as %s", (material, tone) => {
    expect(earthToneOf(site, material)).toBe(tone);
  });

  test("clay, silt and common earth differ by their ground as well", () => {
    const grounds = ["clay", "silt", "common-earth", "sand"].map((id) => fills.get(id)?.color);
    expect(new Set(grounds).size).toBe(4);
  });

  test("the legend names each once, in order", () => {
    const rows = earthLegend(site, ["topsoil", NATIVE, "topsoil", "shelf-rock"]);
    expect(rows.map((row) => row.name)).toEqual(["Topsoil", "Site earth put back", "Shelf rock"]);
  });
});
