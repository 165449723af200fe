import type { Site } from "../site/index.js";
import { foundPicture } from "./foundPicture.js";
import { MeshBuilder, type Vector } from "./meshBuilder.js";
import { stagePatch } from "./stagePatch.js";
import { FACE, type GroundMesh, type Stage } from "./types.js";

/**
 * The ground at a stage of the job as triangles: its surface, the vertical walls of holes with
 * their layers, the sides of the block at the survey's edge, and the crisp edges of works. Tanks
 * and pipes are left out: they are drawn as things. Pure; throws like `estimate`.
 */
export function stageMesh(site: Site, schemeId: string, stage: Stage): GroundMesh {
  const found = foundPicture(site);
  const patch = stagePatch(site, schemeId, stage);
  const isTouched = new Uint8Array(found.triangles.length / 3);
  for (const triangle of patch.touched) isTouched[triangle] = 1;
  const mesh = new MeshBuilder();
  const material = mesh.numberOf(found.material);
  const at = (array: Float32Array, vertex: number): Vector => [
    array[3 * vertex]!,
    array[3 * vertex + 1]!,
    array[3 * vertex + 2]!,
  ];
  found.triangles.forEach((vertex, side) => {
    if (isTouched[Math.floor(side / 3)] === 1) return;
    mesh.vertex(at(found.positions, vertex), at(found.normals, vertex), material, FACE.found);
  });
  found.sideTriangles.forEach((triangle, side) => {
    if (isTouched[triangle] === 1) return;
    mesh.copy(found.block, found.sides[side], found.sides[side + 1]);
  });
  mesh.copy(patch.mesh);
  return { ...mesh.build(found.origin), edges: patch.mesh.edges };
}
