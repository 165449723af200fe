import { describe, expect, it } from "vitest";
import { layLotLine, lotLinesOf } from "./limitEdits.js";
import { plainSite } from "./site.fixture.js";
import type { Limit, PlanPoint, Site } from "./schema.js";

const ring: PlanPoint[] = [
  [0, 0],
  [30, 0],
  [30, 40],
];
const was: Limit = {
  ...{ id: "lot", kind: "lot-line", name: "Our lot", setback: 3, closed: true },
  path: [
    [1, 1],
    [2, 1],
    [2, 2],
  ],
};
const site: Site = { ...plainSite({}), limits: [{ id: "w", kind: "well", at: [5, 5] }, was] };

describe("the lot line laid from its sides", () => {
  it("takes the place of the one that is named, which keeps its name and setback", () => {
    const now = layLotLine(site, { path: ring, closed: true, name: "Lot line" }, "lot");
    expect(lotLinesOf(now)).toEqual([{ ...was, path: ring }]);
    expect(now.limits).toHaveLength(2);
    expect(site.limits?.[1]).toBe(was);
  });

  it("is open where its sides do not close, though the one before was closed", () => {
    const now = layLotLine(site, { path: ring, closed: false, name: "Lot line" }, "lot");
    expect(lotLinesOf(now)[0]).not.toHaveProperty("closed");
  });

  it("stands beside the others when none is named", () => {
    const now = layLotLine(site, { path: ring, closed: true, name: "Lot line" }, null);
    expect(lotLinesOf(now)).toEqual([
      was,
      {
        id: expect.any(String) as string,
        kind: "lot-line",
        name: "Lot line",
        path: ring,
        closed: true,
      },
    ]);
    const first = layLotLine(plainSite({}), { path: ring, closed: true, name: "Lot line" }, null);
    expect(lotLinesOf(first)).toHaveLength(1);
  });
});
