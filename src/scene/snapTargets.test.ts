import { describe, expect, it } from "vitest";
import type { Limit, Site } from "../site/index.js";
import { plainPad, plainSite, plainTank, plainTrench } from "../site/site.fixture.js";
import { shownWorks } from "./shown.js";
import { snapPlace } from "./snap.js";
import { snapTargets } from "./snapTargets.js";

const path: [number, number][] = [
  [-9, 0],
  [-1, 0],
];
const drain = plainTrench({ id: "drain", name: "Drain", path });
const limits: Limit[] = [
  { id: "well", kind: "well", at: [9, 9] },
  { id: "creek", kind: "watercourse", name: "Creek", path },
];
const works = shownWorks([plainTank(), drain, plainPad({ id: "pad", name: "Pad" })]);
const site: Site = { ...plainSite({ works, layers: [0.2, 1] }), limits };
const all = { showProbes: true, showPoints: true };

describe("snapTargets", () => {
  const names = (...given: Parameters<typeof snapTargets>): string[] =>
    snapTargets(...given).map(({ name }) => name);

  it("has works, limits, and probes and points only while they show", () => {
    const found = names({ site, works }, all, []);
    expect(found).toContain("Tank");
    expect(found).toContain("Creek");
    expect(found).toContain("well");
    expect(found).toContain("probe t1");
    expect(found).toContain("point p00");
    const hidden = names({ site, works }, { showProbes: false, showPoints: false }, []);
    expect(hidden.filter((name) => /^(point|probe) /.test(name))).toEqual([]);
    expect(hidden).toContain("Creek");
  });

  it("leaves out what is moved, and the trenches whose ends go with it", () => {
    const left = names({ site, works }, all, [{ kind: "work", id: "tank" }]);
    expect(left).not.toContain("Tank");
    expect(left).not.toContain("Drain");
    expect(left).toContain("Pad");
  });

  it("leaves out a limit that is hidden, or moved itself", () => {
    const now = limits.map((one) => (one.id === "creek" ? { ...one, hidden: true } : one));
    expect(names({ site: { ...site, limits: now }, works }, all, [])).not.toContain("Creek");
    const moved = names({ site, works }, all, [{ kind: "limit", id: "well" }]);
    expect(moved).not.toContain("well");
  });

  it("puts where a pipe's end belongs first, only when such an end is set", () => {
    const joints = (ends: boolean) =>
      snapTargets({ site, works }, all, [], ends).filter(({ shape }) => shape === "joint");
    expect(joints(false)).toEqual([]);
    expect(joints(true)).toEqual([
      {
        name: "middle of the end of Tank",
        shape: "joint",
        places: [
          [0, -1.5],
          [0, 1.5],
        ],
        wide: 1,
      },
      { name: "end of Drain", shape: "joint", places: path },
    ]);
  });

  it("holds a path's end at the middle of the tank's end where a corner is nearer", () => {
    const ask = { lines: [], close: null, from: null, contours: null, reach: 0.3, step: 0.1 };
    const at: [number, number] = [0.9, 1.6];
    const placed = (ends: boolean) =>
      snapPlace({ ...ask, at, targets: snapTargets({ site, works }, all, [], ends) });
    expect(placed(false).at).toEqual([1, 1.5]);
    expect(placed(true)).toMatchObject({ at: [0, 1.5], holds: [{ shape: "joint" }] });
  });
});
