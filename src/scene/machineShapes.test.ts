import type { BufferGeometry } from "three";
import { describe, expect, it } from "vitest";
import { craneParts, diggerParts } from "./machineShapes.js";

const SIZES = { width: 2.25, trackLength: 2.8, tailSwing: 1.8, reach: 7.1, bucketWidth: 0.7 };

function boxOf(geometry: BufferGeometry) {
  geometry.computeBoundingBox();
  const { boundingBox } = geometry;
  if (boundingBox === null) throw new Error("got no box, expected one");
  return boundingBox;
}

describe("diggerParts", () => {
  it("has the digger's own width, tracks and tail swing", () => {
    const { body, dark } = diggerParts(SIZES, { ahead: 4, up: -2 });
    expect(boxOf(dark).max.y - boxOf(dark).min.y).toBeCloseTo(2.25, 5);
    expect(boxOf(dark).max.x - boxOf(dark).min.x).toBeCloseTo(2.8, 5);
    const { min, max } = boxOf(body);
    expect(Math.hypot(min.x, max.y)).toBeCloseTo(1.8, 5);
  });

  it("brings its bucket to the place that it digs, and no farther than it reaches", () => {
    const near = boxOf(diggerParts(SIZES, { ahead: 4.5, up: -2 }).arm);
    expect(near.min.z).toBeCloseTo(-2.1, 2);
    const far = boxOf(diggerParts(SIZES, { ahead: 40, up: 0 }).arm);
    expect(far.max.x).toBeLessThan(7.1 + 0.6);
    expect(far.max.x).toBeGreaterThan(6);
  });
});

describe("craneParts", () => {
  it("puts its pads the spread apart and its boom's end at the radius", () => {
    const swing = Math.PI / 2;
    const { dark, arm } = craneParts({ spread: 6.2, padArea: 0.64, radius: 9, rise: 8 }, swing);
    expect(boxOf(dark).max.y - boxOf(dark).min.y).toBeCloseTo(6.2 + 0.8, 5);
    expect(boxOf(arm).max.y).toBeCloseTo(9, 0);
    expect(boxOf(arm).max.x).toBeLessThan(0.5);
  });

  it("has no legs where nobody gave their spread", () => {
    const { dark } = craneParts({ spread: null, padArea: null, radius: 9, rise: 8 }, 0);
    expect(boxOf(dark).max.y).toBeCloseTo(1.25, 5);
  });
});
