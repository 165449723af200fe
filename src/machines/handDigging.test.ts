import { describe, expect, it } from "vitest";
import { workOf } from "../dig/dig.fixture.js";
import { catalogueMaterials, type Limit } from "../site/index.js";
import { handDigging } from "./handDigging.js";

const MATERIALS = catalogueMaterials();
const CABLE: Limit = {
  id: "c",
  kind: "buried-cable",
  name: "Cable",
  path: [
    [2, -10],
    [2, 10],
  ],
};
const CUT = {
  ...{ work: "pit", limit: "c", area: 4.8, at: [2, 2] as [number, number], distance: 0, depth: 1 },
  cut: { "common-earth": 3, clay: 1 },
};

describe("digging by hand beside what is buried", () => {
  it("takes what is cut within the tolerance at the rates by hand", () => {
    const [part] = handDigging([CUT], [workOf({ id: "pit" })], [CABLE], MATERIALS);
    // m³/h: firm soil 0.57 and clay 0.46, slow 0.46 and 0.38 (planning wiki output tables, read).
    expect(part).toMatchObject({ work: "pit", limitName: "Cable", area: 4.8, volume: 4 });
    expect(part?.hours.likely).toBeCloseTo(3 / 0.57 + 1 / 0.46, 9);
    expect(part?.hours.high).toBeCloseTo(3 / 0.46 + 1 / 0.38, 9);
  });

  it("is none without a cut, and throws on one of an unknown line", () => {
    expect(handDigging([], [workOf({ id: "pit" })], [CABLE], MATERIALS)).toEqual([]);
    expect(() => handDigging([CUT], [workOf({ id: "pit" })], [], MATERIALS)).toThrow("by hand");
  });
});
