import { describe, expect, it } from "vitest";
import { plainSite } from "../site/site.fixture.js";
import { contourChoices, foundContours } from "./foundContours.js";
import { foundShape } from "./foundPicture.js";

/** A plane: every contour's place must lie on it at the contour's own elevation. */
const height = (x: number, y: number): number => 100 + 0.11 * x + 0.04 * y;

describe("foundContours", () => {
  const site = plainSite({ height });
  const found = foundContours(site);

  it("lie at their elevation, a step apart, every fifth heavy", () => {
    expect(found.step).toBe(0.2);
    expect(found.elevations.length).toBeGreaterThan(20);
    found.elevations.forEach((elevation, i) => {
      expect(elevation / found.step).toBeCloseTo(Math.round(elevation / found.step), 6);
      expect(found.heavy[i]).toBe(Math.round(elevation / found.step) % 5 === 0 ? 1 : 0);
      expect(found.starts[i + 1]! - found.starts[i]!).toBeGreaterThanOrEqual(2);
      for (let at = found.starts[i]!; at < found.starts[i + 1]!; at++) {
        const x = found.places[2 * at]! + found.origin[0];
        const y = found.places[2 * at + 1]! + found.origin[1];
        expect(height(x, y)).toBeCloseTo(elevation, 6);
      }
    });
    expect(2 * found.starts.at(-1)!).toBe(found.places.length);
  });

  it("name the triangle under each leg, and none after a line's last place", () => {
    const { x, y, triangles } = foundShape(site);
    const lasts = new Set([...found.starts].slice(1).map((start) => start - 1));
    found.triangles.forEach((triangle, at) => {
      if (lasts.has(at)) {
        expect(triangle).toBe(-1);
        return;
      }
      const corners = [...triangles.subarray(3 * triangle, 3 * triangle + 3)];
      expect(corners).toHaveLength(3);
      const mx = (found.places[2 * at]! + found.places[2 * at + 2]!) / 2;
      const my = (found.places[2 * at + 1]! + found.places[2 * at + 3]!) / 2;
      corners.forEach((a, k) => {
        const b = corners[(k + 1) % 3]!;
        const off = (x[b]! - x[a]!) * (my - y[a]!) - (y[b]! - y[a]!) * (mx - x[a]!);
        expect(off).toBeGreaterThan(-1e-6);
      });
    });
  });

  it("are made once for a step, and anew for other units", () => {
    expect(foundContours({ ...site, name: "Other" })).toBe(found);
    expect(foundContours({ ...site, units: "us" }).step).toBeCloseTo(0.3048, 9);
  });

  it("take the step that a person chose, where it is one of the site's own", () => {
    expect(contourChoices(site)).toEqual([0.1, 0.2, 0.5, 1, 2]);
    const half = foundContours(site, 0.5);
    expect(half.step).toBe(0.5);
    half.elevations.forEach((elevation) => expect((2 * elevation) % 1).toBeCloseTo(0, 6));
    // Feet in a metric site, and far too many lines: as suits the relief.
    expect(foundContours(site, 0.3048).step).toBe(0.2);
    expect(foundContours(site, 0.001).step).toBe(0.2);
  });
});
