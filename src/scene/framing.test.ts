import { describe, expect, it } from "vitest";
import { PerspectiveCamera, Vector3 } from "three";
import type { ScenePoint } from "./frame.js";
import { fitPerspective, uphillBearing } from "./framing.js";

const lot: ScenePoint[] = [
  [0, 0, 0],
  [60, 5, 3],
  [55, 50, 9],
  [-4, 45, 7],
];

describe("fitPerspective", () => {
  // Against three's own projection, at a desktop's and a phone's shape.
  for (const aspect of [1.6, 1, 0.55]) {
    it(`holds every point of the lot in view and fills it, aspect ${aspect}`, () => {
      const { eye, target } = fitPerspective(
        lot,
        [28, 25, 5],
        { bearing: 24, dip: 36 },
        30,
        aspect,
      );
      const camera = new PerspectiveCamera(30, aspect, 0.5, 4000);
      camera.up.set(0, 0, 1);
      camera.position.set(...eye);
      camera.lookAt(...target);
      camera.updateMatrixWorld();
      const seen = lot.map((p) => new Vector3(...p).project(camera));
      const widest = Math.max(...seen.flatMap((p) => [Math.abs(p.x), Math.abs(p.y)]));
      expect(widest).toBeLessThanOrEqual(1);
      expect(widest).toBeGreaterThan(0.9);
    });
  }
});

describe("fitPerspective with bars over the view", () => {
  // A phone's scene: 390 by 305 px with 44 px taken at the top and 72 at the bottom.
  for (const [aspect, top, bottom] of [
    [390 / 305, 44 / 305, 72 / 305],
    [1.35, 0.07, 0.1],
    [0.6, 0.2, 0.3],
  ] as const) {
    it(`keeps the lot out of them and centred between them, aspect ${aspect.toFixed(2)}`, () => {
      const look = { bearing: 24, dip: 36 };
      const { eye, target } = fitPerspective(lot, [28, 25, 5], look, 30, aspect, { top, bottom });
      const camera = new PerspectiveCamera(30, aspect, 0.5, 4000);
      camera.up.set(0, 0, 1);
      camera.position.set(...eye);
      camera.lookAt(...target);
      camera.updateMatrixWorld();
      const seen = lot.map((p) => new Vector3(...p).project(camera));
      const [high, low] = [Math.max(...seen.map((p) => p.y)), Math.min(...seen.map((p) => p.y))];
      expect(high).toBeLessThanOrEqual(1 - 2 * top);
      expect(low).toBeGreaterThanOrEqual(-1 + 2 * bottom);
      expect(Math.max(...seen.map((p) => Math.abs(p.x)))).toBeLessThanOrEqual(1);
      expect((high + low) / 2).toBeCloseTo(bottom - top, 2);
    });
  }
});

describe("uphillBearing", () => {
  it("looks up the slope", () => {
    expect(
      uphillBearing([
        [0, 0, 0],
        [10, 0, 1],
        [10, 10, 1],
        [0, 10, 0],
      ]),
    ).toBeCloseTo(90, 6);
    expect(
      uphillBearing([
        [0, 0, 0],
        [10, 0, 0],
        [10, 10, 2],
        [0, 10, 2],
      ]),
    ).toBeCloseTo(0, 6);
  });
});
