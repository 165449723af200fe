import type { BufferAttribute, BufferGeometry } from "three";
import { describe, expect, it } from "vitest";
import { foundPicture, stagePatch } from "../estimate/index.js";
import { materialsOf } from "../site/index.js";
import { plainSite, plainTank } from "../site/site.fixture.js";
import { foundGeometry, HideableTriangles, sideGeometry } from "./groundGeometry.js";

function setUp() {
  const site = plainSite({ works: [plainTank({ at: [-18, 3] })] });
  const found = foundPicture(site);
  const top = foundGeometry(found);
  const side = sideGeometry(found, materialsOf(site));
  return { site, found, top, side, hidden: new HideableTriangles(top, side, found) };
}

function indexOf({ index }: BufferGeometry): BufferAttribute {
  if (index === null) throw new Error("got no index, expected one");
  return index;
}

/** Numbers of the triangles that have no extent. */
function goneFrom(geometry: BufferGeometry): number[] {
  const { array } = indexOf(geometry);
  const gone: number[] = [];
  for (let t = 0; 3 * t < array.length; t++) {
    if (array[3 * t] === array[3 * t + 1] && array[3 * t] === array[3 * t + 2]) gone.push(t);
  }
  return gone;
}

describe("HideableTriangles", () => {
  it("hides just the triangles told, and shows again those of the time before", () => {
    const { top, hidden, found } = setUp();
    hidden.hide(Uint32Array.of(2, 5, 6));
    expect(goneFrom(top)).toEqual([2, 5, 6]);
    hidden.hide(Uint32Array.of(5, 9));
    expect(goneFrom(top)).toEqual([5, 9]);
    hidden.hide(new Uint32Array());
    expect([...indexOf(top).array]).toEqual([...found.triangles]);
  });

  it("sends no more than what has changed", () => {
    const { top, hidden } = setUp();
    hidden.hide(Uint32Array.of(4, 5));
    expect(indexOf(top).updateRanges).toEqual([{ start: 12, count: 6 }]);
    const version = indexOf(top).version;
    indexOf(top).clearUpdateRanges();
    hidden.hide(Uint32Array.of(4, 5));
    expect(indexOf(top).updateRanges).toEqual([]);
    expect(indexOf(top).version).toBe(version);
  });

  it("hides the block's sides under hidden triangles at the edge, and never the picture's own", () => {
    const { site, found, top, side, hidden } = setUp();
    const own = found.triangles.slice();
    const { touched } = stagePatch(site, "plan", "dug");
    hidden.hide(touched);
    const gone = new Set(goneFrom(side));
    found.sideTriangles.forEach((triangle, i) => {
      for (let v = found.sides[i]!; v < found.sides[i + 1]!; v += 3) {
        expect(gone.has(v / 3)).toBe(touched.includes(triangle));
      }
    });
    expect(gone.size).toBeGreaterThan(0);
    expect(goneFrom(top)).toEqual([...touched].sort((a, b) => a - b));
    expect(found.triangles).toEqual(own);
  });
});
