import { describe, expect, it } from "vitest";
import { addWork, checkSite } from "../site/index.js";
import type { PlanPoint } from "../site/index.js";
import { plainPad, plainSite, plainStrip } from "../site/site.fixture.js";
import { placedWork, stripOver, stripPlace } from "./placed.js";

const corners: PlanPoint[] = [
  [0, 0],
  [5, 0],
  [5, 5],
];

describe("a strip of the topsoil", () => {
  const layered = plainSite({ layers: [0.3, 1], works: [plainPad()] });

  it("takes the whole top layer where a layer lies under it", () => {
    expect(placedWork(layered, "plan", "strip", corners)).toMatchObject({
      kind: "strip",
      name: "Topsoil strip 1",
      area: { by: "outline", outline: corners },
      putBack: { depth: 0.15 },
    });
    expect(placedWork(layered, "plan", "strip", corners)).not.toHaveProperty("depth");
    expect(placedWork(layered, "plan", "strip", corners.slice(0, 2))).toBeNull();
  });

  it("takes a depth where the ground is one layer", () => {
    expect(placedWork(plainSite({}), "plan", "strip", corners)).toMatchObject({ depth: 0.2 });
  });

  it("lies over a work, before all works but strips, in a site that can be saved", () => {
    const first = stripOver(layered, "plan", "pad");
    expect(stripPlace(layered, "plan")).toBe(0);
    const once = addWork(layered, "plan", first, 0);
    expect(stripPlace(once, "plan")).toBe(1);
    const second = stripOver(once, "plan", "pad");
    expect([first.id, first.name, second.id, second.name]).toEqual([
      "strip-1",
      "Topsoil strip 1",
      "strip-2",
      "Topsoil strip 2",
    ]);
    expect(checkSite(once)).toMatchObject({ ok: true });
    expect(stripPlace(plainSite({ works: [plainStrip()] }), "plan")).toBe(1);
  });
});
