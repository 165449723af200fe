/** A place or a direction: m east, north and up. */
export type Place = readonly [number, number, number];

/** The direction with a length of one; straight up for none. */
export function unit([x, y, z]: Place): Place {
  const size = Math.hypot(x, y, z);
  return size === 0 ? [0, 0, 1] : [x / size, y / size, z / size];
}

/** Unit normal of a triangle's corners; null for one that has none. */
export function normalOf(a: Place, b: Place, c: Place): Place | null {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  const normal: Place = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  return Math.hypot(...normal) < 1e-12 ? null : unit(normal);
}

export const dot = (a: Place, b: Place): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
