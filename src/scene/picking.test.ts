import { describe, expect, it } from "vitest";
import {
  distanceToPath,
  insideOutline,
  meetsBox,
  rayMeetsLevel,
  rayMeetsPrism,
  rayMeetsCorners,
  signedArea,
  workUnder,
  type PickTarget,
  type Ray,
} from "./picking.js";
import { rectangle } from "../estimate/index.js";

const down = (x: number, y: number): Ray => ({ from: [x, y, 50], along: [0, 0, -1] });

describe("rays", () => {
  it("meet a triangle from either side, and miss beside it", () => {
    const corners = Float64Array.from([0, 0, 2, 4, 0, 2, 0, 4, 2]);
    expect(rayMeetsCorners(down(1, 1), corners, 0)).toBeCloseTo(48, 9);
    expect(rayMeetsCorners({ from: [1, 1, 0], along: [0, 0, 1] }, corners, 0)).toBeCloseTo(2, 9);
    expect(rayMeetsCorners(down(3, 3), corners, 0)).toBe(Infinity);
    const behind: Ray = { from: [1, 1, 0], along: [0, 0, -1] };
    expect(rayMeetsCorners(behind, corners, 0)).toBe(Infinity);
  });

  it("cross a level only ahead of the eye", () => {
    expect(rayMeetsLevel({ from: [0, 0, 10], along: [1, 0, -1] }, 4)).toEqual([6, 0]);
    expect(rayMeetsLevel({ from: [0, 0, 10], along: [1, 0, 1] }, 4)).toBeNull();
    expect(rayMeetsLevel({ from: [0, 0, 10], along: [1, 0, 0] }, 4)).toBeNull();
  });

  it("meet a prism at its roof or at its nearest wall", () => {
    const prism = { outline: rectangle([0, 0], 0, 4, 2), bottom: 0, top: 3 };
    expect(rayMeetsPrism(down(0, 0), prism)).toBeCloseTo(47, 9);
    expect(rayMeetsPrism({ from: [-10, 0, 1], along: [1, 0, 0] }, prism)).toBeCloseTo(9, 9);
    expect(rayMeetsPrism({ from: [-10, 0, 4], along: [1, 0, 0] }, prism)).toBeNull();
  });
});

describe("meetsBox", () => {
  it("is true of rays that pass through a box and false of those that pass by it", () => {
    const box = [
      [0, 0, 0],
      [2, 3, 1],
    ] as const;
    expect(meetsBox(down(1, 1), ...box)).toBe(true);
    expect(meetsBox(down(1, 4), ...box)).toBe(false);
    expect(meetsBox({ from: [-5, 1, 0.5], along: [1, 0, 0] }, ...box)).toBe(true);
    expect(meetsBox({ from: [-5, 1, 0.5], along: [1, 1, 0] }, ...box)).toBe(false);
  });
});

describe("plan", () => {
  it("tells inside from outside of a concave outline", () => {
    const notch = [
      [0, 0],
      [4, 0],
      [4, 4],
      [2, 1],
      [0, 4],
    ] as [number, number][];
    expect(insideOutline([2, 0.5], notch)).toBe(true);
    expect(insideOutline([2, 3], notch)).toBe(false);
    expect(insideOutline([2, 0.5], [...notch].reverse())).toBe(true);
  });

  it("measures to the nearest leg of a path, ends included", () => {
    expect(
      distanceToPath(
        [2, 1],
        [
          [0, 0],
          [4, 0],
          [4, 4],
        ],
      ),
    ).toBeCloseTo(1, 9);
    expect(
      distanceToPath(
        [-3, 4],
        [
          [0, 0],
          [4, 0],
        ],
      ),
    ).toBeCloseTo(5, 9);
  });

  it("signs the area by the way round", () => {
    expect(
      signedArea([
        [0, 0],
        [2, 0],
        [2, 3],
        [0, 3],
      ]),
    ).toBe(6);
    expect(
      signedArea([
        [0, 3],
        [2, 3],
        [2, 0],
        [0, 0],
      ]),
    ).toBe(-6);
  });
});

describe("workUnder", () => {
  const pad: PickTarget = {
    id: "pad",
    body: null,
    footprint: rectangle([0, 0], 0, 20, 20),
    path: null,
    halfWidth: 0,
  };
  const bed: PickTarget = {
    id: "bed",
    body: { outline: rectangle([0, 0], 0, 4, 4), bottom: 0, top: 1 },
    footprint: rectangle([0, 0], 0, 4, 4),
    path: null,
    halfWidth: 0,
  };
  const trench: PickTarget = {
    id: "trench",
    body: null,
    footprint: null,
    path: [
      [5, -8],
      [5, 8],
    ],
    halfWidth: 0.3,
  };
  const all = [pad, bed, trench];

  it("takes what stands up before what lies under it", () => {
    expect(workUnder(down(0, 0), all, [0, 0, 0], 0)).toBe("bed");
    expect(workUnder(down(8, 0), all, [8, 0, 0], 0)).toBe("pad");
    expect(workUnder(down(30, 0), all, [30, 0, 0], 0)).toBeNull();
  });

  it("does not see a body through a hill", () => {
    const ray: Ray = { from: [-60, 0, 0.5], along: [1, 0, 0] };
    expect(workUnder(ray, [bed], [-30, 0, 0.5], 0)).toBeNull();
    expect(workUnder(ray, [bed], null, 0)).toBe("bed");
  });

  it("lets a thin trench be hit from afar, before the pad that it crosses", () => {
    expect(workUnder(down(5.2, 0), all, [5.2, 0, 0], 0)).toBe("trench");
    expect(workUnder(down(6, 0), all, [6, 0, 0], 0)).toBe("pad");
    expect(workUnder(down(6, 0), all, [6, 0, 0], 1.2)).toBe("trench");
    expect(workUnder(down(2.5, 0), all, [2.5, 0, 0], 0)).toBe("pad");
    expect(workUnder(down(2.5, 0), all, [2.5, 0, 0], 1.2)).toBe("bed");
  });
});
