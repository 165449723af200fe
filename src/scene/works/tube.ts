/** Tubes along lines in the scene. */
import { CatmullRomCurve3, CurvePath, LineCurve3, TubeGeometry, Vector3 } from "three";
import type { ScenePoint } from "../frame.js";

/** The most rings that a tube is made of. */
const MOST = 600;

/**
 * A tube of a radius along a line, m, its rings `sample` m apart: near enough that bends stay
 * within a few centimetres for a pipe. Open at its ends; the caller disposes it.
 */
export function tubeAlong(
  line: readonly ScenePoint[],
  radius: number,
  corners = 8,
  sample = 0.12,
): TubeGeometry {
  const path = pathAlong(line);
  const samples = Math.min(MOST, Math.max(8, Math.ceil(path.getLength() / sample)));
  // A tube samples its path evenly.
  const even = new CatmullRomCurve3(path.getSpacedPoints(samples), false, "centripetal");
  return new TubeGeometry(even, samples, Math.max(radius, 0.02), corners, false);
}

function pathAlong(line: readonly ScenePoint[]): CurvePath<Vector3> {
  const places = line.map((at) => new Vector3(at[0], at[1], at[2]));
  const path = new CurvePath<Vector3>();
  places.forEach((at, i) => {
    const before = places[i - 1];
    if (before !== undefined && before.distanceTo(at) > 1e-6) path.add(new LineCurve3(before, at));
  });
  if (path.curves.length === 0) {
    const only = places[0] ?? new Vector3();
    path.add(new LineCurve3(only, only.clone().setZ(only.z + 0.01)));
  }
  return path;
}

/** Rings about a line, square to each of its legs, as segment ends: at every corner and between. */
export function ringsAlong(
  line: readonly ScenePoint[],
  radius: number,
  { corners, every }: { corners: number; every: number },
): Float32Array {
  const ends: number[] = [];
  line.slice(1).forEach((to, i) => {
    const [a, b] = [new Vector3(...line[i]!), new Vector3(...to)];
    const along = b.clone().sub(a);
    const level = new Vector3(-along.y, along.x, 0).normalize();
    const up = along.clone().normalize().cross(level).negate();
    const count = Math.max(1, Math.round(along.length() / every));
    for (let k = i === 0 ? 0 : 1; k <= count; k++) {
      const middle = a.clone().addScaledVector(along, k / count);
      const ring = Array.from({ length: corners }, (_, c) => {
        const turn = (2 * Math.PI * c) / corners;
        return middle
          .clone()
          .addScaledVector(level, radius * Math.cos(turn))
          .addScaledVector(up, radius * Math.sin(turn));
      });
      ring.forEach((at, c) => ends.push(...at.toArray(), ...ring[(c + 1) % corners]!.toArray()));
    }
  });
  return Float32Array.from(ends);
}
