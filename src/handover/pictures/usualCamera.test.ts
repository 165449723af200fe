import fc from "fast-check";
import { expect, it } from "vitest";
import { exampleJob } from "../job.fixture.js";
import { usualCamera } from "./usualCamera.js";

const { site } = exampleJob("quarry-lane");

const sloping = (east: number, north: number) => ({
  ...site,
  survey: {
    points: Array.from({ length: 25 }, (_, i) => {
      const [x, y] = [i % 5, Math.floor(i / 5)];
      return { id: `p${i}`, x, y, z: east * x + north * y };
    }),
  },
});

it("looks up the slope, a little aside", () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 360, noNaN: true }), (uphill) => {
      const turn = (uphill * Math.PI) / 180;
      const { bearing } = usualCamera(sloping(0.2 * Math.sin(turn), 0.2 * Math.cos(turn)));
      const aside = ((((bearing - uphill) % 360) + 540) % 360) - 180;
      expect(Math.abs(aside)).toBeGreaterThan(15);
      expect(Math.abs(aside)).toBeLessThan(35);
    }),
  );
});

it("looks somewhere on level ground, and on spot heights that lie in a line", () => {
  for (const points of [
    sloping(0, 0).survey.points,
    site.survey.points.slice(0, 1),
    sloping(0.1, 0).survey.points.slice(0, 5),
  ]) {
    expect(Number.isFinite(usualCamera({ ...site, survey: { points } }).bearing)).toBe(true);
  }
});
