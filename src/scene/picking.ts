import type { PlanPoint } from "../site/index.js";
import type { ScenePoint } from "./frame.js";

/** A half-line in the scene's frame; `along` need not be a unit vector. */
export interface Ray {
  from: ScenePoint;
  along: ScenePoint;
}

/** Something that stands up and can be pointed at: an upright prism, scene frame. */
export interface Prism {
  outline: readonly PlanPoint[];
  bottom: number;
  top: number;
}

/** Distance along the ray (in lengths of `along`) to a triangle, from either side; null if missed. */
export function rayMeetsTriangle(
  ray: Ray,
  corners: ArrayLike<number>,
  offset: number,
): number | null {
  const c = (i: number): number => corners[offset + i] ?? 0;
  const [dx, dy, dz] = ray.along;
  const [e1x, e1y, e1z] = [c(3) - c(0), c(4) - c(1), c(5) - c(2)];
  const [e2x, e2y, e2z] = [c(6) - c(0), c(7) - c(1), c(8) - c(2)];
  const [px, py, pz] = [dy * e2z - dz * e2y, dz * e2x - dx * e2z, dx * e2y - dy * e2x];
  const determinant = e1x * px + e1y * py + e1z * pz;
  if (Math.abs(determinant) < 1e-12) return null;
  const [sx, sy, sz] = [ray.from[0] - c(0), ray.from[1] - c(1), ray.from[2] - c(2)];
  const u = (sx * px + sy * py + sz * pz) / determinant;
  if (u < -1e-7 || u > 1 + 1e-7) return null;
  const [qx, qy, qz] = [sy * e1z - sz * e1y, sz * e1x - sx * e1z, sx * e1y - sy * e1x];
  const v = (dx * qx + dy * qy + dz * qz) / determinant;
  if (v < -1e-7 || u + v > 1 + 1e-7) return null;
  const far = (e2x * qx + e2y * qy + e2z * qz) / determinant;
  return far > 1e-7 ? far : null;
}

/** Place where the ray crosses the level z, ahead of its start; null when it never does. */
export function rayMeetsLevel(ray: Ray, z: number): PlanPoint | null {
  if (Math.abs(ray.along[2]) < 1e-9) return null;
  const far = (z - ray.from[2]) / ray.along[2];
  if (far <= 0) return null;
  return [ray.from[0] + ray.along[0] * far, ray.from[1] + ray.along[1] * far];
}

/** True when the place lies inside the simple polygon (either direction). */
export function insideOutline(at: PlanPoint, outline: readonly PlanPoint[]): boolean {
  let inside = false;
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length] ?? a;
    if (a[1] > at[1] === b[1] > at[1]) return;
    const x = a[0] + ((at[1] - a[1]) / (b[1] - a[1])) * (b[0] - a[0]);
    if (x > at[0]) inside = !inside;
  });
  return inside;
}

/** Distance along the ray to an upright prism, from outside it; null if missed. */
export function rayMeetsPrism(ray: Ray, prism: Prism): number | null {
  const distances: number[] = [];
  const roof = rayMeetsLevel(ray, prism.top);
  if (roof !== null && insideOutline(roof, prism.outline)) {
    distances.push((prism.top - ray.from[2]) / ray.along[2]);
  }
  prism.outline.forEach((a, i) => {
    const b = prism.outline[(i + 1) % prism.outline.length] ?? a;
    const far = rayMeetsWall(ray, a, b);
    if (far === null) return;
    const z = ray.from[2] + ray.along[2] * far;
    if (z >= prism.bottom && z <= prism.top) distances.push(far);
  });
  return distances.length === 0 ? null : Math.min(...distances);
}

function rayMeetsWall(ray: Ray, a: PlanPoint, b: PlanPoint): number | null {
  const [ex, ey] = [b[0] - a[0], b[1] - a[1]];
  const cross = ray.along[0] * ey - ray.along[1] * ex;
  if (Math.abs(cross) < 1e-12) return null;
  const [sx, sy] = [a[0] - ray.from[0], a[1] - ray.from[1]];
  const far = (sx * ey - sy * ex) / cross;
  const share = (sx * ray.along[1] - sy * ray.along[0]) / cross;
  return far > 0 && share >= 0 && share <= 1 ? far : null;
}

/** Distance in plan from a place to a polyline, m. */
export function distanceToPath(at: PlanPoint, path: readonly PlanPoint[]): number {
  let least = Infinity;
  path.forEach((a, i) => {
    const b = path[i + 1] ?? a;
    least = Math.min(least, distanceToLeg(at, a, b));
  });
  return least;
}

function distanceToLeg(at: PlanPoint, a: PlanPoint, b: PlanPoint): number {
  const [ex, ey] = [b[0] - a[0], b[1] - a[1]];
  const length2 = ex * ex + ey * ey;
  const share = length2 === 0 ? 0 : ((at[0] - a[0]) * ex + (at[1] - a[1]) * ey) / length2;
  const held = Math.min(1, Math.max(0, share));
  return Math.hypot(at[0] - a[0] - held * ex, at[1] - a[1] - held * ey);
}

/** One work as the pointer sees it. */
export interface PickTarget {
  id: string;
  /** Its body above ground, if it shows one. */
  body: Prism | null;
  /** Its footprint in plan; null for a trench, which is picked by its path. */
  footprint: readonly PlanPoint[] | null;
  path: readonly PlanPoint[] | null;
  /** Half the width of the path that can be hit, m. */
  halfWidth: number;
}

/**
 * Id of the work under the pointer: the nearest body that the ray meets before the ground, or else
 * the smallest footprint that holds the place where the ray meets the ground; null for none.
 * `slack` (m) widens what can be hit, so that a thin trench or a small tank can be hit from afar.
 */
export function workUnder(
  ray: Ray,
  targets: readonly PickTarget[],
  ground: ScenePoint | null,
  slack: number,
): string | null {
  const length = Math.hypot(...ray.along);
  const groundFar =
    ground === null
      ? Infinity
      : Math.hypot(ground[0] - ray.from[0], ground[1] - ray.from[1], ground[2] - ray.from[2]);
  let best: { id: string; far: number } | null = null;
  for (const target of targets) {
    const met = target.body === null ? null : rayMeetsPrism(ray, target.body);
    if (met === null) continue;
    const far = met * length;
    if (far <= groundFar + 0.3 && (best === null || far < best.far)) best = { id: target.id, far };
  }
  if (best !== null || ground === null) return best?.id ?? null;
  return footprintUnder([ground[0], ground[1]], targets, slack);
}

function footprintUnder(
  at: PlanPoint,
  targets: readonly PickTarget[],
  slack: number,
): string | null {
  let best: { id: string; size: number } | null = null;
  for (const target of targets) {
    const size = sizeIfHit(at, target, slack);
    if (size !== null && (best === null || size < best.size)) best = { id: target.id, size };
  }
  return best?.id ?? null;
}

function sizeIfHit(at: PlanPoint, target: PickTarget, slack: number): number | null {
  if (target.path !== null) {
    const off = distanceToPath(at, target.path);
    // A path wins over the pad that it crosses, but not over the tank that it ends in.
    return off <= Math.max(target.halfWidth, slack) ? 30 : null;
  }
  const first = target.footprint?.[0];
  if (target.footprint === null || first === undefined) return null;
  const near =
    insideOutline(at, target.footprint) ||
    distanceToPath(at, [...target.footprint, first]) <= slack * 0.6;
  if (!near) return null;
  return Math.abs(signedArea(target.footprint));
}

/** Area of a simple polygon, m²; positive when it runs counter-clockwise. */
export function signedArea(outline: readonly PlanPoint[]): number {
  let twice = 0;
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length] ?? a;
    twice += a[0] * b[1] - b[0] * a[1];
  });
  return twice / 2;
}
