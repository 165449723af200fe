import { describe, expect, it } from "vitest";
import type { Site } from "../site/index.js";
import { plainSite, plainTank, plainTrench } from "../site/site.fixture.js";
import { estimate } from "./estimate.js";
import {
  groundTaken,
  makeGround,
  makePicture,
  takeGround,
  takePicture,
  type GroundAhead,
} from "./groundAhead.js";
import { stagePatch } from "./stagePatch.js";

function hill(): Site {
  return plainSite({
    height: (x, y) => 100 + 0.1 * x + 2 * Math.sin(y / 6),
    works: [plainTank({ bearing: 20 }), plainTrench()],
    layers: [0.3, 1],
  });
}

function groundMade(site: Site): GroundAhead {
  const ground = makeGround(site.survey, () => undefined);
  if ("fault" in ground) throw new Error(`expected ground, got ${ground.fault}`);
  return ground;
}

describe("ground made ahead", () => {
  it("goes through a copy, as to another thread, and gives the same figures and patch", () => {
    const [here, there] = [hill(), hill()];
    takeGround(there, structuredClone(groundMade(hill())));
    expect(estimate(there, "plan")).toEqual(estimate(here, "plan"));
    for (const stage of ["found", "dug", "set", "backfilled"] as const) {
      expect(stagePatch(there, "plan", stage)).toEqual(stagePatch(here, "plan", stage));
    }
  });

  it("takes the place of making it: what was taken is what is read", () => {
    const [flat, site] = [plainSite({ works: [plainTank()] }), hill()];
    const level = plainSite({ works: [plainTank()], height: () => 101 });
    // Ground of a survey one metre higher is taken on purpose, so that it shows in the cut.
    takeGround(flat, groundMade(level));
    const cutOf = (of: Site): number => estimate(of, "plan").cut["clay"] ?? 0;
    expect(cutOf(flat)).toBeCloseTo(3 * 2 * 3.2, 9);
    expect(groundTaken(flat.survey)).not.toBeNull();
    expect(groundTaken(site.survey)).toBeNull();
  });

  it("hands its picture and contours on as they are", () => {
    const [here, there] = [hill(), hill()];
    const made = makePicture(here);
    takePicture(there, structuredClone(made));
    expect(makePicture(there)).toEqual(made);
    expect(makePicture(there).picture).toBe(makePicture(there).picture);
    // A patch mixes the picture's normals, so it is the same only when they were taken over.
    expect(stagePatch(there, "plan", "dug")).toEqual(stagePatch(here, "plan", "dug"));
  });

  it("tells how far it is, never backwards and to the end", () => {
    const shares: number[] = [];
    makeGround(hill().survey, (share) => shares.push(share));
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
    for (const share of shares) expect(share).toBeGreaterThanOrEqual(0);
    expect(shares.at(-1)).toBe(1);
  });

  it("says in words why there is no ground", () => {
    const points = [0, 1, 2].map((i) => ({ id: `p${i}`, x: i, y: 2 * i, z: 100 }));
    const ground = makeGround({ points }, () => undefined);
    expect("fault" in ground && ground.fault).toMatch(/one line/);
  });
});
