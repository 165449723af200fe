/** A ditch that turns water aside above a work: a line that falls evenly along the slope. */
import { elevationAt, slopeAt, type Tin } from "../ground/index.js";

type Place = readonly [x: number, y: number];

/** m of each step of the line. */
const STEP = 0.5;
/** How a ditch keeps clear of the work that it guards, m. */
export interface Clear {
  /** That its middle keeps from the work's edge, uphill. */
  off: number;
  /** That it goes on beyond the work on either side. */
  beyond: number;
}

/**
 * Lines uphill of an outline that fall by `fall` (rise per run) all along, from beyond one side of
 * the work to beyond the other, on the ground as found; m local, the higher end first. One for either
 * side that the water can be let go at, the shorter first; none on level ground, or where the survey
 * ends too soon.
 */
export function ditchesAbove(
  tin: Tin,
  outline: readonly Place[],
  fall: number,
  { off, beyond }: Clear = { off: 3, beyond: 2 },
): (readonly Place[])[] {
  const middle = middleOf(outline);
  const slope = slopeAt(tin, ...middle);
  if (slope === null || slope.slope <= fall) return [];
  const down = ((slope.fallsTowards % 360) * Math.PI) / 180;
  const uphill: Place = [-Math.sin(down), -Math.cos(down)];
  const across: Place = [-uphill[1], uphill[0]];
  const reach = (way: Place): number =>
    Math.max(...outline.map((at) => dot([at[0] - middle[0], at[1] - middle[1]], way)));
  const up = reach(uphill) + off;
  const start: Place = [middle[0] + up * uphill[0], middle[1] + up * uphill[1]];
  const lines = [1, -1].flatMap((side) => {
    const lower = walk(tin, start, { middle, across, side, far: reachTo(side), fall: -fall });
    const higher = walk(tin, start, { middle, across, side: -side, far: reachTo(-side), fall });
    return lower === null || higher === null ? [] : [[...higher.reverse(), start, ...lower]];
  });
  return lines.sort((a, b) => a.length - b.length);

  function reachTo(side: number): number {
    return reach([across[0] * side, across[1] * side]) + beyond;
  }
}

interface Walk {
  middle: Place;
  /** Unit vector along the contour; `side` says which way of the two. */
  across: Place;
  side: number;
  /** How far beyond the middle the line has to come, m. */
  far: number;
  /** What it gains per m; negative: it falls. */
  fall: number;
}

/** Steps along the slope at an even fall until far enough; null where the survey ends first. */
function walk(tin: Tin, start: Place, { middle, across, side, far, fall }: Walk): Place[] | null {
  const places: Place[] = [];
  let at = start;
  const most = Math.ceil((4 * (far + 10)) / STEP);
  for (let step = 0; step < most; step++) {
    const slope = slopeAt(tin, ...at);
    if (slope === null || slope.slope <= Math.abs(fall)) return null;
    const down = (slope.fallsTowards * Math.PI) / 180;
    const along: Place = [Math.cos(down), -Math.sin(down)];
    const way = Math.sign(dot(along, across) * side) || 1;
    // Uphill by so much that the line gains `fall` per m along it.
    const rise = fall / slope.slope;
    const level = Math.sqrt(1 - rise * rise) * way;
    const next: Place = [
      at[0] + STEP * (level * along[0] - rise * Math.sin(down)),
      at[1] + STEP * (level * along[1] - rise * Math.cos(down)),
    ];
    if (elevationAt(tin, ...next) === null) return null;
    places.push(next);
    at = next;
    if (side * dot([at[0] - middle[0], at[1] - middle[1]], across) >= far) return places;
  }
  return null;
}

function middleOf(outline: readonly Place[]): Place {
  const sum = outline.reduce<Place>(([x, y], at) => [x + at[0], y + at[1]], [0, 0]);
  return [sum[0] / outline.length, sum[1] / outline.length];
}

function dot(a: Place, b: Place): number {
  return a[0] * b[0] + a[1] * b[1];
}
