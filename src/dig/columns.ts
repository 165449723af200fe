/** What the works take out of the natural ground, as thin columns: for asking "what if the rock lies higher?" */
import {
  elevationAt,
  groundColumn,
  insideOutline,
  type BaseGround,
  type LayeredGround,
} from "../ground/index.js";
import type { Scheme, Site } from "../site/index.js";
import { digScheme } from "./dig.js";
import type { DigResult, Rings } from "./types.js";

/** A column of natural ground that one work took out. Local m. */
export interface DugColumn {
  /** Index of the work in building order. */
  work: number;
  x: number;
  y: number;
  /** m² in plan that it stands for. */
  area: number;
  /** Ground as found. */
  found: number;
  /** Natural ground just before the work, and just after it: what lies between was taken out. */
  top: number;
  bottom: number;
}

/** Tries for one accepted place before a work's ring counts as too thin to sample. */
const TRIES = 400;

/**
 * Columns spread evenly over the daylight outline of every work that cuts natural ground, `each` of
 * them a work, all of the same area. They sample what the dig computes exactly, so sums over them
 * are near the true volumes and not equal to them. Deterministic. `dig` is that of the same scheme.
 */
export function dugColumns(
  site: Site,
  scheme: Scheme,
  base: BaseGround,
  dig: DigResult,
  each: number,
): DugColumn[] {
  const [ox, oy] = base.tin.origin;
  const byWork = dig.works.map(({ outlines, daylight }, work) =>
    outlines ? spread(localRings(outlines.daylight, ox, oy), daylight, work, each) : [],
  );
  const tops = byWork.map((places) => places.map(() => NaN));
  const columns: DugColumn[] = [];
  const { ground } = digScheme(site, scheme, base, (when, number, now) => {
    byWork[number]!.forEach((place, i) => {
      const z = naturalTop(now, place.x, place.y);
      if (when === "before") tops[number]![i] = z;
      else if (z < tops[number]![i]!) {
        const found = elevationAt(base.tin, place.x, place.y) ?? NaN;
        columns.push({ ...place, found, top: tops[number]![i]!, bottom: z });
      }
    });
  });
  ground.release();
  return columns.filter(({ found }) => Number.isFinite(found));
}

function localRings(rings: Rings, ox: number, oy: number): Rings {
  return rings.map((ring) => ring.map(([x, y]) => [x - ox, y - oy] as const));
}

/** Highest natural ground at a place, local m; NaN beyond the survey. */
function naturalTop(ground: LayeredGround, x: number, y: number): number {
  const natural = groundColumn(ground, x, y)?.find(({ by }) => by < 0);
  return natural ? natural.top : NaN;
}

/** True within outer rings and outside holes. */
function inside(rings: Rings, x: number, y: number): boolean {
  return rings.reduce((within, ring) => insideOutline(ring, x, y) !== within, false);
}

interface Spread {
  work: number;
  x: number;
  y: number;
  area: number;
}

// Fractions of the plastic number's powers: a sequence that fills a rectangle evenly whatever its
// length (M. Roberts's R2, after the additive recurrences of Weyl).
const STEP_X = 0.7548776662466927;
const STEP_Y = 0.5698402909980532;

function spread(rings: Rings, area: number, work: number, each: number): Spread[] {
  let [left, low, right, high] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const ring of rings) {
    for (const [x, y] of ring) {
      [left, right] = [Math.min(left, x), Math.max(right, x)];
      [low, high] = [Math.min(low, y), Math.max(high, y)];
    }
  }
  const places: { x: number; y: number }[] = [];
  for (let i = 1; places.length < each && i <= each * TRIES; i++) {
    const x = left + (right - left) * ((0.5 + i * STEP_X) % 1);
    const y = low + (high - low) * ((0.5 + i * STEP_Y) % 1);
    if (inside(rings, x, y)) places.push({ x, y });
  }
  return places.map((place) => ({ ...place, work, area: area / places.length }));
}
