import { describe, expect, it } from "vitest";
import { findWork } from "./edits.js";
import { heightOf, raiseWork, workRaisedBy } from "./raising.js";
import type { Pipe, Trench, Work } from "./schema.js";
import { plainPad, plainSite, plainStrip, plainTank } from "./site.fixture.js";

const square: [number, number][] = [
  [0, 0],
  [4, 0],
  [4, 4],
];

function pipe(id: string, grade: Pipe["grade"]): Pipe {
  return { id, name: id, service: "gravity", inside: 0.1, outside: 0.11, material: "PVC", grade };
}

describe("raising", () => {
  it("moves a tank's underside, and gives back the same site for no rise or no work", () => {
    const site = plainSite({ works: [plainTank({ base: 98 })] });
    const raised = findWork(raiseWork(site, "plan", "tank", 0.25), "plan", "tank");
    expect(raised === null ? null : heightOf(raised)).toBe(98.25);
    expect(raiseWork(site, "plan", "tank", 0)).toBe(site);
    expect(raiseWork(site, "plan", "none", 1)).toBe(site);
  });

  it("takes all levels of a pad together, and a building's outlets with it", () => {
    const pad = plainPad({ top: 100, levels: [{ outline: square, top: 99 }] });
    expect(workRaisedBy(pad, -0.5)).toMatchObject({ top: 99.5, levels: [{ top: 98.5 }] });
    const building: Work = {
      kind: "building",
      id: "house",
      name: "House",
      outline: square,
      base: 101,
      height: 4,
      outlets: [{ id: "o", name: "Drain", at: [0, 0], invert: 100.2 }],
    };
    expect(workRaisedBy(building, 0.5)).toMatchObject({
      base: 101.5,
      outlets: [{ invert: 100.7, at: [0, 0] }],
    });
  });

  it("raises pipes that lie at elevations and leaves those that lie by cover", () => {
    const trench: Trench = {
      kind: "trench",
      id: "t",
      name: "Trench",
      path: square,
      width: 0.6,
      walls: { by: "run", run: 0 },
      bedding: { depth: 0.1, material: "pea-gravel" },
      zone: { above: 0.1, material: "pea-gravel" },
      backfill: "native",
      pipes: [
        pipe("a", { by: "inverts", start: 99, end: 98 }),
        pipe("b", { by: "fall", start: 99, fall: 0.02 }),
        pipe("c", { by: "cover", depth: 0.6 }),
      ],
    };
    const raised = workRaisedBy(trench, 1) as Trench;
    expect(raised.pipes.map((one) => one.grade)).toEqual([
      { by: "inverts", start: 100, end: 99 },
      { by: "fall", start: 100, fall: 0.02 },
      { by: "cover", depth: 0.6 },
    ]);
    const covered = { ...trench, pipes: [trench.pipes[2]!] };
    expect(workRaisedBy(covered, 1)).toBe(covered);
  });

  it("has no height for what goes by the ground", () => {
    const strip = plainStrip();
    expect(heightOf(strip)).toBeNull();
    expect(workRaisedBy(strip, 1)).toBe(strip);
  });
});
