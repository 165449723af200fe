/** Lot lines run course by course: where they lead, how they close, and the compass rule. */
import type { PlanPoint } from "../site/index.js";
import type { Course } from "./courses.js";

/** Where the compass rule is written. */
export const COMPASS_RULE =
  "compass (Bowditch) rule: US Navy, Engineering Aid Basic, NAVEDTRA 14071, chapter 7";

export interface Traverse {
  /** m: the start, then the end of each course; as run, or as balanced. */
  places: readonly PlanPoint[];
  /** m, all courses together. */
  length: number;
  /** What the last place is off the wanted one, m. */
  error: { east: number; north: number; distance: number };
  /** Length per 1 of error: 22,500 for one in 22,500; null where the error is nothing. */
  oneIn: number | null;
}

/** m: less than this is the rounding of the arithmetic and no error of a survey. */
const NO_ERROR = 1e-7;

/** Runs the courses from a start (m); `end` is where they should lead, the start unless given. */
export function runTraverse(
  courses: readonly Course[],
  start: PlanPoint,
  end: PlanPoint = start,
): Traverse {
  const places: PlanPoint[] = [start];
  for (const course of courses) {
    const [x, y] = places.at(-1) ?? start;
    const [east, north] = legOf(course);
    places.push([x + east, y + north]);
  }
  const [x, y] = places.at(-1) ?? start;
  const [east, north] = [x - end[0], y - end[1]];
  const distance = Math.hypot(east, north);
  const length = courses.reduce((sum, course) => sum + course.length, 0);
  return {
    places,
    length,
    error: { east, north, distance },
    oneIn: distance > NO_ERROR ? length / distance : null,
  };
}

/**
 * The traverse with its error shared out among the courses by their lengths, so that the last place
 * is the wanted one: the compass rule.
 */
export function balanced(courses: readonly Course[], run: Traverse): Traverse {
  const { error, length, places } = run;
  let gone = 0;
  const shared = places.map(([x, y], i): PlanPoint => {
    if (i > 0) gone += courses[i - 1]!.length;
    const share = length > 0 ? gone / length : 0;
    return [x - error.east * share, y - error.north * share];
  });
  return { places: shared, length, error: { east: 0, north: 0, distance: 0 }, oneIn: null };
}

/** The course from each place of a traverse to the next: of a balanced one, the sides as adjusted. */
export function sidesOf({
  places,
}: Pick<Traverse, "places">): Pick<Course, "bearing" | "length">[] {
  return places.slice(1).map(([x, y], i) => {
    const [px, py] = places[i]!;
    const [east, north] = [x - px, y - py];
    const turn = (Math.atan2(east, north) * 180) / Math.PI;
    return { bearing: turn < 0 ? turn + 360 : turn, length: Math.hypot(east, north) };
  });
}

/** East and north of a course, m: its departure and latitude. */
export function legOf({ bearing, length }: Course): PlanPoint {
  const turn = (bearing * Math.PI) / 180;
  return [length * Math.sin(turn), length * Math.cos(turn)];
}

/** Area within places joined in a ring, m², whichever way they run. */
export function ringArea(places: readonly PlanPoint[]): number {
  const [x0, y0] = places[0] ?? [0, 0];
  let twice = 0;
  places.forEach(([x, y], i) => {
    const [nx, ny] = places[(i + 1) % places.length]!;
    twice += (x - x0) * (ny - y0) - (nx - x0) * (y - y0);
  });
  return Math.abs(twice) / 2;
}

/**
 * The corners of the lot, m: the places without the last where it is the first again, to a
 * centimetre; what does not close keeps all of them.
 */
export function lotCorners({ places }: Traverse): PlanPoint[] {
  const [first, last] = [places[0], places.at(-1)];
  if (first === undefined || last === undefined || places.length < 4) return [...places];
  const closes = Math.hypot(first[0] - last[0], first[1] - last[1]) < 0.01;
  return closes ? places.slice(0, -1) : [...places];
}
