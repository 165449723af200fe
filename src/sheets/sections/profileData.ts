/** What the profile of a chain of pipes shows, before it is drawn. SI; stations along the chain. */
import { heightOn, joinedEnds, profileEvents, sectionAlong } from "../../estimate/index.js";
import type { Estimate, PipeCheck, ProfileEvent, Section } from "../../estimate/index.js";
import { isBuriedLine } from "../../site/index.js";
import type { Limit, PlanPoint, Scheme, Site } from "../../site/index.js";
import { words } from "../../words/index.js";
import { carriedOn, type Chain, type ChainRun } from "./chains.js";
import { rockTops } from "./earth.js";
import { crossingsInPlan } from "./planCrossings.js";

/** One column of the table under a profile. NaN where a figure is not known. */
export interface ProfileColumn {
  station: number;
  /** Names of what is there. */
  what: readonly string[];
  /** The higher, the later it is left out where the table has no room. */
  rank: number;
  found: number;
  finished: number;
  invert: number;
  floor: number;
  /** Ground just before the trench was dug, over the pipe's top outside. */
  cover: number;
}

/** A buried line of the site where it crosses the chain. */
export interface BuriedLine {
  station: number;
  name: string;
  /** Elevation of its top; null where nobody has said how deep it lies. */
  top: number | null;
}

export interface ProfileData {
  chain: Chain;
  /** m that the ground is shown beyond either end. */
  beyond: number;
  /** Along the chain's line carried on by `beyond`. */
  finished: Section;
  columns: readonly ProfileColumn[];
  buried: readonly BuriedLine[];
  rockTops: readonly (readonly (readonly [number, number])[])[];
  low: number;
  high: number;
}

/** m that the ground is shown beyond the ends, and over and under all that there is. */
const BEYOND = 1.5;
const OVER = 0.4;
const UNDER = 0.35;
/** m of a building that are shown: its foot. */
const BUILDING = 0.5;

/** Reads the profile of a chain; null where the survey has no ground along it. */
export function profileData(
  site: Site,
  scheme: Scheme,
  estimate: Estimate,
  chain: Chain,
): ProfileData | null {
  const line = carriedOn(chain.line, BEYOND);
  const shown = sectionAlong(site, scheme.id, "backfilled", line);
  if (shown.found.length === 0) return null;
  const columns = chain.runs.flatMap((run) =>
    columnsOf(run, { site, scheme, estimate, chain, finished: shown }),
  );
  const heights = [
    ...[...shown.found, ...shown.surface].flat().map(([, z]) => z),
    ...shown.areas
      .filter(({ kind }) => kind !== "natural")
      .flatMap(({ outline }) => outline.map(([, z]) => z)),
    ...shown.standing.flatMap(({ material, outline }) => {
      const corners = outline.map(([, z]) => z);
      return material === "building" ? [Math.min(...corners) + BUILDING] : corners;
    }),
    ...columns.flatMap(({ invert, floor }) => [invert, floor]).filter(Number.isFinite),
  ];
  const low = Math.min(...heights) - UNDER;
  const datum = low - UNDER;
  return {
    chain,
    beyond: BEYOND,
    finished: sectionAlong(site, scheme.id, "backfilled", line, datum),
    columns: merged(columns),
    buried: buriedLines(site.limits ?? [], chain, shown),
    rockTops: rockTops(site, line, datum, BEYOND),
    low,
    high: Math.max(...heights) + OVER,
  };
}

interface Around {
  site: Site;
  scheme: Scheme;
  estimate: Estimate;
  chain: Chain;
  finished: Section;
}

const RANKS = { end: 4, joint: 4, cleanout: 3, crossing: 3, bend: 3, break: 1 } as const;

function columnsOf(run: ChainRun, around: Around): ProfileColumn[] {
  const check = run.pipes[0]!;
  const events = eventsOf(run, around);
  const ends = [0, check.length].map((station, i) => ({
    station,
    what: endName(run, i === 0 ? "first" : "last", around),
    rank: RANKS.end,
  }));
  // Where the ground steps, two of the estimate's own places have one station.
  const breaks = check.stations.map((own) => ({
    ...figuresAt(run, own.station, around, own.ground),
    what: [],
    rank: RANKS.break,
  }));
  const named = events.map((event) => ({
    station: event.station,
    what: event.kind === "joint" ? null : eventName(event),
    rank: RANKS[event.kind],
  }));
  const told = [...ends, ...named].map(({ station, what, rank }) => ({
    ...figuresAt(run, station, around),
    what: what === null ? [] : [what],
    rank,
  }));
  return [...told, ...breaks];
}

function eventsOf({ trench, pipes }: ChainRun, { scheme, estimate }: Around): ProfileEvent[] {
  const check = pipes[0]!;
  const pipe = trench.pipes.find(({ id }) => id === check.id);
  const nameOf = (id: string): string => scheme.works.find((work) => work.id === id)?.name ?? id;
  const { joints, pipes: all } = estimate.flow;
  return profileEvents({
    check,
    cleanouts: pipe?.cleanouts ?? [],
    joints,
    pipes: all,
    nameOf,
  });
}

function eventName(event: ProfileEvent): string {
  const { profile } = words.sheetsSections;
  if (event.kind === "cleanout") return profile.cleanout;
  if (event.kind === "bend") return profile.bend(String(Math.round(event.measure)));
  return event.over ? profile.over(event.name) : profile.under(event.name);
}

/** What a run's end lies at: a building's outlet, a tank's inlet or outlet, any other work. */
function endName(
  run: ChainRun,
  end: "first" | "last",
  { scheme, estimate, chain }: Around,
): string {
  const { profile } = words.sheetsSections;
  const check = run.pipes[0]!;
  const { joints, outlets } = estimate.flow;
  const nameOf = (id: string): string => scheme.works.find((work) => work.id === id)?.name ?? id;
  const side = end === "first" ? "outlet" : "inlet";
  const joint = joints.find((each) => each.pipe === check.id && each.side === side);
  if (joint)
    return side === "inlet" ? profile.into(nameOf(joint.tank)) : profile.outOf(nameOf(joint.tank));
  const outlet = end === "first" ? outlets.find(({ pipe }) => pipe === check.id) : undefined;
  if (outlet) return outlet.name;
  const work = scheme.works.find((each) =>
    joinedEnds(scheme, each).some((one) => one.trench === run.trench.id && one.end === end),
  );
  if (work) return work.name;
  const here = chain.runs.indexOf(run);
  const next = chain.runs[end === "first" ? here - 1 : here + 1];
  if (next) return (end === "first" ? profile.from : profile.onTo)(next.trench.name);
  return end === "first" ? profile.start : profile.end;
}

/** Figures at a station of a run, those that the estimate has for it; `known` is its ground, m. */
function figuresAt(
  { trench, pipes, start }: ChainRun,
  station: number,
  { chain, finished }: Around,
  known?: number,
): Omit<ProfileColumn, "what" | "rank"> {
  const check = pipes[0]!;
  const along = BEYOND + start + station;
  const invert = valueAt(check, station, "invert");
  const wall = wallOf(trench.pipes.find(({ id }) => id === check.id));
  const ground = known ?? valueAt(check, station, "ground");
  const underside = Math.min(
    ...pipes.map(
      (each) =>
        valueAt(each, station, "invert") - wallOf(trench.pipes.find(({ id }) => id === each.id)),
    ),
  );
  // A step at an end of the trench is read on the trench's own side.
  const side = station <= 0 ? 1e-6 : station >= check.length ? -1e-6 : 0;
  return {
    station: Math.min(chain.length, start + station),
    found: heightOn(finished.found, along) ?? NaN,
    finished: heightOn(finished.surface, along + side) ?? NaN,
    invert,
    floor: underside - trench.bedding.depth,
    cover: ground - invert - check.inside - wall,
  };
}

const wallOf = (pipe: { inside: number; outside: number } | undefined): number =>
  pipe === undefined ? 0 : (pipe.outside - pipe.inside) / 2;

/** Invert of a pipe, or the ground over it, at a station: straight between the estimate's own. */
export function valueAt(
  { stations }: PipeCheck,
  station: number,
  which: "invert" | "ground",
): number {
  const exact = stations.find((each) => Math.abs(each.station - station) < 1e-6);
  if (exact) return exact[which];
  const line = stations.map((each) => [each.station, each[which]] as const);
  return heightOn([line], station) ?? NaN;
}

/** m: figures nearer than this are one. */
const SAME = 0.0005;

/** Columns of one place made one, in order. */
function merged(columns: readonly ProfileColumn[]): ProfileColumn[] {
  const out: ProfileColumn[] = [];
  const inOrder = [...columns].sort((a, b) => a.station - b.station || b.rank - a.rank);
  for (const column of inOrder) {
    const last = out.at(-1);
    const same =
      last !== undefined &&
      Math.abs(last.station - column.station) < 0.005 &&
      !(Math.abs(last.invert - column.invert) > SAME) &&
      !(Math.abs(last.cover - column.cover) > SAME);
    if (!same) out.push(column);
    else {
      const what = [...new Set([...last.what, ...column.what])];
      out[out.length - 1] = { ...last, what, rank: Math.max(last.rank, column.rank) };
    }
  }
  return out;
}

/** Where buried lines of the site cross the chain. */
function buriedLines(limits: readonly Limit[], chain: Chain, shown: Section): BuriedLine[] {
  return limits.flatMap(({ path, closed, name, kind, depth }) => {
    if (!isBuriedLine(kind) || path === undefined) return [];
    const line: PlanPoint[] = closed === true ? [...path, path[0]!] : path;
    return crossingsInPlan(chain.line, line).map((station): BuriedLine => {
      const ground = heightOn(shown.found, BEYOND + station);
      const top = depth === undefined || ground === null ? null : ground - depth;
      return { station, name: name ?? kind, top };
    });
  });
}
