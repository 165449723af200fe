/** A trench cut across on its way: bedding, pipes, pipe zone and backfill as entered. */
import { heightOn, sectionAlong } from "../../estimate/index.js";
import type { Estimate, PipeCheck, Section } from "../../estimate/index.js";
import type { PlanPoint, Scheme, Site, Trench } from "../../site/index.js";
import { distance, elevation, length, size } from "../../units/index.js";
import { words } from "../../words/index.js";
import { nameOfMaterial } from "../earthNames.js";
import type { Mark } from "../paper.js";
import type { Callout } from "./callouts.js";
import { upTo } from "./cuts.js";
import type { DetailSpec } from "./detailSpec.js";
import type { Span } from "./dimensionRows.js";
import { namedMarks, wishFor } from "./names.js";
import { valueAt } from "./profileData.js";
import { crossPipes } from "./sectionPipes.js";
import { TEXT } from "./pens.js";
import { boxOf, spotOf, type View } from "./view.js";
import { sayRun, wallSlopes } from "./wallSlopes.js";

/** m of ground beside the opening, and over and under all. */
const BESIDE = 0.2;
const OVER = 0.15;
const UNDER = 0.2;
/** Places along a pipe at which its depth is compared. */
const PLACES = 40;

/** Null where the ground along the trench is not known. */
export function trenchDetail(
  site: Site,
  scheme: Scheme,
  estimate: Estimate,
  trench: Trench,
): DetailSpec | null {
  const checks = estimate.flow.pipes.filter((check) => check.trench === trench.id);
  const place = deepestPlace(checks);
  if (place === null) return null;
  const { at, u, station } = place;
  const wide = estimate.holes.find(({ work }) => work === trench.id)?.width?.drawn;
  const half = Math.max(trench.width, wide ?? 0) / 2 + BESIDE;
  // Seen along the path: its left-hand side is drawn to the left.
  const line: [PlanPoint, PlanPoint] = [
    [at[0] - u[1] * half, at[1] + u[0] * half],
    [at[0] + u[1] * half, at[1] - u[0] * half],
  ];
  const parts = partsOf(trench, checks, station);
  const shown = sectionAlong(site, scheme.id, "backfilled", line);
  const heights = [...shown.surface, ...shown.found].flat().map(([, z]) => z);
  if (heights.length === 0) return null;
  const low = parts.floor - UNDER;
  const finished = sectionAlong(site, scheme.id, "backfilled", line, low);
  const dug = sectionAlong(upTo(site, scheme, trench), scheme.id, "dug", line);
  const ground = heightOn(finished.surface, half) ?? parts.zoneTop;
  const { detail } = words.sheetsSections;
  return {
    subject: `detail:trench:${trench.id}`,
    title: trench.name,
    said: detail.atStation(distance.print(station, site.units, { digits: 1 })),
    from: 0,
    to: finished.length,
    low,
    high: Math.max(...heights) + OVER,
    finished,
    dug,
    paint: (view) => paintTrench(site, finished, dug, view),
    callouts: calloutsOf({ site, trench, checks, parts, ground, half }),
    beside: uprightOf(parts, ground),
    across: [[{ from: half - trench.width / 2, to: half + trench.width / 2, name: detail.floor }]],
  };
}

interface DeepPlace {
  at: PlanPoint;
  /** Unit direction of the path there. */
  u: PlanPoint;
  station: number;
}

/** Where the first pipe lies deepest on the middle of its way, clear of the holes at its ends. */
function deepestPlace(checks: readonly PipeCheck[]): DeepPlace | null {
  const [check] = checks;
  if (check === undefined) return null;
  let best: (DeepPlace & { depth: number }) | null = null;
  for (let i = 0; i < PLACES; i++) {
    const station = (0.3 + (0.4 * (i + 0.5)) / PLACES) * check.length;
    const depth = valueAt(check, station, "ground") - valueAt(check, station, "invert");
    if (!Number.isFinite(depth) || (best !== null && depth <= best.depth + 1e-9)) continue;
    const next = check.stations.findIndex((each) => each.station > station);
    const [a, b] = [check.stations[next - 1], check.stations[next]];
    if (a === undefined || b === undefined) continue;
    const long = b.station - a.station;
    const u: PlanPoint = [(b.at[0] - a.at[0]) / long, (b.at[1] - a.at[1]) / long];
    const along = station - a.station;
    const at: PlanPoint = [a.at[0] + u[0] * along, a.at[1] + u[1] * along];
    best = { at, u, station, depth };
  }
  return best;
}

/** Elevations in the trench at a station, m. */
interface Parts {
  floor: number;
  bedding: number;
  /** Of the highest pipe's top outside. */
  crown: number;
  zoneTop: number;
  inverts: ReadonlyMap<string, number>;
}

function partsOf(trench: Trench, checks: readonly PipeCheck[], station: number): Parts {
  const inverts = new Map(checks.map((check) => [check.id, valueAt(check, station, "invert")]));
  const laid = trench.pipes.flatMap(({ id, inside, outside }) => {
    const invert = inverts.get(id);
    if (invert === undefined) return [];
    const underside = invert - (outside - inside) / 2;
    return [{ underside, crown: underside + outside }];
  });
  const underside = Math.min(...laid.map((each) => each.underside));
  const crown = Math.max(...laid.map((each) => each.crown));
  return {
    floor: underside - trench.bedding.depth,
    bedding: underside,
    crown,
    zoneTop: crown + trench.zone.above,
    inverts,
  };
}

function uprightOf({ floor, bedding, crown, zoneTop }: Parts, ground: number): Span[] {
  const { detail } = words.sheetsSections;
  const spans = [
    { from: floor, to: bedding, name: detail.bedding },
    { from: bedding, to: crown, name: detail.pipes },
    { from: crown, to: zoneTop, name: detail.zoneAbove },
    { from: zoneTop, to: ground, name: detail.backfill },
  ];
  return spans.filter(({ from, to }) => to - from > 0.001);
}

interface About {
  site: Site;
  trench: Trench;
  checks: readonly PipeCheck[];
  parts: Parts;
  ground: number;
  half: number;
}

function calloutsOf({ site, trench, checks, parts, ground, half }: About): Callout[] {
  const { detail } = words.sheetsSections;
  const level = (z: number): string => elevation.print(z, site.units);
  const from = half;
  const crown = trench.crown === undefined || trench.crown === 0 ? "" : detail.crowned;
  const pipes = checks.map((check): Callout => {
    const pipe = trench.pipes.find(({ id }) => id === check.id);
    const invert = parts.inverts.get(check.id)!;
    const outside = size.print(pipe?.outside ?? check.inside, site.units);
    const wanted = detail.wanted(length.print(check.leastCover.value, site.units));
    const least = detail.cover(length.print(check.cover.least, site.units));
    return {
      height: invert + check.inside / 2,
      from,
      text: `${detail.pipe(check.name, pipe?.material ?? "", outside, level(invert))}; ${least}, ${wanted}`,
    };
  });
  const callouts: Callout[] = [
    { height: ground, from, text: detail.ground(level(ground)) },
    {
      height: (ground + parts.zoneTop) / 2,
      from,
      text: `${detail.backfillOf(nameOfMaterial(site, trench.backfill))}${crown}`,
    },
    {
      height: (parts.zoneTop + parts.crown) / 2,
      from,
      text: detail.zoneOf(nameOfMaterial(site, trench.zone.material)),
    },
    ...pipes,
    {
      height: (parts.floor + parts.bedding) / 2,
      from,
      text: detail.beddingOf(nameOfMaterial(site, trench.bedding.material)),
    },
    {
      height: parts.floor,
      from: half + trench.width / 2,
      text: detail.floorAt(level(parts.floor)),
    },
  ];
  return callouts.sort((a, b) => b.height - a.height);
}

function paintTrench(site: Site, finished: Section, dug: Section, view: View): Mark[] {
  const [left, top, width, height] = boxOf(view);
  const pipes = crossPipes(finished.pipes, view);
  const slopes = wallSlopes(dug.surface, 0, finished.length, 0.15).map(({ at, run }, i) => ({
    ...wishFor(`slope ${i}`, sayRun(run, site.units), spotOf(view, at), 1),
    face: "text" as const,
    size: TEXT.small,
  }));
  return [...pipes, ...namedMarks(slopes, [], { left, top, width, height })];
}
