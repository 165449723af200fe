/** Bare ground of a scheme: how much, where its water goes, and the barrier that holds its soil. */
import { inAreas, sizeOfAreas, type Areas, type WorkQuantities } from "../dig/index.js";
import { elevationAt, type BaseGround } from "../ground/index.js";
import { drainageOf, type WayPoint } from "../runoff/index.js";
import { limitKind, ruleOf } from "../site/index.js";
import type { Finding, Limit, PlanPoint, Quantity, Scheme, Site } from "../site/index.js";
import { area as areaMeasure, distance, land as landMeasure } from "../units/index.js";
import { barrierBelow, lowestOf } from "./barrier.js";
import { disturbedGround, driveGround, isBuiltDrive } from "./disturbed.js";
import { floodFindings } from "./floodWork.js";

/** What a scheme does to the land; places in site coordinates, m. */
export interface LandResult {
  /** m² laid bare, each place once. */
  disturbed: Quantity;
  /** m of erosion barrier. */
  barrier: Quantity;
  /** Its lines, [x, y, z]. */
  barriers: readonly (readonly (readonly [number, number, number])[])[];
  /** m² of bare ground whose water reaches a limit that carries or holds water. */
  reaches: readonly { limit: string; name: string; area: number; at: PlanPoint }[];
}

/** Limits into which no soil may wash. */
const WATERS = ["watercourse", "seasonal-watercourse", "ditch", "flood-path", "wetland", "spring"];

type Place = readonly [number, number];

/** Bare ground, its barrier, and what is to be said of both. */
export function checkLand(
  site: Site,
  scheme: Scheme,
  works: readonly WorkQuantities[],
  base: BaseGround,
): { land: LandResult; findings: Finding[] } {
  const { tin } = base;
  const [ox, oy, oz] = tin.origin;
  const groundAt = ([x, y]: PlanPoint): number => (elevationAt(tin, x - ox, y - oy) ?? NaN) + oz;
  const bare = disturbedGround(scheme, works, groundAt, site.limits);
  const lines = barriersOf(site, bare, base);
  const barriers = lines.map((line) =>
    line.map(([x, y]) => [x + ox, y + oy, (elevationAt(tin, x, y) ?? NaN) + oz] as const),
  );
  const waters = (site.limits ?? []).filter(({ kind }) => WATERS.includes(kind));
  const ways = waters.length === 0 ? [] : waysFrom(bare, base);
  const washed = { ways, bare: sizeOfAreas(bare), origin: [ox, oy] as const };
  const reaches = waters.flatMap((limit) => reachOf(site, limit, washed));
  const land = {
    disturbed: disturbedQuantity(bare),
    barrier: barrierQuantity(site, lines),
    barriers,
    reaches,
  };
  const drives = unmeasuredDrives(site.limits ?? []);
  const flood = floodFindings(site.limits ?? [], scheme, works);
  return { land, findings: [...findingsOf(site, land), ...drives, ...flood] };
}

function disturbedQuantity(bare: Areas): Quantity {
  return {
    value: sizeOfAreas(bare),
    unit: "m²",
    formula:
      "union in plan of every hole's edge, pad with its fill, strip, pile, bed, building and drive built for the job; tracks of machines are not counted",
    inputs: bare.map((polygon, i) => ({
      name: `area ${i + 1}`,
      value: sizeOfAreas([polygon]),
      unit: "m²",
    })),
    source: "geometry",
  };
}

function barrierQuantity(site: Site, lines: readonly (readonly Place[])[]): Quantity {
  const off = ruleOf(site, "barrier-off");
  const inputs = lines.map((line, i) => ({
    name: `line ${i + 1}`,
    value: lengthOf(line),
    unit: "m",
  }));
  return {
    value: inputs.reduce((sum, { value }) => sum + value, 0),
    unit: "m",
    formula: `sum of lines that keep their height, ${distance.print(off.value, site.units)} below the lowest place of each bare area, from side to side of it; none where its water runs on through another`,
    inputs,
    source: `geometry of the ground as found; ${off.source}`,
  };
}

/** A line below each bare area, but for those whose water comes to another bare area first; local. */
function barriersOf(site: Site, bare: Areas, { tin }: BaseGround): Place[][] {
  const [ox, oy] = tin.origin;
  const off = ruleOf(site, "barrier-off").value;
  const { tracer } = drainageOf(tin);
  return bare.flatMap((polygon, number) => {
    const outline = (polygon[0] ?? []).map(([x, y]): Place => [x - ox, y - oy]);
    const lowest = lowestOf(tin, outline);
    if (lowest === null) return [];
    const others = bare.filter((_, i) => i !== number);
    const way = placesAlong(tracer.from(...lowest)?.path ?? []);
    if (others.length > 0 && way.some(([x, y]) => inAreas([x + ox, y + oy], others))) return [];
    const line = barrierBelow(tin, outline, off);
    return line === null ? [] : [[...line]];
  });
}

/** m between places at which a way is looked at. */
const STEP = 0.5;

/** Places along a path at most a step apart, its last one only when asked for. */
function placesAlong(
  path: readonly (readonly [number, number, ...number[]])[],
  withLast = true,
): Place[] {
  return path.flatMap((a, i): Place[] => {
    const b = path[i + 1];
    if (b === undefined) return withLast ? [[a[0], a[1]]] : [];
    const count = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / STEP));
    return Array.from({ length: count }, (_, k): Place => {
      const t = k / count;
      return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
    });
  });
}

/** Ways followed from the bare ground: what reaches a water is known to 1 in 60 of it. */
const STARTS = 60;
const STEP_X = 0.7548776662466927;
const STEP_Y = 0.5698402909980532;

/** The ways of the water from places spread evenly over the bare ground, local. */
function waysFrom(bare: Areas, { tin }: BaseGround): (readonly WayPoint[])[] {
  const [ox, oy] = tin.origin;
  const { tracer } = drainageOf(tin);
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of bare.flat(2)) {
    [west, east] = [Math.min(west, x), Math.max(east, x)];
    [south, north] = [Math.min(south, y), Math.max(north, y)];
  }
  const ways: (readonly WayPoint[])[] = [];
  for (let i = 1; i <= 40 * STARTS && ways.length < STARTS; i++) {
    const x = west + (east - west) * ((0.5 + i * STEP_X) % 1);
    const y = south + (north - south) * ((0.5 + i * STEP_Y) % 1);
    if (!inAreas([x, y], bare)) continue;
    ways.push(tracer.from(x - ox, y - oy)?.path ?? []);
  }
  return ways;
}

/** How much of the bare ground sends its water to a limit; none where no way comes near it. */
function reachOf(
  site: Site,
  limit: Limit,
  { ways, bare, origin }: { ways: readonly (readonly WayPoint[])[]; bare: number; origin: Place },
): LandResult["reaches"][number][] {
  const within = ruleOf(site, "drains-within").value + (limit.width ?? 0) / 2;
  const box = boxAround(limit, within);
  const met = ways.flatMap((way) => {
    for (const [x, y] of placesNear(way, origin, box)) {
      const at: PlanPoint = [x + origin[0], y + origin[1]];
      if (distanceTo(limit, at) <= within) return [at];
    }
    return [];
  });
  const [first] = met;
  if (first === undefined) return [];
  const name = limit.name ?? limitKind(limit.kind)?.name ?? limit.kind;
  return [{ limit: limit.id, name, area: (met.length / ways.length) * bare, at: first }];
}

/** Places along a way (local), but for those on legs that keep out of a box (site coordinates). */
function* placesNear(
  way: readonly WayPoint[],
  [ox, oy]: Place,
  [west, south, east, north]: readonly [number, number, number, number],
): Generator<Place> {
  for (const [i, a] of way.entries()) {
    const b = way[i + 1] ?? a;
    if (Math.max(a[0], b[0]) + ox < west || Math.min(a[0], b[0]) + ox > east) continue;
    if (Math.max(a[1], b[1]) + oy < south || Math.min(a[1], b[1]) + oy > north) continue;
    yield* placesAlong(b === a ? [a] : [a, b], b === a);
  }
}

/** A box that nothing within a distance of a limit lies outside of. */
function boxAround(
  { at, path = [], radius = 0 }: Limit,
  within: number,
): [number, number, number, number] {
  // A little more, since a distance is rounded.
  const reach = within + radius + 1e-3;
  const places = at === undefined ? path : [at, ...path];
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  return [
    Math.min(...xs) - reach,
    Math.min(...ys) - reach,
    Math.max(...xs) + reach,
    Math.max(...ys) + reach,
  ];
}

/** m in plan from a limit's place, line or area. */
function distanceTo({ at, path, closed, radius = 0 }: Limit, place: PlanPoint): number {
  const spot =
    at === undefined ? Infinity : Math.hypot(place[0] - at[0], place[1] - at[1]) - radius;
  const [first] = path ?? [];
  if (path === undefined || first === undefined) return spot;
  const ring = closed === true ? [...path, first] : path;
  if (closed === true && inAreas(place, [[ring]])) return 0;
  return ring.slice(1).reduce((least, b, i) => {
    const a = ring[i]!;
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const square = dx * dx + dy * dy;
    const along = square === 0 ? 0 : ((place[0] - a[0]) * dx + (place[1] - a[1]) * dy) / square;
    const t = Math.min(1, Math.max(0, along));
    return Math.min(least, Math.hypot(place[0] - a[0] - t * dx, place[1] - a[1] - t * dy));
  }, spot);
}

function lengthOf(line: readonly Place[]): number {
  return line.slice(1).reduce((sum, b, i) => {
    const a = line[i]!;
    return sum + Math.hypot(b[0] - a[0], b[1] - a[1]);
  }, 0);
}

/** Drives that the job builds whose ground cannot be counted. */
function unmeasuredDrives(limits: readonly Limit[]): Finding[] {
  return limits
    .filter((limit) => isBuiltDrive(limit) && driveGround(limit).length === 0)
    .map(({ id, name }) => ({
      ...{ level: "note", code: "land.drive-width", where: id },
      text: `${name ?? "The drive"} is built for the job, but its width is not given: its ground is not counted as laid bare. Enter its width.`,
      source: "geometry",
    }));
}

function findingsOf(site: Site, { disturbed, barrier, reaches }: LandResult): Finding[] {
  const { units } = site;
  const findings: Finding[] = [];
  const from = ruleOf(site, "disturbed-from");
  if (disturbed.value >= from.value) {
    findings.push({
      level: "caution",
      code: "land.permit",
      where: "site",
      text: `The works lay bare ${landMeasure.print(disturbed.value, units)}, piles counted and tracks of machines not. From ${landMeasure.print(from.value, units)} a stormwater permit is asked for before the ground is broken: ask your office.`,
      source: from.source,
    });
  }
  const within = ruleOf(site, "drains-within");
  const [first, ...others] = reaches;
  if (first !== undefined) {
    const names = [first, ...others].map(
      ({ name, area }) => `${name} (${areaMeasure.print(area, units)})`,
    );
    const hold =
      barrier.value > 0
        ? `Put an erosion barrier below the work before digging, here some ${distance.print(barrier.value, units)} along the slope`
        : "Put an erosion barrier below the work before digging";
    findings.push({
      level: "caution",
      code: "land.drains",
      where: "site",
      at: first.at,
      text: `Water from bare ground runs to ${names.join(names.length === 2 ? " and " : ", ")}. ${hold}, and keep it until grass holds the soil.`,
      source: `geometry: steepest descent over the survey to within ${distance.print(within.value, units)}: ${within.source}; ask your office what it wants`,
    });
  }
  return findings;
}
