/** Arithmetic of places and directions in space. */
import type { Vector } from "./meshBuilder.js";

/** Cross product of b − a and c − a: the normal of a triangle, twice its area long. */
export function crossed(a: Vector, b: Vector, c: Vector): [number, number, number] {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  return [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
}

/** The same direction, of length 1; up for a direction of no length. */
export function unit(x: number, y: number, z: number): Vector {
  const length = Math.sqrt(x * x + y * y + z * z);
  return length > 0 ? [x / length, y / length, z / length] : [0, 0, 1];
}

/** Upward unit normal of a planar polygon, its corners as three lists (Newell's method). */
export function flatNormal(
  xs: readonly number[],
  ys: readonly number[],
  zs: readonly number[],
): Vector {
  let [x, y, z] = [0, 0, 0];
  const count = xs.length;
  for (let i = 0; i < count; i++) {
    const j = i + 1 === count ? 0 : i + 1;
    x += (ys[i]! - ys[j]!) * (zs[i]! + zs[j]!);
    y += (zs[i]! - zs[j]!) * (xs[i]! + xs[j]!);
    z += (xs[i]! - xs[j]!) * (ys[i]! + ys[j]!);
  }
  return unit(x, y, z);
}
