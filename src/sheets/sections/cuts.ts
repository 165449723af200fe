/** Where the works of a scheme are cut open for their sections. */
import {
  groundAt,
  groundSlopeAt,
  heightOn,
  insideRings,
  sectionAlong,
} from "../../estimate/index.js";
import type { Estimate, Section } from "../../estimate/index.js";
import { centreOfArea } from "../../site/index.js";
import type { Bed, Pad, PlanPoint, Scheme, Site, Tank, Work } from "../../site/index.js";
import { crossingsInPlan } from "./planCrossings.js";

/** A work that is cut open on sheets. */
export type CutWork = Tank | Pad | Bed;

/** One section through one work. */
export interface Cut {
  /** "A", "B" … "Z", "AA" …, in building order. */
  letter: string;
  work: CutWork;
  /** Whether it runs along the work's long side, or across it. */
  way: "along" | "across";
  /** From the left end to the right one as drawn; site coordinates, m. */
  line: readonly [PlanPoint, PlanPoint];
  /** Stations between which the floor of the work lies, m along the line. */
  floor: readonly [number, number];
  /** Stations between which the ground is changed by the work and what joins it, m. */
  changed: readonly [number, number];
}

/** m of ground beyond what is changed; how far that is looked for; in steps of. */
const BESIDE = 0.6;
const FARTHEST = 25;
const STEP = 0.1;
/** m of difference that counts as changed. */
const CHANGED = 0.02;

/** Two sections of every tank, pad and bed that does not stand on a pad, along it and across it. */
export function cutsOf(site: Site, scheme: Scheme, estimate: Estimate): Cut[] {
  const works = scheme.works.filter((work): work is CutWork => isCut(work, scheme));
  const cuts = works.flatMap((work) =>
    waysOf(site, scheme, work).flatMap((way) => {
      const cut = cutAlong({ site, scheme, estimate, work }, way);
      return cut === null ? [] : [cut];
    }),
  );
  return cuts.map((cut, i) => ({ ...cut, letter: letterOf(i) }));
}

function isCut(work: Work, { works }: Scheme): boolean {
  if (work.kind === "tank" || work.kind === "pad") return true;
  if (work.kind !== "bed") return false;
  return !works.some((pad) => pad.kind === "pad" && insideRings(work.at, [pad.outline]));
}

/** "A" to "Z", then "AA". */
export function letterOf(i: number): string {
  const last = String.fromCharCode(65 + (i % 26));
  return i < 26 ? last : `${letterOf(Math.floor(i / 26) - 1)}${last}`;
}

interface Way {
  way: "along" | "across";
  /** Unit direction from left to right, a place on the line, and its floor's half lengths, m. */
  u: PlanPoint;
  middle: PlanPoint;
  from: number;
  to: number;
}

function waysOf(site: Site, scheme: Scheme, work: CutWork): Way[] {
  if (work.kind === "pad") return padWays(site, scheme, work);
  const size = work.kind === "tank" ? work.body : work;
  const over = work.kind === "tank" ? work.overdig : 0;
  const along = towards(work.bearing);
  const across: PlanPoint = [along[1], -along[0]];
  const half = (length: number): { from: number; to: number } => ({
    from: -length / 2 - over,
    to: length / 2 + over,
  });
  return [
    { way: "along", u: along, middle: work.at, ...half(size.length) },
    { way: "across", u: across, middle: work.at, ...half(size.width) },
  ];
}

const towards = (bearing: number): PlanPoint => {
  const angle = (bearing * Math.PI) / 180;
  return [Math.sin(angle), Math.cos(angle)];
};

/** Along the pad's longest side and square to it, through its middle or that of the bed on it. */
function padWays(site: Site, scheme: Scheme, pad: Pad): Way[] {
  const middle = middleOf(scheme, pad);
  const longest = longestSide(pad.outline);
  const falls = groundSlopeAt(site, middle)?.fallsTowards;
  const down = falls === undefined ? longest : towards(falls);
  const downhill = (u: PlanPoint): PlanPoint =>
    u[0] * down[0] + u[1] * down[1] < 0 ? [-u[0], -u[1]] : u;
  const ways = [
    { way: "across" as const, u: downhill([longest[1], -longest[0]]) },
    { way: "along" as const, u: downhill(longest) },
  ];
  return ways.map(({ way, u }) => {
    const along = pad.outline.map(([x, y]) => (x - middle[0]) * u[0] + (y - middle[1]) * u[1]);
    return { way, u, middle, from: Math.min(...along), to: Math.max(...along) };
  });
}

function middleOf({ works }: Scheme, pad: Pad): PlanPoint {
  const bed = works.find((work) => work.kind === "bed" && insideRings(work.at, [pad.outline]));
  if (bed?.kind === "bed") return bed.at;
  const centre = centreOfArea(pad.outline);
  if (insideRings(centre, [pad.outline])) return centre;
  const [a, b] = [pad.outline[0]!, pad.outline[1]!];
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}

function longestSide(outline: readonly PlanPoint[]): PlanPoint {
  const sides = outline.map(([x, y], i): PlanPoint => {
    const [u, v] = outline[(i + 1) % outline.length]!;
    return [u - x, v - y];
  });
  const [x, y] = sides.reduce((a, b) => (Math.hypot(...b) > Math.hypot(...a) ? b : a));
  const length = Math.hypot(x, y);
  return [x / length, y / length];
}

interface Around {
  site: Site;
  scheme: Scheme;
  estimate: Estimate;
  work: CutWork;
}

function cutAlong(around: Around, way: Way): Cut | null {
  const { work } = around;
  const { u, middle, from, to } = way;
  const place = (along: number): PlanPoint => [middle[0] + along * u[0], middle[1] + along * u[1]];
  const changed = work.kind === "pad" ? changedGround(around, way) : opening(around, way);
  if (changed === null) return null;
  const start = changed[0] - BESIDE;
  return {
    letter: "",
    work,
    way: way.way,
    line: [place(start), place(changed[1] + BESIDE)],
    floor: [from - start, to - start],
    changed: [BESIDE, changed[1] - start],
  };
}

/** Where the line meets the edge of a hole, or the floor's ends without one, m from the middle. */
function opening(
  { site, estimate, work }: Around,
  { u, middle, from, to }: Way,
): readonly [number, number] | null {
  const at = (along: number): PlanPoint => [middle[0] + along * u[0], middle[1] + along * u[1]];
  if (groundAt(site, middle) === null) return null;
  const rings = estimate.works.find(({ id }) => id === work.id)?.outlines?.daylight ?? [];
  const line = [at(from - FARTHEST), at(to + FARTHEST)];
  const stations = rings.flatMap((ring) => crossingsInPlan(line, [...ring, ring[0]!]));
  const along = stations.map((station) => station + from - FARTHEST);
  return [Math.min(from, ...along), Math.max(to, ...along)];
}

/** How far a pad and what joins it change the ground to either side, m from the middle. */
function changedGround(
  { site, scheme, work }: Around,
  { u, middle, from, to }: Way,
): readonly [number, number] | null {
  const at = (along: number): PlanPoint => [middle[0] + along * u[0], middle[1] + along * u[1]];
  const wide = [at(from - FARTHEST), at(to + FARTHEST)];
  const dug = sectionAlong(upTo(site, scheme, work), scheme.id, "dug", wide);
  const done = sectionAlong(site, scheme.id, "backfilled", wide);
  if (dug.found.length === 0) return null;
  const differs = (along: number): boolean => {
    const station = along - from + FARTHEST;
    return [dug, done].some((section) => apart(section, station) > CHANGED);
  };
  return [edgeOf(differs, from, -1), edgeOf(differs, to, 1)];
}

/**
 * The site with the works of a scheme up to one of them and none after it. In the stage "dug" of all
 * works together a later trench would be dug from the floor of a hole that by then has been filled.
 */
export function upTo(site: Site, scheme: Scheme, { id }: Pick<Work, "id">): Site {
  const last = scheme.works.findIndex((work) => work.id === id);
  const works = scheme.works.slice(0, last + 1);
  return { ...site, schemes: [{ ...scheme, works }] };
}

/** m between the ground as found and as it is at a section's stage; 0 beyond the survey. */
function apart({ found, surface }: Section, station: number): number {
  const [was, is] = [heightOn(found, station), heightOn(surface, station)];
  return was === null || is === null ? 0 : Math.abs(was - is);
}

/** How far from a floor's end the ground is changed without a gap, to a millimetre. */
function edgeOf(differs: (along: number) => boolean, from: number, side: 1 | -1): number {
  let at = from;
  while (Math.abs(at - from) < FARTHEST - 1 && differs(at + side * STEP)) at += side * STEP;
  let [inside, outside] = [at, at + side * STEP];
  if (differs(outside)) return outside;
  while (Math.abs(outside - inside) > 0.001) {
    const middle = (inside + outside) / 2;
    if (differs(middle)) inside = middle;
    else outside = middle;
  }
  return inside;
}
