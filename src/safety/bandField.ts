/** How far inside the setbacks of a scheme every place of a box lies, on an even grid of places. */
import type { PlanPoint, Scheme, Setback, Site } from "../site/index.js";
import { askedOf, coresOf, isRing, type Asked } from "./bands.js";
import type { Core } from "./offset.js";
import { boundsOf, setbacksOf } from "./setbacks.js";
import { bodiesOf } from "./shapes.js";

/** One limit with the distances asked of it, m in plan, site coordinates. Plain data. */
export interface LimitAsked {
  /** Stretches and places from which the distances are measured. */
  cores: readonly Omit<Core, "distance">[];
  /** m that the limit's own edge lies out from its cores: the circle about a place. */
  radius: number;
  /** Edges of the areas in which one is at no distance from the limit. */
  areas: readonly (readonly PlanPoint[])[];
  /** The closed lot line beyond which no band lies; null for any other limit. */
  within: readonly PlanPoint[] | null;
  asked: readonly Asked[];
}

/** All that is asked of a scheme, and the parts of it that are asked to keep off anything at all. */
export interface SetbacksAsked {
  limits: readonly LimitAsked[];
  parts: readonly Setback["from"][];
}

/** Parts that a scheme will have, where neither its works nor the table name one. */
const SYSTEM: readonly Setback["from"][] = ["tank", "field"];

/** What every limit asks of a scheme's parts; of all that the table knows while it has none. */
export function setbacksAsked(
  site: Pick<Site, "limits" | "setbacks">,
  scheme: Scheme,
): SetbacksAsked {
  const rows = setbacksOf(site);
  const present = new Set<Setback["from"]>(bodiesOf(scheme).map(({ from }) => from));
  const counts = (from: Setback["from"]): boolean => present.size === 0 || present.has(from);
  const listed = rows.flatMap(({ from }) => (from !== "dig" && counts(from) ? [from] : []));
  const known = listed.length > 0 ? listed : [...present];
  const parts = known.length > 0 ? [...new Set(known)] : [...SYSTEM];
  const limits = boundsOf(site, scheme).flatMap((bound): LimitAsked[] => {
    const asked = askedOf(bound, rows, new Set(parts));
    if (asked.length === 0) return [];
    const { limit, kind, shapes } = bound;
    if (limit?.at !== undefined && limit.path === undefined) {
      const cores = [{ a: limit.at, b: limit.at }];
      return [{ cores, radius: limit.radius ?? 0, areas: [], within: null, asked }];
    }
    const within = kind === "lot-line" && isRing(limit) ? (limit?.path ?? null) : null;
    const areas = shapes.flatMap(({ points, closed }) =>
      closed && points.length > 2 ? [points] : [],
    );
    const cores = shapes.flatMap((shape) => coresOf(shape, 0).map(({ a, b }) => ({ a, b })));
    return [{ cores, radius: 0, areas, within, asked }];
  });
  return { limits, parts };
}

/** Where a field is wanted: m in plan, site coordinates. */
export interface FieldBox {
  west: number;
  south: number;
  east: number;
  north: number;
}

/**
 * m by which each place lies inside a band, negative outside all, and −Infinity where every limit is
 * farther off than its bands reach. Place `row * columns + column` lies at (west + column × step,
 * south + row × step).
 */
export interface SetbackField {
  west: number;
  south: number;
  /** m between neighbouring places. */
  step: number;
  columns: number;
  rows: number;
  /** Inside a setback of any part. */
  some: Float32Array;
  /** Inside setbacks of every part that is asked to keep off anything. */
  every: Float32Array;
}

/** Places along the longer side of a field, and the least m between them. */
const PLACES = 160;
const FINEST = 0.2;

/** The setbacks over a box; null where nothing is asked. */
export function setbackField(asks: SetbacksAsked, box: FieldBox): SetbackField | null {
  if (asks.limits.length === 0 || asks.parts.length === 0) return null;
  const { west, south } = box;
  const [wide, high] = [box.east - west, box.north - south];
  const step = Math.max(FINEST, Math.max(wide, high) / PLACES);
  const [columns, rows] = [Math.ceil(wide / step) + 1, Math.ceil(high / step) + 1];
  const bands = asks.limits.map((limit) => flatBand(limit, asks.parts, 2 * step));
  const some = new Float32Array(columns * rows);
  const every = new Float32Array(columns * rows);
  const deepest = new Float64Array(asks.parts.length);
  for (let i = 0; i < columns * rows; i++) {
    const [x, y] = [west + (i % columns) * step, south + Math.floor(i / columns) * step];
    deepest.fill(-Infinity);
    for (const band of bands) deepen(deepest, x, y, band);
    let [most, least] = [-Infinity, Infinity];
    for (const deep of deepest) [most, least] = [Math.max(most, deep), Math.min(least, deep)];
    [some[i], every[i]] = [most, least];
  }
  return { west, south, step, columns, rows, some, every };
}

/** A limit in flat arrays, since a field asks it some 25,000 times. */
interface FlatBand {
  /** x y, then x and y to the other end, of each core. */
  cores: Float64Array;
  radius: number;
  areas: readonly Float64Array[];
  within: Float64Array | null;
  /** For each part the distance that it has to keep; −Infinity for none. */
  keeps: Float64Array;
  /** The box beyond which none of its bands comes near. */
  reach: FieldBox;
}

function flatBand(limit: LimitAsked, parts: SetbacksAsked["parts"], beside: number): FlatBand {
  const { cores, radius, areas, within, asked } = limit;
  const kept = parts.map((part) =>
    asked.reduce((most, one) => {
      return one.parts.includes(part) ? Math.max(most, one.distance) : most;
    }, -Infinity),
  );
  const far = radius + beside + Math.max(...kept);
  const places = cores.flatMap(({ a, b }) => [a, b]);
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  return {
    cores: Float64Array.from(cores.flatMap(({ a, b }) => [a[0], a[1], b[0] - a[0], b[1] - a[1]])),
    radius,
    areas: areas.map((ring) => Float64Array.from(ring.flat())),
    within: within && Float64Array.from(within.flat()),
    keeps: Float64Array.from(kept),
    reach: {
      ...{ west: Math.min(...xs) - far, east: Math.max(...xs) + far },
      ...{ south: Math.min(...ys) - far, north: Math.max(...ys) + far },
    },
  };
}

/** Takes a limit's bands into how deep a place lies inside those that each part has to keep, m. */
function deepen(deepest: Float64Array, x: number, y: number, band: FlatBand): void {
  const { reach, within, areas, keeps } = band;
  if (x < reach.west || x > reach.east || y < reach.south || y > reach.north) return;
  const far = Math.sqrt(nearestSquared(band.cores, x, y));
  // Beyond the lot line no band lies; within an area one is as near as can be.
  const most = within === null ? Infinity : isWithin(within, x, y) ? far : -far;
  const off = areas.some((ring) => isWithin(ring, x, y)) ? -far : far - band.radius;
  for (let k = 0; k < keeps.length; k++) {
    const deep = Math.min(keeps[k]! - off, most);
    if (deep > deepest[k]!) deepest[k] = deep;
  }
}

/** m² from a place to the nearest of the cores. */
function nearestSquared(cores: Float64Array, x: number, y: number): number {
  let least = Infinity;
  for (let i = 0; i < cores.length; i += 4) {
    const [dx, dy] = [cores[i + 2]!, cores[i + 3]!];
    const [px, py] = [x - cores[i]!, y - cores[i + 1]!];
    const square = dx * dx + dy * dy;
    const t = square === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / square));
    const [ex, ey] = [px - t * dx, py - t * dy];
    least = Math.min(least, ex * ex + ey * ey);
  }
  return least;
}

/** Whether a place lies within a ring of x y x y …, by the even–odd rule. */
function isWithin(ring: Float64Array, x: number, y: number): boolean {
  let odd = false;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const [ay, by] = [ring[j + 1]!, ring[i + 1]!];
    if (ay > y === by > y) continue;
    if (x < ring[j]! + ((y - ay) / (by - ay)) * (ring[i]! - ring[j]!)) odd = !odd;
  }
  return odd;
}
