import { FACE, type GroundMesh } from "../estimate/index.js";
import type { ScenePoint } from "./frame.js";
import { rayMeetsTriangle, type Ray } from "./picking.js";

/** What lies on top at a place in plan. */
export interface SurfaceHit {
  z: number;
  /** Kind of face: see `FACE`. */
  face: number;
}

/** A ground mesh that can be asked for heights and struck by rays, in the scene's frame. */
export interface StageGround {
  /** Top surface at a place in plan; null beyond the survey. */
  heightAt: (x: number, y: number) => SurfaceHit | null;
  /** Nearest place where the ray enters the ground's top or walls; null when it misses. */
  strike: (ray: Ray) => ScenePoint | null;
  /** Plan box [west, south, east, north] of all that is not as found; null when untouched. */
  worked: readonly [number, number, number, number] | null;
}

interface Bins {
  west: number;
  south: number;
  size: number;
  across: number;
  down: number;
  /** Start of each bin's triangles in `members`; one more than there are bins. */
  start: Uint32Array;
  members: Uint32Array;
}

/** Indexes a mesh on a grid of bins. `origin` is the scene frame's origin in site coordinates. */
export function stageGround(mesh: GroundMesh, origin: ScenePoint): StageGround {
  const corners = sceneCorners(mesh, origin);
  const tops = trianglesWhere(mesh, (face) => face !== FACE.block);
  const bins = binTriangles(corners, tops);
  return {
    heightAt: (x, y) => heightIn(bins, corners, mesh, x, y),
    strike: (ray) => strikeAny(corners, tops, ray),
    worked: boxOf(
      corners,
      trianglesWhere(mesh, (face) => face === FACE.dug || face === FACE.filled),
    ),
  };
}

/** Vertices of the mesh in the scene's frame, x y z per vertex. */
export function sceneCorners(mesh: GroundMesh, origin: ScenePoint): Float32Array {
  const shift = [
    mesh.origin[0] - origin[0],
    mesh.origin[1] - origin[1],
    mesh.origin[2] - origin[2],
  ] as const;
  return mesh.positions.map((at, i) => at + (shift[i % 3] ?? 0));
}

function trianglesWhere(mesh: GroundMesh, wanted: (face: number) => boolean): number[] {
  const found: number[] = [];
  for (let t = 0; t * 9 < mesh.positions.length; t++) {
    if (wanted(mesh.faceOf[t * 3] ?? FACE.block)) found.push(t);
  }
  return found;
}

function boxOf(
  corners: Float32Array,
  triangles: readonly number[],
): [number, number, number, number] | null {
  if (triangles.length === 0) return null;
  const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const t of triangles) {
    for (let i = t * 9; i < t * 9 + 9; i += 3) {
      const [x, y] = [corners[i] ?? 0, corners[i + 1] ?? 0];
      box[0] = Math.min(box[0], x);
      box[1] = Math.min(box[1], y);
      box[2] = Math.max(box[2], x);
      box[3] = Math.max(box[3], y);
    }
  }
  return box;
}

/** Bins about as many as triangles, so that each holds a few. */
function binTriangles(corners: Float32Array, triangles: readonly number[]): Bins {
  const box = boxOf(corners, triangles) ?? [0, 0, 1, 1];
  const size = Math.max(
    Math.sqrt(((box[2] - box[0]) * (box[3] - box[1])) / Math.max(1, triangles.length)),
    0.25,
  );
  const across = Math.floor((box[2] - box[0]) / size) + 1;
  const down = Math.floor((box[3] - box[1]) / size) + 1;
  const bins: Bins = {
    west: box[0],
    south: box[1],
    size,
    across,
    down,
    start: new Uint32Array(across * down + 1),
    members: new Uint32Array(0),
  };
  const add = (i: number, by: number) => (bins.start[i] = (bins.start[i] ?? 0) + by);
  for (const t of triangles) eachBin(bins, corners, t, (bin) => add(bin + 1, 1));
  for (let i = 1; i < bins.start.length; i++) add(i, bins.start[i - 1] ?? 0);
  const next = bins.start.slice();
  bins.members = new Uint32Array(bins.start[across * down] ?? 0);
  for (const t of triangles) {
    eachBin(bins, corners, t, (bin) => {
      const place = next[bin] ?? 0;
      bins.members[place] = t;
      next[bin] = place + 1;
    });
  }
  return bins;
}

function eachBin(bins: Bins, corners: Float32Array, t: number, visit: (bin: number) => void): void {
  const box = boxOf(corners, [t]);
  if (box === null) return;
  const column = (x: number) => Math.floor((x - bins.west) / bins.size);
  const row = (y: number) => Math.floor((y - bins.south) / bins.size);
  for (let j = Math.max(0, row(box[1])); j <= Math.min(bins.down - 1, row(box[3])); j++) {
    for (let i = Math.max(0, column(box[0])); i <= Math.min(bins.across - 1, column(box[2])); i++) {
      visit(j * bins.across + i);
    }
  }
}

function heightIn(
  bins: Bins,
  corners: Float32Array,
  mesh: GroundMesh,
  x: number,
  y: number,
): SurfaceHit | null {
  const i = Math.floor((x - bins.west) / bins.size);
  const j = Math.floor((y - bins.south) / bins.size);
  if (i < 0 || j < 0 || i >= bins.across || j >= bins.down) return null;
  const bin = j * bins.across + i;
  let best: SurfaceHit | null = null;
  for (let m = bins.start[bin] ?? 0; m < (bins.start[bin + 1] ?? 0); m++) {
    const t = bins.members[m] ?? 0;
    const z = heightOnTriangle(corners, t * 9, x, y);
    if (z !== null && (best === null || z > best.z)) best = { z, face: mesh.faceOf[t * 3] ?? 0 };
  }
  return best;
}

/** Height of the triangle's plane over (x, y); null outside it or when it stands on edge. */
function heightOnTriangle(c: Float32Array, o: number, x: number, y: number): number | null {
  const [ax, ay, az] = [c[o] ?? 0, c[o + 1] ?? 0, c[o + 2] ?? 0];
  const [bx, by, bz] = [c[o + 3] ?? 0, c[o + 4] ?? 0, c[o + 5] ?? 0];
  const [cx, cy, cz] = [c[o + 6] ?? 0, c[o + 7] ?? 0, c[o + 8] ?? 0];
  const area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
  if (Math.abs(area) < 1e-9) return null;
  const u = ((x - ax) * (cy - ay) - (cx - ax) * (y - ay)) / area;
  const v = ((bx - ax) * (y - ay) - (x - ax) * (by - ay)) / area;
  const slack = -1e-6;
  if (u < slack || v < slack || u + v > 1 - slack) return null;
  return az + u * (bz - az) + v * (cz - az);
}

function strikeAny(
  corners: Float32Array,
  triangles: readonly number[],
  ray: Ray,
): ScenePoint | null {
  let nearest = Infinity;
  for (const t of triangles) {
    const far = rayMeetsTriangle(ray, corners, t * 9);
    if (far !== null && far < nearest) nearest = far;
  }
  if (nearest === Infinity) return null;
  return [
    ray.from[0] + ray.along[0] * nearest,
    ray.from[1] + ray.along[1] * nearest,
    ray.from[2] + ray.along[2] * nearest,
  ];
}
