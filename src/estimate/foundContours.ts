/** Contours of the ground as found in flat arrays, for drawing: made once for a survey and a step. */
import { contourLines, triangleAt, type Tin } from "../ground/index.js";
import type { Site } from "../site/index.js";
import { groundOf } from "./estimate.js";

/** Contour lines one after the other. All m; site = origin + place. */
export interface FoundContours {
  origin: readonly [number, number, number];
  /** m between levels. */
  step: number;
  /** Of each line: its elevation (site), and whether it is every fifth. */
  elevations: Float64Array;
  heavy: Uint8Array;
  /** Of each line the number of its first place, and last how many places there are. */
  starts: Uint32Array;
  /** x, y of each place, from `origin`; a closed line repeats its first. */
  places: Float64Array;
  /** The survey's triangle under the leg that begins at each place; a line's last place has none. */
  triangles: Int32Array;
}

const known = new WeakMap<Tin, FoundContours>();

/**
 * Contours as they are drawn for these units: `wanted` m apart where that is one of the site's
 * `contourChoices`, else as `contourStep` has it; remembered like the ground. Throws like `estimate`.
 */
export function foundContours(site: Site, wanted: number | null = null): FoundContours {
  const { tin } = groundOf(site);
  const isChoice = wanted !== null && contourChoices(site).some((one) => isSame(one, wanted));
  const step = isChoice ? wanted : contourStep(tin.highest - tin.lowest, site.units);
  let contours = known.get(tin);
  if (contours?.step !== step) known.set(tin, (contours = contoursOf(tin, step)));
  return contours;
}

/** The most lines that a person may ask for, and the fewest that show anything. */
const MOST_LINES = 120;
const FEWEST_LINES = 2;

/** m between contours that a site's relief allows, of those usual in its units. */
export function contourChoices(site: Site): number[] {
  const { tin } = groundOf(site);
  const relief = tin.highest - tin.lowest;
  return usualSteps(site.units).filter(
    (step) => relief / step <= MOST_LINES && relief / step >= FEWEST_LINES,
  );
}

function usualSteps(units: Site["units"]): number[] {
  const unit = units === "us" ? 0.3048 : 1;
  const steps = units === "us" ? [0.5, 1, 2, 5, 10, 20, 50] : [0.1, 0.2, 0.5, 1, 2, 5, 10];
  return steps.map((step) => step * unit);
}

function isSame(one: number, other: number): boolean {
  return Math.abs(one - other) < 1e-6;
}

/** Lets contours that were made in another thread of the same ground be this site's. */
export function adoptContours(site: Site, contours: FoundContours): void {
  known.set(groundOf(site).tin, contours);
}

/** m between contours for a relief in m: whole in the site's units, and no more than 32 lines. */
export function contourStep(relief: number, units: Site["units"]): number {
  const unit = units === "us" ? 0.3048 : 1;
  return usualSteps(units).find((step) => relief / step <= 32) ?? 100 * unit;
}

function contoursOf(tin: Tin, step: number): FoundContours {
  const lines = contourLines(tin, step);
  const count = lines.reduce((sum, { line }) => sum + line.length, 0);
  const elevations = new Float64Array(lines.length);
  const heavy = new Uint8Array(lines.length);
  const starts = new Uint32Array(lines.length + 1);
  const places = new Float64Array(2 * count);
  const triangles = new Int32Array(count).fill(-1);
  let at = 0;
  lines.forEach(({ elevation, line }, i) => {
    elevations[i] = elevation;
    heavy[i] = Math.round(elevation / step) % 5 === 0 ? 1 : 0;
    line.forEach(([x, y], k) => {
      places[2 * at] = x;
      places[2 * at + 1] = y;
      const next = line[k + 1];
      if (next) triangles[at] = triangleAt(tin, (x + next[0]) / 2, (y + next[1]) / 2);
      at++;
    });
    starts[i + 1] = at;
  });
  return { origin: tin.origin, step, elevations, heavy, starts, places, triangles };
}
