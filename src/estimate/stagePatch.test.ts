import { describe, expect, it } from "vitest";
import { moveWork, type Site } from "../site/index.js";
import { plainSite, plainTank } from "../site/site.fixture.js";
import { foundPicture, type FoundPicture } from "./foundPicture.js";
import { stagePatch } from "./stagePatch.js";
import { FACE, type GroundMesh } from "./types.js";

/** Plan area of the triangles that are not sides of the block, m². */
function planOf(mesh: GroundMesh): number {
  let plan = 0;
  for (let v = 0; v < mesh.faceOf.length; v += 3) {
    if (mesh.faceOf[v] === FACE.block) continue;
    plan += planArea(mesh.positions, [v, v + 1, v + 2]);
  }
  return plan;
}

function planArea(places: Float32Array, [a, b, c]: readonly [number, number, number]): number {
  const ux = places[3 * b]! - places[3 * a]!;
  const uy = places[3 * b + 1]! - places[3 * a + 1]!;
  const vx = places[3 * c]! - places[3 * a]!;
  const vy = places[3 * c + 1]! - places[3 * a + 1]!;
  return (ux * vy - uy * vx) / 2;
}

function foundArea({ positions, triangles }: FoundPicture, which: Iterable<number>): number {
  let area = 0;
  for (const t of which) {
    area += planArea(positions, [triangles[3 * t]!, triangles[3 * t + 1]!, triangles[3 * t + 2]!]);
  }
  return area;
}

function slopeWith(at: [number, number]): Site {
  return plainSite({
    height: (x, y) => 100 + 0.05 * x - 0.03 * y,
    works: [plainTank({ at, bearing: 30, overdig: 0.5 })],
    layers: [0.3, 1],
  });
}

describe("stagePatch", () => {
  it("is nothing before any work", () => {
    const patch = stagePatch(slopeWith([0, 0]), "plan", "found");
    expect(patch.touched).toHaveLength(0);
    expect(patch.mesh.positions).toHaveLength(0);
  });

  it("covers in plan just the triangles whose place it takes", () => {
    const site = slopeWith([3, 4]);
    const patch = stagePatch(site, "plan", "dug");
    expect(patch.touched.length).toBeGreaterThan(0);
    expect(patch.touched.length).toBeLessThan(foundPicture(site).triangles.length / 3);
    expect(planOf(patch.mesh)).toBeCloseTo(foundArea(foundPicture(site), patch.touched), 3);
  });

  it("knows at every vertex how far the ground lies under that as found", () => {
    const site = slopeWith([3, 4]);
    const { mesh, depths, deepest, highest } = stagePatch(site, "plan", "dug");
    expect(depths).toHaveLength(mesh.faceOf.length);
    let most = 0;
    depths.forEach((depth, v) => {
      const at = (k: 0 | 1 | 2): number => mesh.origin[k] + mesh.positions[3 * v + k]!;
      expect(depth).toBeCloseTo(100 + 0.05 * at(0) - 0.03 * at(1) - at(2), 4);
      if (mesh.faceOf[v] === FACE.found) expect(Math.abs(depth)).toBeLessThan(1e-6);
      most = Math.max(most, depth);
    });
    expect(most).toBeGreaterThan(1);
    expect(deepest).toBe(most);
    expect(highest).toBeLessThan(1e-6);
  });

  it("takes along the side of the block under a triangle at the edge, and no other", () => {
    const inside = stagePatch(slopeWith([3, 4]), "plan", "dug");
    expect(inside.mesh.faceOf).not.toContain(FACE.block);
    const atEdge = stagePatch(slopeWith([-18, 3]), "plan", "dug");
    const found = foundPicture(slopeWith([-18, 3]));
    expect([...found.sideTriangles].some((t) => atEdge.touched.includes(t))).toBe(true);
    expect(atEdge.mesh.faceOf).toContain(FACE.block);
  });
});

describe("foundPicture", () => {
  it("is made once for a survey: a work that moves leaves it as it is", () => {
    const site = slopeWith([0, 0]);
    const before = structuredClone(foundPicture(site));
    stagePatch(site, "plan", "dug");
    const moved = moveWork(site, "plan", "tank", [2, 1]);
    stagePatch(moved, "plan", "dug");
    expect(foundPicture(moved)).toBe(foundPicture(site));
    expect(foundPicture(moved)).toEqual(before);
  });

  it("is made again when layers change, since the block's sides show them", () => {
    const site = slopeWith([0, 0]);
    const { probes } = site.ground;
    const deeper = probes.map((probe) => ({ ...probe, thickness: [0.6, 1] }));
    const other = { ...site, ground: { ...site.ground, probes: deeper } };
    expect(foundPicture(other)).not.toBe(foundPicture(site));
    expect(foundPicture(other).block.positions).not.toEqual(foundPicture(site).block.positions);
  });

  it("has the slope's own normal at every vertex, and the whole survey in plan", () => {
    const found = foundPicture(slopeWith([0, 0]));
    const length = Math.hypot(0.05, 0.03, 1);
    for (let i = 0; i < found.normals.length; i += 3) {
      expect(found.normals[i]).toBeCloseTo(-0.05 / length, 6);
      expect(found.normals[i + 1]).toBeCloseTo(0.03 / length, 6);
      expect(found.normals[i + 2]).toBeCloseTo(1 / length, 6);
    }
    const all = Array.from({ length: found.triangles.length / 3 }, (_, t) => t);
    expect(foundArea(found, all)).toBeCloseTo(1600, 3);
    expect(found.sides.at(-1)).toBe(found.block.faceOf.length);
  });
});
