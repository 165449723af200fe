/** Simple bodies and lines of a view's scene. */
import type { Place } from "./normals.js";

/** A triangle that is seen from one side. */
export interface Face {
  corners: readonly [Place, Place, Place];
  /** Unit vector out of what it is the skin of. */
  normal: Place;
  layer: string;
}

/** A straight piece of a line. */
export type Stroke = readonly [Place, Place];

/** The pieces of a line through places. */
export function chain(places: readonly Place[]): Stroke[] {
  return places.slice(1).map((to, i): Stroke => [places[i]!, to]);
}

/** A line in parts, without the places that are not there. */
export function runsOf(places: readonly (Place | null)[]): Place[][] {
  const runs: Place[][] = [[]];
  for (const at of places) {
    if (at === null) runs.push([]);
    else runs[runs.length - 1]!.push(at);
  }
  return runs.filter((run) => run.length > 1);
}

/** Places about a middle, counter-clockwise; `turn` in radians. */
export function circle(
  [x, y]: readonly [number, number],
  radius: number,
  sides: number,
  turn = 0,
): [number, number][] {
  return Array.from({ length: sides }, (_, i): [number, number] => {
    const angle = turn + (2 * Math.PI * i) / sides;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
}

/** Corners x, y, z one after the other as triangles. */
export function triangles(corners: readonly number[]): [Place, Place, Place][] {
  const at = (i: number): Place => [corners[i]!, corners[i + 1]!, corners[i + 2]!];
  return Array.from({ length: Math.floor(corners.length / 9) }, (_, i) => [
    at(9 * i),
    at(9 * i + 3),
    at(9 * i + 6),
  ]);
}

/** The sides and the floor of a cone on a ring (counter-clockwise) at a height, seen from outside. */
export function cone(
  ring: readonly (readonly [number, number])[],
  floor: number,
  tip: Place,
): [Place, Place, Place][] {
  const foot = ring.map(([x, y]): Place => [x, y, floor]);
  const middle: Place = [tip[0], tip[1], floor];
  return foot.flatMap((a, i): [Place, Place, Place][] => {
    const b = foot[(i + 1) % foot.length]!;
    return [
      [a, b, tip],
      [b, a, middle],
    ];
  });
}
