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

/**
 * Distance along the ray (in lengths of `along`) to the triangle whose nine coordinates begin at
 * `offset`, from either side; infinite if missed.
 */
export function rayMeetsCorners(
  { from, along }: Ray,
  c: Float32Array | Float64Array,
  offset: number,
): number {
  const dx = along[0];
  const dy = along[1];
  const dz = along[2];
  const ax = c[offset]!;
  const ay = c[offset + 1]!;
  const az = c[offset + 2]!;
  const e1x = c[offset + 3]! - ax;
  const e1y = c[offset + 4]! - ay;
  const e1z = c[offset + 5]! - az;
  const e2x = c[offset + 6]! - ax;
  const e2y = c[offset + 7]! - ay;
  const e2z = c[offset + 8]! - az;
  const px = dy * e2z - dz * e2y;
  const py = dz * e2x - dx * e2z;
  const pz = dx * e2y - dy * e2x;
  const determinant = e1x * px + e1y * py + e1z * pz;
  if (Math.abs(determinant) < 1e-12) return Infinity;
  const sx = from[0] - ax;
  const sy = from[1] - ay;
  const sz = from[2] - az;
  const u = (sx * px + sy * py + sz * pz) / determinant;
  if (u < -1e-7 || u > 1 + 1e-7) return Infinity;
  const qx = sy * e1z - sz * e1y;
  const qy = sz * e1x - sx * e1z;
  const qz = sx * e1y - sy * e1x;
  const v = (dx * qx + dy * qy + dz * qz) / determinant;
  if (v < -1e-7 || u + v > 1 + 1e-7) return Infinity;
  const far = (e2x * qx + e2y * qy + e2z * qz) / determinant;
  return far > 1e-7 ? far : Infinity;
}

/** A sure but not exact test: false when the ray, drawn out both ways, misses the box. */
export function meetsBox({ from, along }: Ray, low: ScenePoint, high: ScenePoint): boolean {
  let near = -Infinity;
  let far = Infinity;
  for (const axis of AXES) {
    const step = along[axis];
    // A little room: what is drawn has been rounded to 32 bits.
    const under = low[axis] - BOX_SLACK - from[axis];
    const over = high[axis] + BOX_SLACK - from[axis];
    if (step === 0) {
      if (under > 0 || over < 0) return false;
      continue;
    }
    const [first, last] = step > 0 ? [under / step, over / step] : [over / step, under / step];
    if (first > near) near = first;
    if (last < far) far = last;
  }
  return near <= far;
}

const AXES = [0, 1, 2] as const;
/** m. */
const BOX_SLACK = 1e-3;

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
