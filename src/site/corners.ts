/** Corners of outlines and bends of paths: adding, moving and taking away, each one edit. */
import { changeLimit, changeWork, findWork } from "./edits.js";
import { findLimit, limitCorners } from "./limitEdits.js";
import type { Thing } from "./marks.js";
import { outlineProblem } from "./planShape.js";
import type { Pad, PlanPoint, Site, Work } from "./schema.js";

/** The corners of a thing, each once, m; `least` is the number that must stay. */
export interface Corners {
  places: readonly PlanPoint[];
  closed: boolean;
  least: number;
}

/** Corners or bends of a work that can be set one by one; null when it has none. */
export function cornersOfWork(work: Work): Corners | null {
  switch (work.kind) {
    case "trench":
      return { places: work.path, closed: false, least: 2 };
    case "pad":
    case "building":
      return { places: work.outline, closed: true, least: 3 };
    case "strip":
      return work.area.by === "outline"
        ? { places: work.area.outline, closed: true, least: 3 }
        : null;
    case "tank":
    case "bed":
    case "pile":
      return null;
  }
}

/** Corners of a work or a limit; null when it has none, or is not there. */
export function cornersOf(site: Site, schemeId: string, { kind, id }: Thing): Corners | null {
  if (kind === "work") {
    const work = findWork(site, schemeId, id);
    return work === null ? null : cornersOfWork(work);
  }
  const limit = kind === "limit" ? findLimit(site, id) : null;
  const corners = limit === null ? null : limitCorners(limit);
  return corners && { ...corners, least: corners.closed ? 3 : 2 };
}

/** A change of corners: the new places, and what it does to lists that hold one value for each side. */
interface CornerChange {
  places: PlanPoint[];
  sides: (of: readonly number[]) => number[];
}

const SAME_SIDES: CornerChange["sides"] = (of) => of.slice();

function withCorners(
  site: Site,
  schemeId: string,
  { kind, id }: Thing,
  { places, sides }: CornerChange,
): Site {
  if (kind === "limit") return changeLimit(site, id, (one) => ({ ...one, path: places }));
  if (kind !== "work") return site;
  return changeWork(site, schemeId, id, (work): Work => {
    switch (work.kind) {
      case "trench":
        return { ...work, path: places };
      case "building":
        return { ...work, outline: places };
      case "pad":
        return { ...work, outline: places, walls: wallsWith(work, sides) };
      case "strip":
        return work.area.by === "outline"
          ? { ...work, area: { ...work.area, outline: places } }
          : work;
      case "tank":
      case "bed":
      case "pile":
        return work;
    }
  });
}

/** A pad's walls with their sides' own runs following its corners. */
function wallsWith({ walls }: Pad, sides: CornerChange["sides"]): Pad["walls"] {
  if (walls.by !== "run" || walls.sides === undefined) return walls;
  return { ...walls, sides: sides(walls.sides) };
}

/**
 * Puts a new corner on side `side` (from corner `side` to the next), at a place in m. A pad's new
 * side has the wall of the side that it was a part of. The same site when there is no such side.
 */
export function addCorner(
  site: Site,
  schemeId: string,
  thing: Thing,
  side: number,
  at: PlanPoint,
): Site {
  const corners = cornersOf(site, schemeId, thing);
  if (corners === null || side < 0 || side >= sideCount(corners)) return site;
  return withCorners(site, schemeId, thing, {
    places: corners.places.toSpliced(side + 1, 0, at),
    sides: (of) => of.flatMap((run, i) => (i === side ? [run, run] : [run])),
  });
}

/** How many sides there are between the corners. */
export function sideCount({ places, closed }: Corners): number {
  return closed ? places.length : Math.max(0, places.length - 1);
}

/** Moves one corner by `by` metres; the same site when there is none. */
export function moveOneCorner(
  site: Site,
  schemeId: string,
  thing: Thing,
  corner: number,
  by: PlanPoint,
): Site {
  const corners = cornersOf(site, schemeId, thing);
  if (corners?.places[corner] === undefined) return site;
  const places = corners.places.map(([x, y], i): PlanPoint =>
    i === corner ? [x + by[0], y + by[1]] : [x, y],
  );
  return withCorners(site, schemeId, thing, { places, sides: SAME_SIDES });
}

/** Why a corner cannot be taken away; null when it can. `least` is the number that must stay. */
export function cornerKept(
  corners: Corners,
  corner: number,
): { code: "too-few"; least: number } | { code: "crosses"; problem: string } | null {
  const { places, closed, least } = corners;
  if (places.length <= least) return { code: "too-few", least };
  if (!closed) return null;
  const problem = outlineProblem(places.toSpliced(corner, 1));
  return problem === null ? null : { code: "crosses", problem };
}

/**
 * Takes one corner away; the side before it then reaches to the next corner, with its own wall. The
 * same site when there is no such corner or `cornerKept` gives a reason against it.
 */
export function removeCorner(site: Site, schemeId: string, thing: Thing, corner: number): Site {
  const corners = cornersOf(site, schemeId, thing);
  if (corners?.places[corner] === undefined || cornerKept(corners, corner) !== null) return site;
  return withCorners(site, schemeId, thing, {
    places: corners.places.toSpliced(corner, 1),
    sides: (of) => of.toSpliced(corner, 1),
  });
}
