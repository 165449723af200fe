import { describe, expect, it } from "vitest";
import { joinedEnds } from "../estimate/index.js";
import { findWork, setMark } from "../site/index.js";
import type { PlanPoint, Site } from "../site/index.js";
import { plainPad, plainSite, plainStrip, plainTank, plainTrench } from "../site/site.fixture.js";
import type { Picked } from "./deskState.js";
import { canRaise, withAllMoved, withAllRaised } from "./movedTogether.js";

const tankA: Picked = { kind: "work", id: "a" };
const tankB: Picked = { kind: "work", id: "b" };
const trench: Picked = { kind: "work", id: "trench" };
const by: PlanPoint = [1, -2];

/** Two tanks with a trench from the one to the other. */
const site = plainSite({
  works: [
    plainTank({ id: "a", name: "Tank A", at: [-6, 0], bearing: 90 }),
    plainTank({ id: "b", name: "Tank B", at: [6, 0], bearing: 90 }),
    plainTrench({
      path: [
        [-4.5, 0],
        [0, 1],
        [4.5, 0],
      ],
    }),
  ],
  layers: [0.3, 1],
});

function pathOf(now: Site): readonly PlanPoint[] {
  const work = findWork(now, "plan", "trench");
  if (work?.kind !== "trench") throw new Error("expected the trench, got none");
  return work.path;
}

function placeOf(now: Site, id: string): PlanPoint {
  const work = findWork(now, "plan", id);
  if (work?.kind !== "tank") throw new Error(`expected a tank "${id}", got none`);
  return work.at;
}

describe("moving several things", () => {
  it("starts from a trench that is joined to both tanks", () => {
    const scheme = site.schemes[0]!;
    const ends = scheme.works.slice(0, 2).flatMap((work) => joinedEnds(scheme, work));
    expect(ends).toEqual([
      { trench: "trench", end: "first" },
      { trench: "trench", end: "last" },
    ]);
  });

  it("moves each once, though a trench is joined to what moves with it", () => {
    const moved = withAllMoved(site, "plan", [tankA, trench, tankB], by);
    expect(placeOf(moved, "a")).toEqual([-5, -2]);
    expect(placeOf(moved, "b")).toEqual([7, -2]);
    expect(pathOf(moved)).toEqual([
      [-3.5, -2],
      [1, -1],
      [5.5, -2],
    ]);
  });

  it("takes both ends of a trench along that is not picked itself, and not its bend", () => {
    expect(pathOf(withAllMoved(site, "plan", [tankA, tankB], by))).toEqual([
      [-3.5, -2],
      [0, 1],
      [5.5, -2],
    ]);
  });

  it("moves an end once that meets two works that move", () => {
    const near = plainSite({
      works: [
        plainTank({ id: "a", at: [-1, 0] }),
        plainTank({ id: "b", at: [1, 0] }),
        plainTrench({
          path: [
            [0, 0],
            [10, 0],
          ],
        }),
      ],
    });
    expect(pathOf(withAllMoved(near, "plan", [tankA, tankB], by))).toEqual([
      [1, -2],
      [10, 0],
    ]);
  });

  it("leaves what is locked, a joined trench too", () => {
    const lockedTank = setMark(site, "plan", [tankA], "locked", true);
    const moved = withAllMoved(lockedTank, "plan", [tankA, tankB], by);
    expect(placeOf(moved, "a")).toEqual([-6, 0]);
    expect(placeOf(moved, "b")).toEqual([7, -2]);
    expect(pathOf(moved)[0]).toEqual([-4.5, 0]);
    const lockedTrench = setMark(site, "plan", [trench], "locked", true);
    expect(pathOf(withAllMoved(lockedTrench, "plan", [tankA], by))).toBe(pathOf(lockedTrench));
  });

  it("moves probes and limits along", () => {
    const with1: Site = { ...site, limits: [{ id: "well", kind: "well", at: [3, 3] }] };
    const things: Picked[] = [tankA, { kind: "probe", id: "t1" }, { kind: "limit", id: "well" }];
    const moved = withAllMoved(with1, "plan", things, by);
    expect(moved.ground.probes[0]).toMatchObject({ x: 1, y: -2 });
    expect(moved.limits?.[0]?.at).toEqual([4, 1]);
    expect(moved.survey).toBe(with1.survey);
  });
});

describe("raising several things", () => {
  const mixed = plainSite({
    works: [plainTank({ base: 98 }), plainPad({ top: 100 }), plainStrip()],
  });
  const all: Picked[] = ["tank", "pad", "strip"].map((id) => ({ kind: "work", id }));

  it("raises what has a height, but for what is locked", () => {
    const locked = setMark(mixed, "plan", [all[1]!], "locked", true);
    const works = withAllRaised(locked, "plan", all, 0.5).schemes[0]!.works;
    expect(works[0]).toMatchObject({ base: 98.5 });
    expect(works[1]).toMatchObject({ top: 100 });
    expect(works[2]).toBe(mixed.schemes[0]!.works[2]);
  });

  it("knows when there is nothing to raise", () => {
    expect(canRaise(mixed, "plan", all)).toBe(true);
    expect(canRaise(mixed, "plan", [all[2]!])).toBe(false);
  });
});
