import { describe, expect, it } from "vitest";
import { FACE, foundShape, stagePatch, type Stage } from "../estimate/index.js";
import { plainPad, plainSite, plainTank } from "../site/site.fixture.js";
import { stageGround, type StageGround } from "./stageGround.js";

const PAD: [number, number][] = [
  [5, 5],
  [9, 5],
  [9, 9],
  [5, 9],
];

/** A level site at 100 m, 40 m square, with a tank in an upright hole and a pad of gravel. */
function groundAt(stage: Stage): { ground: StageGround; site: ReturnType<typeof plainSite> } {
  const tank = plainTank({ bearing: 0, overdig: 0.5 });
  const pad = plainPad({
    outline: PAD,
    top: 100.2,
    course: { depth: 0.2, material: "crushed-gravel" },
  });
  const site = plainSite({ works: [tank, pad], layers: [0.3, 1] });
  const patch = stage === "found" ? null : stagePatch(site, "plan", stage);
  return { ground: stageGround(foundShape(site), patch, [0, 0, 90]), site };
}

describe("stageGround", () => {
  const { ground, site } = groundAt("dug");
  const [tank] = site.schemes[0]!.works;
  if (tank?.kind !== "tank") throw new Error("expected a tank");
  const [x, y] = tank.at;
  const floor = tank.base - tank.bedding.depth - 90;

  it("tells the height and the kind of face in the scene's frame", () => {
    expect(ground.heightAt(x, y)?.z).toBeCloseTo(floor, 5);
    expect(ground.heightAt(x, y)?.face).toBe(FACE.dug);
    const corner = site.survey.points[0]!;
    expect(ground.heightAt(corner.x, corner.y)?.z).toBeCloseTo(corner.z - 90, 5);
    expect(ground.heightAt(corner.x, corner.y)?.face).toBe(FACE.found);
    expect(ground.heightAt(corner.x - 1, corner.y - 1)).toBeNull();
  });

  it("is struck by a ray at the floor of the hole, at its wall, and on untouched ground", () => {
    const hit = ground.strike({ from: [x, y, 30], along: [0, 0, -2] });
    expect(hit?.[2]).toBeCloseTo(floor, 4);
    // From the middle of the hole towards its long side, which stands half the width and 0.5 m off.
    const wall = ground.strike({ from: [x, y, floor + 0.5], along: [0, 1, 0] });
    expect(wall?.[1]).toBeCloseTo(y + tank.body.length / 2 + 0.5, 4);
    const [east, south] = [site.survey.points[0]!.x + 0.4, site.survey.points[0]!.y + 0.3];
    expect(ground.strike({ from: [east, south, 30], along: [0, 0, -1] })?.[2]).toBeCloseTo(10, 4);
    expect(ground.strike({ from: [x, y, 30], along: [0, 0, 1] })).toBeNull();
  });

  it("is as found before any work: nothing touched, nothing boxed", () => {
    const { ground: found } = groundAt("found");
    expect(found.worked).toBeNull();
    expect(found.heightAt(x, y)).toEqual({ z: 10, face: FACE.found });
    expect(found.strike({ from: [x, y, 30], along: [0, 0, -1] })?.[2]).toBeCloseTo(10, 9);
  });

  it("boxes what is no longer as found, and tells the survey's points about a place", () => {
    const box = ground.worked;
    if (box === null) throw new Error("expected a box");
    expect(box[0]).toBeLessThan(x);
    expect(box[3]).toBeGreaterThan(y);
    const corner = site.survey.points[0]!;
    expect(ground.pointsAround(corner.x + 0.1, corner.y + 0.1)).toContain(0);
  });
});
