import { describe, expect, it } from "vitest";
import type { Site } from "../site/index.js";
import { plainPad, plainSite, plainTank } from "../site/site.fixture.js";
import { stageMesh } from "./stageMesh.js";
import { FACE, type GroundMesh, type Stage } from "./types.js";

/** Sums over the triangles of some faces: plan area, and area of those that stand upright. */
function areas(mesh: GroundMesh, faces: readonly number[]): { plan: number; upright: number } {
  let [plan, upright] = [0, 0];
  for (let v = 0; v < mesh.faceOf.length; v += 3) {
    if (!faces.includes(mesh.faceOf[v]!)) continue;
    const at = (k: number, axis: number): number => mesh.positions[3 * (v + k) + axis]!;
    const side = (k: number): number[] => [0, 1, 2].map((axis) => at(k, axis) - at(0, axis));
    const [ux, uy, uz] = side(1) as [number, number, number];
    const [vx, vy, vz] = side(2) as [number, number, number];
    const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const normal = [0, 1, 2].map((axis) => mesh.normals[3 * v + axis]!);
    expect(nx * normal[0]! + ny * normal[1]! + nz * normal[2]!).toBeGreaterThanOrEqual(0);
    plan += nz / 2;
    if (Math.abs(nz) < 1e-6 * Math.hypot(nx, ny)) upright += Math.hypot(nx, ny) / 2;
  }
  return { plan, upright };
}

function meshOf(site: Site, stage: Stage): GroundMesh {
  const mesh = stageMesh(site, "plan", stage);
  for (const at of mesh.positions) expect(Number.isFinite(at)).toBe(true);
  return mesh;
}

const all = [FACE.found, FACE.dug, FACE.filled];

describe("stageMesh", () => {
  const site = plainSite({ works: [plainTank({ bearing: 30, overdig: 0.5 })], layers: [0.3, 1] });

  it("as found is the whole survey in plan, with the block's sides around it", () => {
    const mesh = meshOf(site, "found");
    expect(areas(mesh, all).plan).toBeCloseTo(1600, 3);
    expect(areas(mesh, [FACE.dug, FACE.filled]).plan).toBe(0);
    expect(areas(mesh, [FACE.block]).upright).toBeCloseTo(4 * 40 * 2, 2);
  });

  it("dug has the hole's floor in plan and its walls standing, in three materials", () => {
    const mesh = meshOf(site, "dug");
    const dug = areas(mesh, [FACE.dug]);
    expect(dug.plan).toBeCloseTo(4 * 3, 3);
    expect(dug.upright).toBeCloseTo(2 * (4 + 3) * 2.2, 3);
    expect(areas(mesh, all).plan).toBeCloseTo(1600, 3);
    expect([...mesh.materials].sort()).toEqual(["clay", "shelf-rock", "topsoil"]);
  });

  it("set leaves the tank out, for it is drawn as a thing, and stands its hole's walls", () => {
    const mesh = meshOf(site, "set");
    expect(areas(mesh, all).plan).toBeCloseTo(1600 - 3 * 2, 3);
    expect(areas(mesh, [FACE.dug]).upright).toBeCloseTo(2 * (4 + 3) * 2, 3);
  });

  it("backfilled is whole again and flat", () => {
    const mesh = meshOf(site, "backfilled");
    expect(areas(mesh, all).plan).toBeCloseTo(1600, 3);
    expect(areas(mesh, all).upright).toBe(0);
  });

  it("stands a course's edge above lower ground beside it", () => {
    const pad = plainPad({ top: 100.2, course: { depth: 0.2, material: "crushed-gravel" } });
    const mesh = meshOf(plainSite({ works: [pad] }), "bedded");
    expect(areas(mesh, all).upright).toBeCloseTo(2 * (6 + 4) * 0.2, 3);
  });
});
