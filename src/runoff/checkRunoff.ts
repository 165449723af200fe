/** Works that stand where water comes down or stands, and the ditch that would turn it aside. */
import type { WorkQuantities } from "../dig/index.js";
import { insideOutline, type BaseGround } from "../ground/index.js";
import { areaOutline, ruleOf } from "../site/index.js";
import type { Finding, PlanPoint, Scheme, Site, Work } from "../site/index.js";
import { area as areaMeasure, distance, length } from "../units/index.js";
import { limitsMet, type LimitMeeting } from "./ditchLimits.js";
import { ditchOffer, type DitchMeeting, type DitchOffer, type Standing } from "./ditchOffer.js";
import { followDitches, ledByDitches } from "./ditches.js";
import { boxOf, drainageOf, inflowOf, type Drainage } from "./drainage.js";
import type { Flood } from "./pits.js";
import type { WayPoint } from "./trace.js";

type Place = readonly [number, number];

/** What of the ground's water one work meets; places in site coordinates, m. */
export interface WorkRunoff {
  work: string;
  /** m² of ground outside it whose water comes to it. */
  area: number;
  /** m² of it whose water comes in within 3 m of one place, as one stream. */
  gathered: number;
  /** m² whose water would come to it if the site drew no ditch. */
  undrained: number;
  /** Places spread evenly over the ground of `area`. */
  starts: readonly PlanPoint[];
  /** The longest way that comes to it: [x, y, z]. */
  longest: readonly (readonly [number, number, number])[];
  /** m that water stands over its lowest place before it spills; 0 where none stands. */
  standing: number;
  /** A ditch uphill that would turn the water aside, [x, y, z], its higher end first; null for none. */
  ditch: readonly (readonly [number, number, number])[] | null;
  /** Works that this ditch would itself meet; the fewest that could be found. */
  ditchMeets: readonly DitchMeeting[];
  /** Limits of the site that it would cross, end at, come too near to or let its water go to. */
  ditchLimits: readonly LimitMeeting[];
}

/** What each work of a scheme meets of the ground's water, and what is to be said of it. */
export function checkRunoff(
  site: Site,
  scheme: Scheme,
  works: readonly WorkQuantities[],
  base: BaseGround,
): { works: WorkRunoff[]; findings: Finding[] } {
  const [ox, oy] = base.tin.origin;
  const standing = scheme.works.flatMap((work) => {
    const outline = outlineOf(work, works)?.map(([x, y]): Place => [x - ox, y - oy]);
    return outline === undefined ? [] : [{ id: work.id, work, outline }];
  });
  const met = standing.map(({ work, outline }) => ({
    work,
    runoff: meets(site, work, outline, { base, standing }),
  }));
  return {
    works: met.map(({ runoff }) => runoff),
    findings: met.flatMap(({ work, runoff }) => findingsOf(site, scheme, work, runoff)),
  };
}

/** The edge of a work's hole in plan, or of what stands; null for a pile or a strip. */
function outlineOf(work: Work, works: readonly WorkQuantities[]): readonly Place[] | null {
  if (work.kind === "pile" || work.kind === "strip") return null;
  const rings = works.find(({ id }) => id === work.id)?.outlines?.daylight ?? [];
  const widest = rings.reduce<readonly Place[]>(
    (best, ring) => (Math.abs(twiceArea(ring)) > Math.abs(twiceArea(best)) ? ring : best),
    [],
  );
  return widest.length >= 3 ? widest : areaOutline(work);
}

function twiceArea(ring: readonly Place[]): number {
  return ring.reduce((sum, a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    return sum + a[0] * b[1] - b[0] * a[1];
  }, 0);
}

/** m within which ways that come in count as one stream. */
export const STREAM_REACH = 3;

/** What a work of this outline, m local, meets, among the works that stand. */
function meets(
  site: Site,
  work: Work,
  local: readonly Place[],
  { base: { tin }, standing }: { base: BaseGround; standing: Standing },
): WorkRunoff {
  const [ox, oy, oz] = tin.origin;
  const asFound = drainageOf(tin);
  const drainage = ledByDitches(asFound, tin, site.limits);
  const inflow = inflowOf(drainage, local);
  const gathered = drainage.each * mostTogether(inflow.entries);
  const asks = Math.max(work.kind === "trench" ? 0 : inflow.area, gathered);
  const inPlan = (way: readonly Place[] | readonly WayPoint[]): PlanPoint[] =>
    way.map(([x, y]) => [x + ox, y + oy]);
  const offer: DitchOffer | null =
    asks >= ruleOf(site, "inflow-from").value
      ? ditchOffer(tin, local, ruleOf(site, "ditch-fall").value, standing, {
          ...{ tracer: asFound.tracer },
          follow: (way) => followDitches(way, asFound, tin, site.limits),
          limitsOf: (line, letGo) => limitsMet(site, inPlan(line), inPlan(letGo)),
        })
      : null;
  return {
    work: work.id,
    area: inflow.area,
    gathered,
    undrained: drainage === asFound ? inflow.area : inflowOf(asFound, local).area,
    starts: inflow.starts.map(([x, y]) => [x + ox, y + oy]),
    longest: inflow.longest.map(([x, y, z]) => [x + ox, y + oy, z + oz]),
    standing: standingIn(drainage, tin, local),
    ditch: offer?.line.map(([x, y, z]) => [x + ox, y + oy, z + oz] as const) ?? null,
    ditchMeets: offer?.meets ?? [],
    ditchLimits: offer?.limits ?? [],
  };
}

/** The most ways that come in within a few metres of one of them. */
function mostTogether(entries: readonly Place[]): number {
  const sorted = [...entries].sort((a, b) => a[0] - b[0]);
  let most = 0;
  let first = 0;
  for (const [x, y] of sorted) {
    while (x - sorted[first]![0] > STREAM_REACH) first++;
    let near = 0;
    for (let i = first; i < sorted.length && sorted[i]![0] - x <= STREAM_REACH; i++) {
      const [dx, dy] = [x - sorted[i]![0], y - sorted[i]![1]];
      if (Math.abs(dy) <= STREAM_REACH && Math.hypot(dx, dy) <= STREAM_REACH) near++;
    }
    if (near > most) most = near;
  }
  return most;
}

/** Depth of the water that stands over the lowest vertex within an outline before it spills, m. */
function standingIn(
  { flood }: Drainage,
  tin: BaseGround["tin"],
  outline: readonly Place[],
): number {
  const [west, south, east, north] = boxOf(outline);
  let most = 0;
  for (const vertex of drownedOf(flood, tin)) {
    const deep = flood.level[vertex]! - tin.z[vertex]!;
    const [x, y] = [tin.x[vertex]!, tin.y[vertex]!];
    if (deep <= most || x < west || x > east || y < south || y > north) continue;
    if (insideOutline(outline, x, y)) most = deep;
  }
  return most;
}

const drowned = new WeakMap<Flood, Uint32Array>();

/** Numbers of the vertices over which water stands. */
function drownedOf(flood: Flood, tin: BaseGround["tin"]): Uint32Array {
  let known = drowned.get(flood);
  if (known === undefined) {
    const all = Array.from(flood.level, (_, vertex) => vertex);
    known = Uint32Array.from(all.filter((vertex) => flood.level[vertex]! > tin.z[vertex]!));
    drowned.set(flood, known);
  }
  return known;
}

function findingsOf(site: Site, scheme: Scheme, work: Work, runoff: WorkRunoff): Finding[] {
  const { area, gathered, undrained, standing, ditch, ditchLimits } = runoff;
  const findings: Finding[] = [];
  const from = ruleOf(site, "inflow-from");
  // A trench lies across a slope: what counts there is the water that comes in at one place.
  const asks = work.kind === "trench" ? gathered : area;
  const { units } = site;
  const together =
    work.kind === "trench"
      ? `, ${areaMeasure.print(gathered, units)} of it within ${distance.print(STREAM_REACH, units)} of one place`
      : "";
  const level = work.kind === "trench" || work.kind === "building" ? "note" : "caution";
  if (asks >= from.value) {
    const brings = area > undrained ? "A ditch that is drawn lets water go above it. " : "";
    const mend =
      ditch === null
        ? "Lead it round the work before digging."
        : `A ditch uphill, some ${distance.print(lengthOf(ditch), site.units)} long and falling evenly, would turn it aside.${whatItMeets(site, scheme, runoff)}`;
    findings.push({
      level,
      code: "runoff.comes-in",
      where: work.id,
      text: `Water from about ${areaMeasure.print(area, units)} of the slope above runs down to ${work.name}${together}. ${brings}${mend}`,
      source: `geometry: steepest descent over the survey, hollows filled, drawn ditches taken to carry what runs into them to their lower end; asked from ${areaMeasure.print(from.value, units)}: ${from.source}${sourcesOf(ditchLimits)}`,
    });
  }
  const hollow = ruleOf(site, "hollow-from");
  if (standing >= hollow.value) {
    findings.push({
      level,
      code: "runoff.hollow",
      where: work.id,
      text: `${work.name} stands in a hollow: water can stand ${length.print(standing, site.units)} deep there before it runs off. Drain it, fill it or move the work.`,
      source: `geometry: hollows of the survey filled to where they spill; ${hollow.source}`,
    });
  }
  return findings;
}

/** A sentence on the works and limits that the ditch would meet; nothing when it meets none. */
function whatItMeets(
  { units }: Site,
  { works }: Scheme,
  { ditchMeets, ditchLimits }: WorkRunoff,
): string {
  const through = ditchMeets
    .filter(({ how }) => how === "crosses")
    .map(({ work }) => works.find(({ id }) => id === work)?.name ?? work);
  const into = ditchMeets
    .filter(({ how }) => how === "lets-go")
    .map(({ work }) => works.find(({ id }) => id === work)?.name ?? work);
  const named = (how: LimitMeeting["how"]): string[] =>
    ditchLimits
      .filter((one) => one.how === how)
      .map(({ name, distance: is, wanted }) =>
        is > 0
          ? `${name} (${distance.print(is, units)} off, asked ${distance.print(wanted, units)})`
          : name,
      );
  const parts = (
    [
      ["go through", through],
      ["leave the lot over", named("off-lot")],
      ["cross", named("crosses")],
      ["end at", named("ends")],
      ["come near", named("near")],
      ["let its water go into", [...into, ...named("lets-go")]],
    ] as const
  ).flatMap(([verb, names]) => (names.length === 0 ? [] : [`${verb} ${names.join(", ")}`]));
  return parts.length === 0 ? "" : ` But it would ${parts.join(" and ")}.`;
}

/** Who asks for the distances that the ditch would not keep, each once. */
function sourcesOf(limits: readonly LimitMeeting[]): string {
  const asked = limits.filter(({ how, source }) => source !== "" && how !== "lets-go");
  return [...new Set(asked.map(({ source }) => `; ${source}`))].join("");
}

function lengthOf(path: readonly (readonly [number, number, number])[]): number {
  return path.reduce((sum, a, i) => {
    const b = path[i + 1];
    return b === undefined ? sum : sum + Math.hypot(a[0] - b[0], a[1] - b[1]);
  }, 0);
}
