/** Ways out of a hole: how many ladders, where, and how long. */
import { ruleOf, type Locality, type PlanPoint, type Work } from "../site/index.js";
import type { FloorLine, FloorPlace } from "./holeFloor.js";

/** A ladder in a hole. */
export interface Ladder {
  /** Its foot in plan. */
  at: PlanPoint;
  /** Elevation of the floor there, m. */
  floor: number;
  /** m upright: the face there and what it stands above the edge. */
  length: number;
}

/** A ladder's place is no farther from where it stands than a rounding of this, m. */
const SLACK = 1e-6;

/**
 * Ladders for a hole so that from every place of its floor that is deep enough one is within the
 * rule's distance: along a trench's path, or round the edge of a pit's floor, since what is set in
 * it stands in the middle. A tank's hole counts as a whole once its tallest face is deep enough; of
 * a trench or pad, the stretches that are. Source: 29 CFR 1926.651(c)(2) and 1926.1053.
 */
export function laddersOf(
  work: Pick<Work, "kind">,
  face: number,
  lines: readonly FloorLine[],
  site: Locality,
): Ladder[] {
  const from = ruleOf(site, "way-out-from").value - 0.0005;
  const within = ruleOf(site, "way-out-within").value;
  const above = ruleOf(site, "ladder-above").value;
  if (face < from) return [];
  const whole = work.kind === "tank";
  return lines.flatMap((line) =>
    deepStretches(line, whole ? -Infinity : from).flatMap(([start, end]) => {
      const count = Math.max(1, Math.ceil((end - start) / (2 * within) - SLACK));
      return Array.from({ length: count }, (_, k): Ladder => {
        const place = nearestPlace(line, start + ((k + 0.5) / count) * (end - start));
        return {
          at: place.at,
          floor: place.floor,
          length: (Number.isFinite(place.face) ? Math.max(0, place.face) : face) + above,
        };
      });
    }),
  );
}

/** Stretches of a line whose face is at least so high, from and to in stations. */
function deepStretches({ places, length }: FloorLine, from: number): [number, number][] {
  if (from === -Infinity) return length > 0 ? [[0, length]] : [];
  const stretches: [number, number][] = [];
  let start: number | null = null;
  for (const { face, station } of places) {
    if (face >= from) start ??= station;
    else if (start !== null) {
      stretches.push([start, station]);
      start = null;
    }
  }
  if (start !== null) stretches.push([start, length]);
  return stretches;
}

function nearestPlace({ places }: FloorLine, station: number): FloorPlace {
  return places.reduce((best, place) =>
    Math.abs(place.station - station) < Math.abs(best.station - station) ? place : best,
  );
}
