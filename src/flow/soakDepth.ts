/** How much soil lies under the level at which effluent soaks in, down to groundwater and rock. */
import type { PipeRun } from "../dig/index.js";
import {
  materialsOf,
  type Bed,
  type Finding,
  type PlanPoint,
  type Scheme,
  type Site,
  type Trench,
} from "../site/index.js";
import { rectangleInPlan } from "./planDistance.js";
import { flowRule } from "./rules.js";
import type { Wording } from "./wording.js";

/** What is known of the ground under a field; site coordinates, m. */
export interface SoakGround {
  groundAt: (place: PlanPoint) => number;
  /** Depth below the ground at which the probes met water, m; null or absent where none did. */
  waterAt?: ((place: PlanPoint) => number) | null;
  /** Depth of the first rock below the ground and its name; null or absent where no probe tells. */
  rockAt?: ((place: PlanPoint) => { depth: number; name: string }) | null;
}

/** A place on the level from which is counted. */
interface Soaking {
  at: PlanPoint;
  /** Elevation, m. */
  level: number;
  /** Where in the work it is, in words. */
  where: string;
}

/** The least soil under a work over one thing that limits it; m, negative where it lies deeper. */
interface Margin {
  soil: number;
  /** What limits it, in words: "groundwater as high as set". */
  over: string;
  where: string;
}

/** Parts of a bed's length and width at which is looked, from its middle. */
const PARTS = [-0.5, -0.25, 0, 0.25, 0.5];
/** m between the places looked at along a trench. */
const STEP = 1;
/** m: less than this short is finer than anyone digs. */
const SLACK = 0.005;

/**
 * One finding for every bed, and every trench of the scheme's field, that has less soil under it than
 * asked. A raised bed, and a trench bedded on sand, count from the top of the sand, since the sand
 * filters as soil does. Silent about a work under which neither water nor rock is known.
 */
export function soakFindings(
  site: Site,
  scheme: Scheme,
  runs: readonly PipeRun[],
  ground: SoakGround,
  words: Wording,
): Finding[] {
  const field = new Set(scheme.flow?.field ?? []);
  const around = { scheme, ground, words };
  return scheme.works.flatMap((work): Finding[] => {
    if (work.kind === "bed") {
      const sand = sandUnder(work, site);
      return findingOf(work, bedPlaces(work, sand), countedFrom(sand, words), around);
    }
    if (work.kind !== "trench" || !field.has(work.id)) return [];
    const sand = SANDS.has(work.bedding.material) ? work.bedding.depth : 0;
    return findingOf(work, trenchPlaces(work, runs, words), countedFrom(sand, words), around);
  });
}

interface Around {
  scheme: Scheme;
  ground: SoakGround;
  words: Wording;
}

function findingOf(
  work: Bed | Trench,
  places: readonly Soaking[],
  counted: string,
  { scheme, ground, words }: Around,
): Finding[] {
  const [least, usual] = [flowRule("soak-depth", scheme), flowRule("soak-depth-usual", scheme)];
  const margins = [
    leastOver(places, waterBelow(scheme, ground)),
    leastOver(places, rockBelow(ground)),
  ];
  const known = margins.filter((margin) => margin !== null).sort((a, b) => a.soil - b.soil);
  const isLess = known.some(({ soil }) => soil < least.value - SLACK);
  const wanted = isLess ? least : usual;
  const short = known.filter(({ soil }) => soil < wanted.value - SLACK);
  if (short.length === 0) return [];
  const found = short.map(({ soil, over, where }) =>
    soil > 0
      ? `${words.length(soil)} down to ${over}, ${where}`
      : `${over} comes ${words.length(-soil)} over that level, ${where}`,
  );
  const asked = isLess
    ? `at least ${words.length(least.value)} is asked here`
    : `that is more than ${words.length(least.value)}, but many offices ask for up to ${words.length(usual.value)}`;
  const mend =
    work.kind === "bed"
      ? "Raise the bed or put more sand under its gravel, choose another place, or ask the office what it asks there."
      : "Lay it shallower, make a raised bed of it, choose another place, or ask the office what it asks there.";
  return [
    {
      level: isLess ? "caution" : "note",
      code: "field.little-soil",
      where: work.id,
      text: `Soil and sand under ${work.name}, counted ${counted}: ${found.join("; ")}; ${asked}. Effluent that comes to water or rock through too little unsaturated soil is not cleaned. ${mend} Local codes decide.`,
      source: wanted.source,
    },
  ];
}

const countedFrom = (sand: number, words: Wording): string =>
  sand > 0
    ? `from the top of its ${words.length(sand)} of sand, under the gravel`
    : "from its bottom";

/** The least soil between the places and what lies below them; null where it is known at none. */
function leastOver(
  places: readonly Soaking[],
  below: ((at: PlanPoint) => { elevation: number; over: string } | null) | null,
): Margin | null {
  let worst: Margin | null = null;
  for (const { at, level, where } of places) {
    const limit = below?.(at) ?? null;
    if (limit === null || !Number.isFinite(limit.elevation)) continue;
    const soil = level - limit.elevation;
    if (worst === null || soil < worst.soil) worst = { soil, over: limit.over, where };
  }
  return worst;
}

/** The higher of the groundwater that is set and that which the probes met. */
function waterBelow(
  scheme: Scheme,
  { groundAt, waterAt }: SoakGround,
): ((at: PlanPoint) => { elevation: number; over: string }) | null {
  const set = scheme.flow?.flotation?.water;
  if (set === undefined && !waterAt) return null;
  return (at) => {
    const met = waterAt ? waterAt(at) : NaN;
    // Where no probe's water reaches, the one that is set holds.
    const isMet = set === undefined || met < set;
    return {
      elevation: groundAt(at) - (isMet ? met : set),
      over: isMet ? "groundwater as the probes met it" : "groundwater as high as set",
    };
  };
}

function rockBelow({
  groundAt,
  rockAt,
}: SoakGround): ((at: PlanPoint) => { elevation: number; over: string }) | null {
  if (!rockAt) return null;
  return (at) => {
    const { depth, name } = rockAt(at);
    return { elevation: groundAt(at) - depth, over: `${name} (as the probes tell)` };
  };
}

function bedPlaces(bed: Bed, sand: number): Soaking[] {
  return PARTS.flatMap((along) =>
    PARTS.map((across): Soaking => {
      const size = { length: 2 * along * bed.length, width: 2 * across * bed.width };
      // The last corner of a rectangle so long and wide lies there.
      const at = rectangleInPlan({ ...bed, ...size }).points[2] ?? bed.at;
      return { at, level: bed.base + sand, where: partOf(bed.at, at) };
    }),
  );
}

const WINDS = [
  ...["north", "north-east", "east", "south-east"],
  ...["south", "south-west", "west", "north-west"],
];

/** Which part of a bed a place is in. */
function partOf([x, y]: PlanPoint, [u, v]: PlanPoint): string {
  if (Math.hypot(u - x, v - y) < SLACK) return "in its middle";
  const eighth = Math.round(Math.atan2(u - x, v - y) / (Math.PI / 4));
  return `in its ${WINDS[(eighth + 8) % 8] ?? ""}`;
}

/** Places along the middle and both sides of a trench's floor, as deep as its pipes let it come. */
function trenchPlaces(trench: Trench, runs: readonly PipeRun[], words: Wording): Soaking[] {
  const bedding = SANDS.has(trench.bedding.material) ? 0 : trench.bedding.depth;
  return runs
    .filter((run) => run.trench === trench.id)
    .flatMap((run) => {
      const under = (run.outside - run.inside) / 2 + bedding;
      return run.stations.slice(1).flatMap((b, i) => {
        const a = run.stations[i]!;
        return between(a, b).flatMap(({ at, station, invert }): Soaking[] => {
          const where =
            station < STEP / 4 ? "at its start" : `${words.distance(station)} from its start`;
          const sides = [at, beside(at, a.at, b.at, trench.width / 2)];
          sides.push(beside(at, a.at, b.at, -trench.width / 2));
          return sides.map((place) => ({ at: place, level: invert - under, where }));
        });
      });
    });
}

type Station = PipeRun["stations"][number];

/** Both stations and places between them, at most `STEP` apart. */
function between(a: Station, b: Station): Pick<Station, "at" | "station" | "invert">[] {
  const steps = Math.max(1, Math.ceil((b.station - a.station) / STEP));
  return Array.from({ length: steps + 1 }, (_, k) => {
    const mix = (from: number, to: number): number => from + ((to - from) * k) / steps;
    return {
      at: [mix(a.at[0], b.at[0]), mix(a.at[1], b.at[1])],
      station: mix(a.station, b.station),
      invert: mix(a.invert, b.invert),
    };
  });
}

/** The place so far to the left of another on the way from `a` to `b`. */
function beside([x, y]: PlanPoint, a: PlanPoint, b: PlanPoint, off: number): PlanPoint {
  const long = Math.max(Math.hypot(b[0] - a[0], b[1] - a[1]), Number.MIN_VALUE);
  return [x - (off * (b[1] - a[1])) / long, y + (off * (b[0] - a[0])) / long];
}

/** Materials of the catalogue that filter as soil does. */
const SANDS: ReadonlySet<string> = new Set(["drain-sand", "sand"]);

/** m of sand or soil at the bottom of a bed with gravel on it; 0 where there is no gravel on it. */
function sandUnder(bed: Bed, site: Site): number {
  const materials = materialsOf(site);
  const gravel = bed.filling.findIndex(
    ({ material }) => materials.get(material)?.kind === "aggregate" && !SANDS.has(material),
  );
  return bed.filling.slice(0, Math.max(0, gravel)).reduce((sum, { depth }) => sum + depth, 0);
}
