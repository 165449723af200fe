import { describe, expect, it } from "vitest";
import type { Limit, Site } from "../site/index.js";
import { plainPad, plainSite, plainTank, plainTrench } from "../site/site.fixture.js";
import { shownWorks } from "./shown.js";
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
});
