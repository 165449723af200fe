import { describe, expect, it } from "vitest";
import { plainSite } from "./site.fixture.js";
import { changeScheme } from "./edits.js";
import { moveStand } from "./standEdits.js";

const site = changeScheme(plainSite({}), "plan", (scheme) => ({
  ...scheme,
  machines: {
    lift: {
      crane: { by: "catalogue", id: "boom-truck-25t" },
      rigging: 100,
      stands: [
        { id: "east", name: "East", at: [5, 0] },
        { id: "west", name: "West", at: [-5, 0] },
      ],
    },
  },
}));

describe("moveStand", () => {
  it("moves that stand and nothing else, and leaves the site before as it was", () => {
    const next = moveStand(site, "plan", "west", [-6, 2]);
    expect(next.schemes[0]?.machines?.lift?.stands.map(({ at }) => at)).toEqual([
      [5, 0],
      [-6, 2],
    ]);
    expect(site.schemes[0]?.machines?.lift?.stands[1]?.at).toEqual([-5, 0]);
    expect(next.survey).toBe(site.survey);
  });

  it("is the same site where nothing moves: no step to undo", () => {
    expect(moveStand(site, "plan", "west", [-5, 0])).toBe(site);
    expect(moveStand(site, "plan", "north", [0, 0])).toBe(site);
    expect(moveStand(plainSite({}), "plan", "west", [0, 0]).schemes[0]?.machines).toBeUndefined();
  });
});
