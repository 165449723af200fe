import type { Bed, Material } from "../site/index.js";

/** One course of a raised bed's filling between two elevations, m. */
export interface BedCourse {
  material: string;
  bottom: number;
  top: number;
}

/**
 * The filling of a raised bed from its base up, no higher than its walls. Until the bed is covered
 * only the courses that its laterals lie on are in it: all up to the topmost sand or stone. What lies
 * over that (soil) covers them; a bed filled with soil alone has no such course, and is filled whole.
 */
export function bedCourses(
  { base, height, filling }: Bed,
  materials: ReadonlyMap<string, Material>,
  covered: boolean,
): BedCourse[] {
  const last = filling.findLastIndex((part) => materials.get(part.material)?.kind === "aggregate");
  const shown = covered || last === -1 ? filling : filling.slice(0, last + 1);
  const courses: BedCourse[] = [];
  let at = 0;
  for (const { material, depth } of shown) {
    const top = Math.min(at + depth, height);
    if (top > at) courses.push({ material, bottom: base + at, top: base + top });
    at = top;
  }
  return courses;
}
