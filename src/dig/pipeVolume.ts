/** Volume of a round pipe below the ground: subtracted analytically, never meshed. */

/**
 * Mean cross-section, m², of a round pipe below a ground line that is straight along it.
 *
 * `start` and `end` are the heights (m) of the ground above the pipe's underside at the two ends
 * of the stretch; below 0 the pipe lies above ground, above the diameter it is wholly buried.
 * Exact: the antiderivative of the circular segment's area.
 */
export function meanBuriedArea(outside: number, start: number, end: number): number {
  if (Math.abs(end - start) < 1e-9) return segmentArea(outside, (start + end) / 2);
  return (segmentIntegral(outside, end) - segmentIntegral(outside, start)) / (end - start);
}

/** Area of a circle of the given diameter below a level at height `h` over its lowest point. */
function segmentArea(diameter: number, h: number): number {
  const r = diameter / 2;
  if (h <= 0) return 0;
  if (h >= diameter) return Math.PI * r * r;
  const phi = Math.acos(1 - h / r);
  return r * r * (phi - Math.sin(phi) * Math.cos(phi));
}

/** Integral of `segmentArea` over the height from 0 to `h`. */
function segmentIntegral(diameter: number, h: number): number {
  const r = diameter / 2;
  if (h <= 0) return 0;
  if (h >= diameter) return Math.PI * r ** 3 + Math.PI * r * r * (h - diameter);
  const phi = Math.acos(1 - h / r);
  return r ** 3 * (Math.sin(phi) - phi * Math.cos(phi) - Math.sin(phi) ** 3 / 3);
}
