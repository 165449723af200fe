import { FACE, type FoundShape, type StagePatch } from "../estimate/index.js";
import type { ScenePoint } from "./frame.js";
import { patchGround, type PatchGround, type SurfaceHit } from "./patchGround.js";
import { meetsBox, rayMeetsCorners, type Ray } from "./picking.js";

/** The ground at a stage, to be asked for heights and struck by rays, in the scene's frame. */
export interface StageGround {
  /** Top surface at a place in plan; null beyond the survey. */
  heightAt: (x: number, y: number) => SurfaceHit | null;
  /** Nearest place where the ray enters the ground's top or walls; null when it misses. */
  strike: (ray: Ray) => ScenePoint | null;
  /** Plan box [west, south, east, north] of all that is not as found; null when untouched. */
  worked: readonly [number, number, number, number] | null;
  /** True for a triangle of the survey that a work has touched. */
  isTouched: (triangle: number) => boolean;
  /** Numbers of the survey's points at the corners of the triangle under a place. */
  pointsAround: (x: number, y: number) => readonly number[];
}

/** m that a place may lie outside a triangle and still be on it: positions are rounded for drawing. */
const SLACK = 1e-4;

/**
 * The ground of a stage: triangles as found but for those that the patch stands in for. `origin` is
 * the scene frame's origin in site coordinates; null is the ground as found.
 */
export function stageGround(
  shape: FoundShape,
  patch: StagePatch | null,
  origin: ScenePoint,
): StageGround {
  const touched = new Uint8Array(shape.triangles.length / 3);
  for (const triangle of patch?.touched ?? []) touched[triangle] = 1;
  const worked = patch === null ? null : patchGround(patch.mesh);
  const [sx, sy, sz] = [
    shape.origin[0] - origin[0],
    shape.origin[1] - origin[1],
    shape.origin[2] - origin[2],
  ];
  const box = worked?.worked ?? null;
  return {
    heightAt: (x, y) => {
      const hit = heightIn(shape, touched, worked, x - sx, y - sy);
      return hit && { z: hit.z + sz, face: hit.face };
    },
    strike: (ray) => {
      const [x, y, z] = ray.from;
      const local: Ray = { from: [x - sx, y - sy, z - sz], along: ray.along };
      const far = Math.min(strikeFound(shape, touched, local), worked?.strike(local) ?? Infinity);
      if (far === Infinity) return null;
      return [x + ray.along[0] * far, y + ray.along[1] * far, z + ray.along[2] * far];
    },
    worked: box && [box[0] + sx, box[1] + sy, box[2] + sx, box[3] + sy],
    isTouched: (triangle) => touched[triangle] === 1,
    pointsAround: (x, y) => {
      const triangle = trianglesAt(shape, x - sx, y - sy)[0];
      if (triangle === undefined) return [];
      const vertices = shape.triangles.subarray(3 * triangle, 3 * triangle + 3);
      return Array.from(vertices, (vertex) => shape.points[vertex]).filter((p) => p !== undefined);
    },
  };
}

/** The highest of what lies at a place: along a wall there are two heights. */
function heightIn(
  shape: FoundShape,
  touched: Uint8Array,
  worked: PatchGround | null,
  x: number,
  y: number,
): SurfaceHit | null {
  let best: SurfaceHit | null = null;
  let isWorked = false;
  for (const triangle of trianglesAt(shape, x, y)) {
    if (touched[triangle] === 1) {
      isWorked = true;
      continue;
    }
    const z = planeHeight(shape, triangle, x, y);
    if (best === null || z > best.z) best = { z, face: FACE.found };
  }
  const over = isWorked ? (worked?.heightAt(x, y) ?? null) : null;
  return over !== null && (best === null || over.z >= best.z) ? over : best;
}

/** Triangles of the survey that hold a place: one, or those about an edge or corner. */
function trianglesAt(shape: FoundShape, x: number, y: number): number[] {
  const found: number[] = [];
  const count = shape.triangles.length / 3;
  for (const box of shape.boxesAt(x, y, SLACK)) {
    const end = Math.min(count, shape.blockSize * (box + 1));
    for (let t = shape.blockSize * box; t < end; t++) if (isOn(shape, t, x, y)) found.push(t);
  }
  return found;
}

function isOn(shape: FoundShape, triangle: number, x: number, y: number): boolean {
  const { triangles } = shape;
  for (let k = 0; k < 3; k++) {
    const a = triangles[3 * triangle + k]!;
    const b = triangles[3 * triangle + ((k + 1) % 3)]!;
    const ex = shape.x[b]! - shape.x[a]!;
    const ey = shape.y[b]! - shape.y[a]!;
    const off = ex * (y - shape.y[a]!) - ey * (x - shape.x[a]!);
    // The slack is a share of the side's length, as the height over it would be of a triangle.
    if (off < -1e-6 * (ex * ex + ey * ey)) return false;
  }
  return true;
}

function planeHeight(shape: FoundShape, triangle: number, x: number, y: number): number {
  const a = shape.triangles[3 * triangle]!;
  const b = shape.triangles[3 * triangle + 1]!;
  const c = shape.triangles[3 * triangle + 2]!;
  const [ax, ay, az] = [shape.x[a]!, shape.y[a]!, shape.z[a]!];
  const [ux, uy] = [shape.x[b]! - ax, shape.y[b]! - ay];
  const [vx, vy] = [shape.x[c]! - ax, shape.y[c]! - ay];
  const area = ux * vy - vx * uy;
  if (area === 0) return az;
  const u = ((x - ax) * vy - vx * (y - ay)) / area;
  const v = (ux * (y - ay) - (x - ax) * uy) / area;
  return az + u * (shape.z[b]! - az) + v * (shape.z[c]! - az);
}

/** How far along the ray the ground as found is met where nothing has touched it. */
function strikeFound(shape: FoundShape, touched: Uint8Array, ray: Ray): number {
  const { boxes, blockSize, triangles } = shape;
  const count = triangles.length / 3;
  let nearest = Infinity;
  const corners = new Float64Array(9);
  for (let box = 0; box < boxes.west.length; box++) {
    const low = [boxes.west[box]!, boxes.south[box]!, boxes.lowest[box]!] as const;
    const high = [boxes.east[box]!, boxes.north[box]!, boxes.highest[box]!] as const;
    if (!meetsBox(ray, low, high)) continue;
    const end = Math.min(count, blockSize * (box + 1));
    for (let t = blockSize * box; t < end; t++) {
      if (touched[t] === 1) continue;
      putCorners(corners, shape, t);
      const far = rayMeetsCorners(ray, corners, 0);
      if (far < nearest) nearest = far;
    }
  }
  return nearest;
}

function putCorners(corners: Float64Array, shape: FoundShape, triangle: number): void {
  for (let k = 0; k < 3; k++) {
    const vertex = shape.triangles[3 * triangle + k]!;
    corners[3 * k] = shape.x[vertex]!;
    corners[3 * k + 1] = shape.y[vertex]!;
    corners[3 * k + 2] = shape.z[vertex]!;
  }
}
