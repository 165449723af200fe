/** The lines where a solid's sides meet at a corner that should be drawn. */
import { normalOf, type Place } from "./normals.js";

/** Sides that meet flatter than this are one round skin: cosine of 35°, more than a tube's 30°. */
const FLAT = Math.cos((35 * Math.PI) / 180);

/** Edges of loose triangles, seen from outside, that two sides meet in at a sharp angle. */
export function creasesOf(corners: readonly Place[]): (readonly [Place, Place])[] {
  const sides = new Map<string, { ends: readonly [Place, Place]; normals: Place[] }>();
  for (let i = 0; i + 2 < corners.length; i += 3) {
    const triangle = [corners[i]!, corners[i + 1]!, corners[i + 2]!] as const;
    const normal = normalOf(...triangle);
    if (normal === null) continue;
    triangle.forEach((from, k) => {
      const to = triangle[(k + 1) % 3]!;
      const key = [nameOf(from), nameOf(to)].sort().join(" ");
      const side = sides.get(key);
      if (side === undefined) sides.set(key, { ends: [from, to], normals: [normal] });
      else side.normals.push(normal);
    });
  }
  return [...sides.values()].flatMap(({ ends, normals: [a, b] }) =>
    a === undefined || b === undefined || a[0] * b[0] + a[1] * b[1] + a[2] * b[2] < FLAT
      ? [ends]
      : [],
  );
}

const nameOf = (place: Place): string => place.map((part) => Math.round(part * 1000)).join();
