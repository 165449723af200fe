import type { ScenePoint } from "./frame.js";

/** A way of looking: where from, and how far, to see all of something. */
export interface Framing {
  eye: ScenePoint;
  target: ScenePoint;
}

/** Share of the view that may be filled. */
const FILL = 0.97;

/** Shares of the view's height at its top and bottom that other things lie over, 0 to under 0.5. */
export interface Covered {
  top: number;
  bottom: number;
}

/**
 * The eye from which all points fit in a perspective view. `bearing` is the way that the eye looks
 * (degrees clockwise from north), `dip` its angle below the level (degrees), `fov` the upright angle
 * of view (degrees), `aspect` width over height. The target is moved so that the picture is centred
 * in the part of the view that is not `covered`.
 */
export function fitPerspective(
  points: readonly ScenePoint[],
  centre: ScenePoint,
  look: { bearing: number; dip: number },
  fov: number,
  aspect: number,
  covered: Covered = { top: 0, bottom: 0 },
): Framing {
  const axes = lookAxes(look);
  const tanHalf = Math.tan((fov * Math.PI) / 360);
  const middleUp = covered.bottom - covered.top;
  const halfUp = (1 - covered.bottom - covered.top) * FILL;
  const tanUp: Reach = { low: (middleUp - halfUp) * tanHalf, high: (middleUp + halfUp) * tanHalf };
  const tanAcross: Reach = { low: -tanHalf * FILL * aspect, high: tanHalf * FILL * aspect };
  const local = points.map((p) => {
    const d: ScenePoint = [p[0] - centre[0], p[1] - centre[1], p[2] - centre[2]];
    return { x: dot(d, axes.right), y: dot(d, axes.up), deep: dot(d, axes.forward) };
  });
  let [shiftX, shiftY] = [0, 0];
  let far = 0;
  const farEnough = (): number =>
    Math.max(
      leastFar(local, tanAcross, (p) => p.x - shiftX),
      leastFar(local, tanUp, (p) => p.y - shiftY),
    );
  // Shifting the middle changes the perspective a little, so it is done a few times.
  for (let round = 0; round < 8; round++) {
    far = farEnough();
    shiftX += middleShift(local, far, tanAcross, (p) => p.x - shiftX);
    shiftY += middleShift(local, far, tanUp, (p) => p.y - shiftY);
  }
  far = farEnough();
  const target = shifted(centre, axes, shiftX, shiftY, 0);
  return { target, eye: shifted(centre, axes, shiftX, shiftY, -far) };
}

type Axes = { right: ScenePoint; up: ScenePoint; forward: ScenePoint };
type LocalPoint = { x: number; y: number; deep: number };
/** Tangents of the angles, off the view's axis, between which all must lie: low below 0, high above. */
type Reach = { low: number; high: number };

function lookAxes(look: { bearing: number; dip: number }): Axes {
  const [b, d] = [(look.bearing * Math.PI) / 180, (look.dip * Math.PI) / 180];
  return {
    forward: [Math.sin(b) * Math.cos(d), Math.cos(b) * Math.cos(d), -Math.sin(d)],
    right: [Math.cos(b), -Math.sin(b), 0],
    up: [Math.sin(b) * Math.sin(d), Math.cos(b) * Math.sin(d), Math.cos(d)],
  };
}

/** m from the middle at which the eye sees every point within the reach. */
function leastFar(
  points: readonly LocalPoint[],
  reach: Reach,
  off: (p: LocalPoint) => number,
): number {
  return Math.max(...points.map((p) => off(p) / (off(p) > 0 ? reach.high : reach.low) - p.deep));
}

/** How far the middle of the picture lies from the middle of the reach, m at the target. */
function middleShift(
  points: readonly LocalPoint[],
  far: number,
  reach: Reach,
  off: (p: LocalPoint) => number,
): number {
  const seen = points.map((p) => off(p) / (far + p.deep));
  return ((Math.min(...seen) + Math.max(...seen) - reach.low - reach.high) / 2) * far;
}

function dot(a: ScenePoint, b: ScenePoint): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function shifted(from: ScenePoint, axes: Axes, x: number, y: number, deep: number): ScenePoint {
  const part = (i: 0 | 1 | 2) =>
    from[i] + axes.right[i] * x + axes.up[i] * y + axes.forward[i] * deep;
  return [part(0), part(1), part(2)];
}

/**
 * Bearing that looks up the hill, degrees clockwise from north, from the least-squares plane of the
 * points; 20 on level ground.
 */
export function uphillBearing(points: readonly ScenePoint[]): number {
  const n = Math.max(1, points.length);
  const mean = (i: 0 | 1 | 2) => points.reduce((sum, p) => sum + p[i], 0) / n;
  const [mx, my, mz] = [mean(0), mean(1), mean(2)];
  let [xx, xy, yy, xz, yz] = [0, 0, 0, 0, 0];
  for (const [x, y, z] of points) {
    const [dx, dy, dz] = [x - mx, y - my, z - mz];
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
    xz += dx * dz;
    yz += dy * dz;
  }
  const determinant = xx * yy - xy * xy;
  if (determinant < 1e-9) return 20;
  const east = (xz * yy - yz * xy) / determinant;
  const north = (yz * xx - xz * xy) / determinant;
  if (Math.hypot(east, north) < 0.005) return 20;
  return (Math.atan2(east, north) * 180) / Math.PI;
}
