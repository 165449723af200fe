/** What works cut close beside lines in the ground, by sampling the ground before and after each. */
import { groundColumn, type BaseGround, type ColumnLayer } from "../ground/index.js";
import type { Limit, PlanPoint, Scheme, Site } from "../site/index.js";
import { digScheme } from "./dig.js";
import { areasOf, besideLine, inAreas, overlapOf, sizeOfAreas, type Areas } from "./planAreas.js";
import type { ByMaterial, DigResult } from "./types.js";

/** What one work cuts within a distance of one line. */
export interface CutBeside {
  work: string;
  /** Id of the limit. */
  limit: string;
  /** m² of the work's hole within the distance. */
  area: number;
  /** m³ bank by material. */
  cut: ByMaterial;
  /** Where the hole is deepest on the line; where it crosses no line, its place nearest to it. */
  at: PlanPoint;
  /** m in plan from the line to that place; 0 where the line runs through the hole. */
  distance: number;
  /**
   * m of cut below the ground just before the work: at that place, or, where the line runs beside
   * the hole, the most within the distance.
   */
  depth: number;
}

/**
 * Places sampled in each overlap. They fill it evenly, so a mean over a face that slopes is out by
 * about 1 in 1,000, and by no more than 1 in 100 where a wall stands upright within it.
 */
const PLACES = 2000;
/** Tries for one of them before an overlap counts as too thin to sample. */
const TRIES = 50;
/** m between places along the line itself. */
const STEP = 0.1;

/** A place that is read before and after a work. */
interface Sample {
  at: PlanPoint;
  before: readonly ColumnLayer[] | null;
  after: readonly ColumnLayer[] | null;
}

interface Pair {
  number: number;
  work: string;
  limit: Limit;
  area: number;
  within: Sample[];
  /** Places on the line, in the hole. */
  along: Sample[];
}

/**
 * What each work cuts within `distance` m in plan of each of some lines, in the order of the works.
 * Digs the scheme once more where a hole comes so near, else not. `dig` is that of the same scheme.
 */
export function cutsBeside(
  ground: { site: Site; scheme: Scheme; base: BaseGround; dig: DigResult },
  lines: readonly Limit[],
  distance: number,
): CutBeside[] {
  const pairs = pairsOf(ground.dig, lines, distance);
  if (pairs.length === 0) return [];
  const [ox, oy] = ground.base.tin.origin;
  const { ground: dug } = digScheme(
    ground.site,
    ground.scheme,
    ground.base,
    (when, number, now) => {
      for (const pair of pairs) {
        if (pair.number !== number) continue;
        for (const sample of [...pair.within, ...pair.along]) {
          sample[when] = groundColumn(now, sample.at[0] - ox, sample.at[1] - oy);
        }
      }
    },
  );
  dug.release();
  return pairs.flatMap(cutOf);
}

function pairsOf(dig: DigResult, lines: readonly Limit[], distance: number): Pair[] {
  const near = lines.flatMap((limit) =>
    limit.path === undefined || limit.path.length < 2
      ? []
      : [{ limit, path: limit.path, areas: besideLine(limit.path, distance) }],
  );
  return dig.works.flatMap(({ id, outlines }, number) => {
    if (near.length === 0 || outlines === undefined) return [];
    const hole = areasOf(outlines.daylight);
    return near.flatMap(({ limit, path, areas }) => {
      const overlap = overlapOf(hole, areas);
      const area = sizeOfAreas(overlap);
      if (area === 0) return [];
      const along = placesOn(path).filter((at) => inAreas(at, hole));
      const within = placesIn(overlap);
      return [
        {
          ...{ number, work: id, limit, area },
          within: within.map(unread),
          along: along.map(unread),
        },
      ];
    });
  });
}

const unread = (at: PlanPoint): Sample => ({ at, before: null, after: null });

// Fractions that fill a rectangle evenly whatever their count (additive recurrence).
const STEP_X = 0.7548776662466927;
const STEP_Y = 0.5698402909980532;

function placesIn(areas: Areas): PlanPoint[] {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of areas.flat(2)) {
    [west, east] = [Math.min(west, x), Math.max(east, x)];
    [south, north] = [Math.min(south, y), Math.max(north, y)];
  }
  const places: PlanPoint[] = [];
  for (let i = 1; i <= PLACES * TRIES && places.length < PLACES; i++) {
    const at: PlanPoint = [
      west + (east - west) * ((0.5 + i * STEP_X) % 1),
      south + (north - south) * ((0.5 + i * STEP_Y) % 1),
    ];
    if (inAreas(at, areas)) places.push(at);
  }
  return places;
}

function placesOn(path: readonly PlanPoint[]): PlanPoint[] {
  return path.slice(1).flatMap((b, i) => {
    const a = path[i]!;
    const count = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / STEP));
    return Array.from({ length: count }, (_, k): PlanPoint => {
      const t = (k + 0.5) / count;
      return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
    });
  });
}

function cutOf({ number, work, limit, area, within, along }: Pair): CutBeside[] {
  const cut: Record<string, number> = {};
  const share = area / Math.max(1, within.length);
  for (const sample of within) {
    for (const [material, thick] of Object.entries(takenOut(sample, number))) {
      cut[material] = (cut[material] ?? 0) + thick * share;
    }
  }
  const place = placeOf(along, within, limit, number);
  return place === null ? [] : [{ work, limit: limit.id, area, cut, ...place }];
}

function placeOf(
  along: readonly Sample[],
  within: readonly Sample[],
  limit: Limit,
  number: number,
): Pick<CutBeside, "at" | "distance" | "depth"> | null {
  const deepest = most(along, (sample) => depthOf(sample, number));
  if (deepest !== null) return { at: deepest.at, distance: 0, depth: depthOf(deepest, number) };
  const away = (at: PlanPoint): number => distanceToPath(at, limit.path ?? []);
  const nearest = most(within, ({ at }) => -away(at));
  if (nearest === null) return null;
  const depth = Math.max(...within.map((sample) => depthOf(sample, number)));
  return { at: nearest.at, distance: away(nearest.at), depth };
}

function most<T>(all: readonly T[], score: (one: T) => number): T | null {
  let best: { one: T; score: number } | null = null;
  for (const one of all) {
    const now = score(one);
    if (best === null || now > best.score) best = { one, score: now };
  }
  return best?.one ?? null;
}

function depthOf(sample: Sample, number: number): number {
  return Object.values(takenOut(sample, number)).reduce((sum, thick) => sum + thick, 0);
}

/** m of each material that work `number` took out at a place. */
function takenOut({ before, after }: Sample, number: number): Record<string, number> {
  const taken: Record<string, number> = {};
  // What the work itself has put in lies over what it left standing.
  const left = after?.find(({ by }) => by !== number)?.top;
  if (before === null || left === undefined) return taken;
  for (const { material, structure, top, bottom } of before) {
    const thick = top - Math.max(left, bottom ?? left);
    if (!structure && thick > 0) taken[material] = (taken[material] ?? 0) + thick;
  }
  return taken;
}

function distanceToPath([x, y]: PlanPoint, path: readonly PlanPoint[]): number {
  let least = Infinity;
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1]!, path[i]!];
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const square = dx * dx + dy * dy;
    const along = square === 0 ? 0 : ((x - a[0]) * dx + (y - a[1]) * dy) / square;
    const t = Math.min(1, Math.max(0, along));
    least = Math.min(least, Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy));
  }
  return least;
}
