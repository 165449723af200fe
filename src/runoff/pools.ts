/** What stands in the hollows of the ground as found before it spills, m local. */
import { triangleAt, type Tin } from "../ground/index.js";
import type { Flood } from "./pits.js";
import type { WayPoint } from "./trace.js";

/** Water over one hollow, up to where it spills. */
export interface Pool {
  /** Elevation at which it stands. */
  level: number;
  /** Its lowest place and the depth there. */
  lowest: WayPoint;
  depth: number;
  /** m² in plan. */
  area: number;
  /** Its surface: triangles in plan, x y of three corners each. */
  surface: readonly number[];
}

/** The pool that stands to `level` over a place; null off the survey or where the place is dry. */
export function poolAt(tin: Tin, [x, y]: readonly [number, number], level: number): Pool | null {
  const triangle = triangleAt(tin, x, y);
  return triangle < 0 ? null : poolFrom(tin, triangle, level, new Set());
}

/** Every pool of a survey that stands `least` m deep or more, the deepest first. */
export function poolsOf(tin: Tin, { level }: Flood, least: number): Pool[] {
  const seen = new Set<number>();
  const pools: Pool[] = [];
  tin.triangles.forEach((vertex, side) => {
    const triangle = Math.floor(side / 3);
    const stands = level[vertex]!;
    // A dry corner of a wet triangle has a level of its own, which is no pool's.
    if (stands - tin.z[vertex]! < least || stands === tin.z[vertex]! || seen.has(triangle)) return;
    const pool = poolFrom(tin, triangle, stands, seen);
    if (pool !== null) pools.push(pool);
  });
  return pools.sort((a, b) => b.depth - a.depth);
}

/** From one wet triangle over all that are joined to it under water. Marks them as `seen`. */
function poolFrom(tin: Tin, start: number, level: number, seen: Set<number>): Pool | null {
  const surface: number[] = [];
  let lowest: WayPoint = [0, 0, Infinity];
  let area = 0;
  const left = [start];
  seen.add(start);
  for (let t = left.pop(); t !== undefined; t = left.pop()) {
    const corners = Array.from(tin.triangles.subarray(3 * t, 3 * t + 3), (v): WayPoint => [
      tin.x[v]!,
      tin.y[v]!,
      tin.z[v]!,
    ]);
    for (const corner of corners) if (corner[2] < lowest[2]) lowest = corner;
    area += addWet(corners, level, surface);
    for (let k = 0; k < 3; k++) {
      const twin = tin.twins[3 * t + k]!;
      const next = Math.floor(twin / 3);
      // Water reaches over a side when one of its ends lies under it.
      const under = Math.min(corners[k]![2], corners[(k + 1) % 3]![2]) < level;
      if (twin === -1 || !under || seen.has(next)) continue;
      seen.add(next);
      left.push(next);
    }
  }
  return area > 0 ? { level, lowest, depth: level - lowest[2], area, surface } : null;
}

/** Adds what of a triangle lies under `level` to a surface; its area in plan. */
function addWet(corners: readonly WayPoint[], level: number, surface: number[]): number {
  const wet: [number, number][] = [];
  corners.forEach((a, k) => {
    const b = corners[(k + 1) % 3]!;
    if (a[2] < level) wet.push([a[0], a[1]]);
    if (a[2] < level !== b[2] < level) {
      const share = (level - a[2]) / (b[2] - a[2]);
      wet.push([a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])]);
    }
  });
  let area = 0;
  for (let i = 1; i + 1 < wet.length; i++) {
    const [a, b, c] = [wet[0]!, wet[i]!, wet[i + 1]!];
    surface.push(...a, ...b, ...c);
    area += ((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])) / 2;
  }
  return area;
}
