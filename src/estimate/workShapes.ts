import type { PlanPoint, Trench, Work } from "../site/index.js";

/** Corners of a rectangle by its centre, bearing of its long side (degrees), m; counter-clockwise. */
export function rectangle(
  at: PlanPoint,
  bearing: number,
  length: number,
  width: number,
): PlanPoint[] {
  const turn = (bearing * Math.PI) / 180;
  const [ax, ay] = [(Math.sin(turn) * length) / 2, (Math.cos(turn) * length) / 2];
  const [bx, by] = [(Math.cos(turn) * width) / 2, (-Math.sin(turn) * width) / 2];
  return [
    [at[0] + ax + bx, at[1] + ay + by],
    [at[0] + ax - bx, at[1] + ay - by],
    [at[0] - ax - bx, at[1] - ay - by],
    [at[0] - ax + bx, at[1] - ay + by],
  ];
}

/** Outline of a strip of the given width along a path, mitred at bends (a mitre of 3 at most). */
export function strip(path: readonly PlanPoint[], width: number): PlanPoint[] {
  const left: PlanPoint[] = [];
  const right: PlanPoint[] = [];
  path.forEach((at, i) => {
    const before = legAcross(path[i - 1] ?? at, path[i - 1] === undefined ? path[i + 1] : at);
    const after = legAcross(
      path[i + 1] === undefined ? (path[i - 1] ?? at) : at,
      path[i + 1] ?? at,
    );
    const [sx, sy] = [before[0] + after[0], before[1] + after[1]];
    const size = Math.hypot(sx, sy);
    const [nx, ny] = size < 1e-9 ? before : [sx / size, sy / size];
    const reach = width / 2 / Math.max(1 / 3, nx * before[0] + ny * before[1]);
    left.push([at[0] + nx * reach, at[1] + ny * reach]);
    right.push([at[0] - nx * reach, at[1] - ny * reach]);
  });
  return [...right, ...left.reverse()];
}

/** Unit vector to the left of the leg from a to b; [0, 0] when they coincide. */
function legAcross(a: PlanPoint, b: PlanPoint | undefined): PlanPoint {
  if (b === undefined) return [0, 0];
  const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return size < 1e-9 ? [0, 0] : [-(b[1] - a[1]) / size, (b[0] - a[0]) / size];
}

/**
 * The outline of a work in plan, site coordinates; null for a pile, which has no fixed size, and for
 * a strip over a work, which has no outline of its own.
 */
export function workOutline(work: Work): readonly PlanPoint[] | null {
  switch (work.kind) {
    case "tank":
      return rectangle(work.at, work.bearing, work.body.length, work.body.width);
    case "bed":
      return rectangle(work.at, work.bearing, work.length, work.width);
    case "pad":
    case "building":
      return work.outline;
    case "trench":
      return strip(work.path, work.width);
    case "pile":
      return null;
    case "strip":
      return work.area.by === "outline" ? work.area.outline : null;
  }
}

/** The corners or bends that can be dragged one by one; null when the work has none. */
export function workCorners(work: Work): readonly PlanPoint[] | null {
  if (work.kind === "trench") return work.path;
  if (work.kind === "strip") return work.area.by === "outline" ? work.area.outline : null;
  return work.kind === "pad" || work.kind === "building" ? work.outline : null;
}

/** The place that is snapped when the whole work is dragged: its centre, or its first corner. */
export function workPlace(work: Work): PlanPoint {
  const corners = workCorners(work);
  if (corners !== null) return corners[0] ?? [0, 0];
  return "at" in work ? work.at : [0, 0];
}

/** Middle of the work in plan, where its label points. */
export function workMiddle(work: Work): PlanPoint {
  if (work.kind === "trench") return alongPath(work.path, 0.5);
  if ("at" in work) return work.at;
  const corners = workCorners(work) ?? [];
  const n = Math.max(1, corners.length);
  return [
    corners.reduce((sum, p) => sum + p[0], 0) / n,
    corners.reduce((sum, p) => sum + p[1], 0) / n,
  ];
}

/** Length of a path in plan, m. */
export function pathLength(path: readonly PlanPoint[]): number {
  return path.reduce((sum, at, i) => {
    const before = path[i - 1];
    return before === undefined ? 0 : sum + Math.hypot(at[0] - before[0], at[1] - before[1]);
  }, 0);
}

/** The place at a share (0 to 1) of the path's length. */
export function alongPath(path: readonly PlanPoint[], share: number): PlanPoint {
  let left = pathLength(path) * share;
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1], path[i]];
    if (a === undefined || b === undefined) break;
    const leg = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (left <= leg && leg > 0) {
      return [a[0] + ((b[0] - a[0]) * left) / leg, a[1] + ((b[1] - a[1]) * left) / leg];
    }
    left -= leg;
  }
  return path.at(-1) ?? [0, 0];
}

/** The path with places added so that no leg is longer than `most` m; ends and bends are kept. */
export function subdivide(path: readonly PlanPoint[], most: number): PlanPoint[] {
  const fine: PlanPoint[] = [];
  path.forEach((at, i) => {
    const before = path[i - 1];
    if (before !== undefined) {
      const parts = Math.ceil(Math.hypot(at[0] - before[0], at[1] - before[1]) / most);
      for (let k = 1; k < parts; k++) {
        const s = k / parts;
        fine.push([before[0] + (at[0] - before[0]) * s, before[1] + (at[1] - before[1]) * s]);
      }
    }
    fine.push(at);
  });
  return fine;
}

/** One pipe's lowest inside line, in site coordinates: [x, y, invert] in path order. */
export type InvertLine = readonly (readonly [number, number, number])[];

/**
 * Where a pipe lies: uniform in plan distance for inverts and fall, or following the ground at its
 * cover (ground to the top outside of the pipe). `ground` gives the elevation as found, null beyond
 * the survey (there the last known ground is kept).
 */
export function invertLine(
  trench: Trench,
  pipe: Trench["pipes"][number],
  ground: (at: PlanPoint) => number | null,
): InvertLine {
  const length = pathLength(trench.path);
  const grade = pipe.grade;
  if (grade.by === "cover") {
    const crown = (pipe.outside + pipe.inside) / 2 + grade.depth;
    let last = 0;
    return subdivide(trench.path, 1).map(([x, y]) => {
      last = ground([x, y]) ?? last;
      return [x, y, last - crown] as const;
    });
  }
  const drop = grade.by === "inverts" ? grade.start - grade.end : grade.fall * length;
  let station = 0;
  return trench.path.map((at, i) => {
    const before = trench.path[i - 1];
    if (before !== undefined) station += Math.hypot(at[0] - before[0], at[1] - before[1]);
    return [at[0], at[1], grade.start - (length > 0 ? (drop * station) / length : 0)] as const;
  });
}

/** A heap's size on level ground, m. */
export interface Cone {
  diameter: number;
  height: number;
}

/**
 * The cone that a loose volume (m³) stands in at an angle of repose (degrees):
 * D = (7.64 V ÷ tan R)^⅓, H = D tan R ÷ 2 (Nunnally, Construction Methods and Management, spoil
 * banks, recalled from memory).
 */
export function spoilCone(loose: number, repose: number): Cone {
  const rise = Math.tan((repose * Math.PI) / 180);
  const diameter = Math.cbrt((7.64 * Math.max(0, loose)) / rise);
  return { diameter, height: (diameter * rise) / 2 };
}
