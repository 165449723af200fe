/** Findings about works that leave the ground that the survey may be trusted for. */
import { elevationAt, trusted, type LayeredGround, type Place } from "../ground/index.js";
import type { Finding, Work } from "../site/index.js";
import { distance, length } from "../units/index.js";
import { rectangle } from "./place.js";
import type { Digging } from "./work.js";

type Reach = Pick<Digging, "ground" | "units">;

/** The outline in plan of a work's floor or footprint, local m; a path for a trench. */
export function footprint(work: Work): readonly Place[] {
  switch (work.kind) {
    case "tank": {
      const { length, width } = work.body;
      return rectangle(work.at, work.bearing, length + 2 * work.overdig, width + 2 * work.overdig);
    }
    case "bed":
      return rectangle(work.at, work.bearing, work.length, work.width);
    case "pad":
    case "building":
      return work.outline;
    case "trench":
      return work.path;
    case "pile":
      return [work.at];
    case "strip":
      return work.area.by === "outline" ? work.area.outline : [];
  }
}

/**
 * Says when a work stands beyond the survey, when its walls run off the survey's edge (its volume
 * is then short), and when it reaches ground outside the boundary, each with the place where more
 * points are needed, in the site's own units. `work` is in the local frame; call when it has been cut and not yet filled.
 */
export function reachFindings(digging: Reach, work: Work): Finding[] {
  const { ground, units } = digging;
  const { tin } = ground.base;
  const off = footprint(work).find(([x, y]) => elevationAt(tin, x, y) === null);
  if (off) return [offSurvey(digging, work, "stands partly beyond the survey points", off)];
  const cutOff = deepestAtEdge(ground);
  if (cutOff) {
    const what = `is cut off at the edge of the survey, where it is still ${length.print(cutOff.depth, units)} deep`;
    return [offSurvey(digging, work, what, cutOff.place)];
  }
  if (ground.base.boundary === null) return [];
  const untrusted = deepestCut(ground, (x, y) => !trusted(ground.base, x, y));
  return untrusted ? [outsideBoundary(digging, work, untrusted.place)] : [];
}

interface DeepPlace {
  place: Place;
  depth: number;
}

/**
 * The deepest corner of the present cut that answers to `is`, or null. Where a wall comes to
 * daylight the depth is nothing: such a corner may lie on the survey's edge and is not asked.
 */
function deepestCut(
  ground: LayeredGround,
  is: (x: number, y: number, triangle: number) => boolean,
  among?: readonly number[],
): DeepPlace | null {
  let found: DeepPlace | null = null;
  let deepest = DAYLIGHT * ground.base.tin.tolerance;
  ground.visitCut((x, y, depth, triangle) => {
    if (depth <= deepest || !is(x, y, triangle)) return;
    deepest = depth;
    found = { place: [x, y], depth };
  }, among);
  return found;
}

/** A cut no deeper than this share of the welding tolerance has come to daylight. */
const DAYLIGHT = 0.1;

/** The deepest place of the present cut on the outer edge of the survey, or null. */
function deepestAtEdge(ground: LayeredGround): DeepPlace | null {
  const { tin } = ground.base;
  const outer = ground.markedAtEdge();
  if (outer.length === 0) return null;
  const onEdge = (x: number, y: number, t: number): boolean =>
    [0, 1, 2].some((k) => {
      if (tin.twins[3 * t + k] !== -1) return false;
      const [p, q] = [tin.triangles[3 * t + k]!, tin.triangles[3 * t + ((k + 1) % 3)]!];
      const [dx, dy] = [tin.x[q]! - tin.x[p]!, tin.y[q]! - tin.y[p]!];
      const off = dx * (y - tin.y[p]!) - dy * (x - tin.x[p]!);
      return Math.abs(off) < 1e-3 * tin.tolerance * Math.hypot(dx, dy);
    });
  return deepestCut(ground, onEdge, outer);
}

/** A place in words: on which side of the survey, and its coordinates on the site. */
function whereOn({ ground, units }: Reach, [x, y]: Place): string {
  const { tin } = ground.base;
  const turned = (Math.atan2(x, y) * 180) / Math.PI;
  const side = SIDES[Math.round(((turned + 360) % 360) / 45) % 8]!;
  const [east, north] = [x + tin.origin[0], y + tin.origin[1]];
  return `on the ${side} side, near east ${distance.print(east, units)}, north ${distance.print(north, units)}`;
}

const SIDES = [
  "north",
  "northeast",
  "east",
  "southeast",
  "south",
  "southwest",
  "west",
  "northwest",
] as const;

function onSite(ground: LayeredGround, [x, y]: Place): [number, number] {
  const { origin } = ground.base.tin;
  return [x + origin[0], y + origin[1]];
}

function offSurvey(reach: Reach, work: Work, what: string, place: Place): Finding {
  return {
    level: "stop",
    code: "survey.too-small",
    where: work.id,
    at: onSite(reach.ground, place),
    text: `${work.name} ${what}, so its volume is short. Survey more points beyond there (${whereOn(reach, place)}) or move it in.`,
    source: "geometry",
  };
}

function outsideBoundary(reach: Reach, work: Work, place: Place): Finding {
  return {
    level: "caution",
    code: "survey.outside-boundary",
    where: work.id,
    at: onSite(reach.ground, place),
    text: `${work.name} reaches ground outside the survey's boundary, where heights are only guessed between far points. Survey more points there (${whereOn(reach, place)}) or move it in.`,
    source: "geometry",
  };
}
