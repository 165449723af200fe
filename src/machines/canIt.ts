/** Whether a digger can do the works: how deep, how far, how wide, and where it may stand. */
import type { DigResult, WorkQuantities } from "../dig/index.js";
import { ruleOf } from "../site/index.js";
import type { Finding, Limit, Locality, PlanPoint, Scheme, Site, Trench } from "../site/index.js";
import { length, pipeSlope, pressure } from "../units/index.js";
import type { UnitSystem } from "../units/index.js";
import type { Digger } from "./catalogue.js";
import { liftRules } from "./cranes.js";
import { distanceToRings, placesAlong, placesAround } from "./standing.js";
import type { GroundAt, Ring } from "./standing.js";
import { barOf, barReason, obstaclesOf } from "./standingBars.js";
import type { Bar, Ground } from "./standingBars.js";
import type { Reason } from "./types.js";

/**
 * What a digger is held against. Without limits none is kept from; without ground it is level; without
 * `rules` the published ones hold.
 */
export interface CanContext extends Locality {
  scheme: Scheme;
  dig: Pick<DigResult, "works" | "earth">;
  units: UnitSystem;
  limits?: readonly Limit[];
  groundAt?: GroundAt;
}

/** What of a site a digger is held against, and the ground where it is known. */
export function placeOn(
  { limits, rules }: Pick<Site, "limits" | "rules">,
  groundAt?: GroundAt,
): Pick<CanContext, "limits" | "groundAt" | "rules"> {
  return { ...(limits && { limits }), ...(rules && { rules }), ...(groundAt && { groundAt }) };
}

/**
 * The reasons why a digger cannot do the works, worst first (by how many times it falls short);
 * empty when there is none. Where it may stand is asked only when nothing else speaks against it. It is held against depth, bucket, reach, standing room, dump height and
 * the way in; what the file does not give (access, limits, ground beyond the survey, the outline of
 * a hole) is not held against it. Lengths m, slopes rise per run, pressure Pa; texts in `units`.
 */
export function heldAgainst(digger: Digger, context: CanContext): Reason[] {
  const reasons = [...wayInReasons(digger, context), ...loadingReasons(digger, context)];
  const dug = context.dig.works.filter((work) => work.deepest > 0);
  for (const work of dug) {
    reasons.push(
      ...depthReason(digger, work, context.units),
      ...bucketReason(digger, work, context),
    );
  }
  // Where to stand costs most to find out: only for a machine that nothing else speaks against.
  if (reasons.length === 0) {
    for (const work of dug) reasons.push(...placeReasons(digger, work, context));
  }
  return reasons.sort((a, b) => shortfall(b) - shortfall(a));
}

/**
 * How far a digger reaches in plan from its axis with the bucket at a depth below its tracks, m: a
 * quarter ellipse from the reach at ground level to nothing at the digging depth, where the arm hangs
 * straight down. 0 at or below the digging depth; the reach at ground level for a depth of 0 or less.
 * Simplified, no source: a maker's range diagram bulges outside it, so it errs to the short side.
 */
export function reachAtDepth({ reach, digDepth }: Digger, depth: number): number {
  if (depth <= 0) return reach;
  return depth >= digDepth ? 0 : reach * Math.sqrt(1 - (depth / digDepth) ** 2);
}

/**
 * m from the axis of a digger to the top edge, standing with its tracks end-on to it: they keep off
 * the edge as the scheme says, or as the site's rule for spoil and machines does.
 */
export function axisToEdge(
  digger: Digger,
  { scheme, ...site }: Locality & { scheme: Pick<Scheme, "machines"> },
): number {
  const setBack = scheme.machines?.access?.setBack ?? ruleOf(site, "spoil-back").value;
  return setBack + digger.trackLength / 2;
}

/** Works that use nearly all of the digging depth: reached only with the arm hanging straight. */
export function nearLimit(digger: Digger, dig: Pick<DigResult, "works">): Finding[] {
  return dig.works
    .filter((w) => faceOf(w) > 0.9 * digger.digDepth && faceOf(w) <= digger.digDepth)
    .map((work) => ({
      level: "caution" as const,
      code: "machine.near-limit",
      where: work.id,
      text:
        `${work.name} takes more than nine tenths of the digging depth of ${digger.name}, ` +
        "which it has only straight below the arm, standing at the edge. Ask for the next size up.",
      source: "common practice, no source",
    }));
}

/** The depth that counts, m: the tallest face or the deepest cut, bedding included in both. */
function faceOf(work: WorkQuantities): number {
  return Math.max(work.deepest, work.tallestFace);
}

function shortfall({ needs, has }: Reason): number {
  const [small, large] = [Math.min(needs, has), Math.max(needs, has)];
  return small > 0 ? large / small : Infinity;
}

function depthReason(digger: Digger, work: WorkQuantities, units: UnitSystem): Reason[] {
  const face = faceOf(work);
  if (face <= digger.digDepth) return [];
  const text = `digs to ${length.print(digger.digDepth, units)}; ${work.name} needs ${length.print(face, units)}`;
  return [{ code: "depth", work: work.id, text, needs: face, has: digger.digDepth, unit: "m" }];
}

function bucketReason(digger: Digger, work: WorkQuantities, context: CanContext): Reason[] {
  const drawn = trenchOf(work, context);
  if (drawn === undefined || drawn.width >= digger.narrowBucket) return [];
  const { units } = context;
  return [
    {
      code: "bucket",
      work: work.id,
      text:
        `its narrowest bucket is ${length.print(digger.narrowBucket, units)}; ` +
        `${work.name} is ${length.print(drawn.width, units)} wide`,
      needs: drawn.width,
      has: digger.narrowBucket,
      unit: "m",
    },
  ];
}

function trenchOf({ id }: WorkQuantities, { scheme }: CanContext): Trench | undefined {
  const drawn = scheme.works.find((work) => work.id === id);
  return drawn?.kind === "trench" ? drawn : undefined;
}

/** The way in, which it must fit and climb, and the ground that must carry it. */
function wayInReasons(digger: Digger, { scheme, units }: CanContext): Reason[] {
  const reasons: Reason[] = [];
  const { access, lift } = scheme.machines ?? {};
  const exceeds = (code: string, has: number, most: number | undefined) =>
    most !== undefined && has > most && { code, work: null, needs: most, has };
  const width = exceeds("access-width", digger.width, access?.width);
  if (width) {
    const text = `is ${length.print(digger.width, units)} wide; the way in is ${length.print(width.needs, units)}`;
    reasons.push({ ...width, text, unit: "m" });
  }
  if (access?.slope !== undefined && access.slope > digger.mostSlope) {
    reasons.push({
      code: "access-slope",
      work: null,
      text: `takes slopes to ${pipeSlope.print(digger.mostSlope, units)}; the way in has ${pipeSlope.print(access.slope, units)}`,
      needs: access.slope,
      has: digger.mostSlope,
      unit: "",
    });
  }
  const heavy = exceeds("ground-pressure", digger.groundPressure, lift?.groundBearing);
  if (heavy) {
    const text = `presses on the ground with ${pressure.print(digger.groundPressure, units)}; ${pressure.print(heavy.needs, units)} is what it may carry`;
    reasons.push({ ...heavy, text, unit: "Pa" });
  }
  return reasons;
}

/** The side of the truck, where surplus is hauled off: where a pile takes it, none is loaded. */
function loadingReasons(digger: Digger, { scheme, dig, units }: CanContext): Reason[] {
  const isHauled = dig.earth.surplusLoose > 0 && !scheme.works.some((w) => w.kind === "pile");
  const side = scheme.machines?.access?.truckSide ?? liftRules().truckSide.value;
  if (!isHauled || digger.dumpHeight >= side) return [];
  return [
    {
      code: "dump-height",
      work: null,
      text: `empties its bucket at ${length.print(digger.dumpHeight, units)}; the truck's side is ${length.print(side, units)} high`,
      needs: side,
      has: digger.dumpHeight,
      unit: "m",
    },
  ];
}

/** Where it may stand, and what it reaches from there. */
function placeReasons(digger: Digger, work: WorkQuantities, context: CanContext): Reason[] {
  const ground: Ground = groundBefore(work, context);
  const trench = trenchOf(work, context);
  if (trench !== undefined) return trenchReasons(digger, work, trench, ground);
  const edge = work.outlines?.daylight ?? [];
  const middle = middleOf(edge);
  if (middle === null) return [];
  const back = axisToEdge(digger, context);
  const free: PlanPoint[] = [];
  const bars: Bar[] = [];
  for (const place of placesAround(edge, back)) {
    const bar = barOf(digger, place, middle, ground);
    if (bar === null) free.push(place);
    else bars.push(bar);
  }
  if (free.length === 0) return barReason(digger, work, bars, context.units);
  // A pad or a strip is dug backwards, standing on what is not yet dug: it has no far toe.
  const isPit = work.kind === "tank";
  return isPit ? pitReach(digger, work, free, context) : [];
}

/** The ground that a digger stands on for a work: with what is built before it. */
export function groundBefore(work: WorkQuantities, context: CanContext): Ground {
  const before = builtBefore(work, context);
  return { ...context, before, bars: obstaclesOf(context.limits ?? [], before) };
}

function builtBefore({ id }: WorkQuantities, { scheme }: CanContext): Scheme["works"] {
  const at = scheme.works.findIndex((work) => work.id === id);
  return scheme.works.slice(0, Math.max(0, at));
}

/**
 * A pit is dug backing away: the digger stands on ground not yet dug, and at last outside the edge,
 * so what it must reach from outside is the near foot of the wall; see `reachedFromOutside`.
 */
function pitReach(
  digger: Digger,
  work: WorkQuantities,
  free: readonly PlanPoint[],
  context: CanContext,
): Reason[] {
  let best = { short: Infinity, needs: Infinity, has: 0 };
  for (const { at, reach } of standsAt(digger, work, free, context)) {
    const away = distanceToRings(at, work.outlines?.toe ?? []);
    if (away - reach < best.short) best = { short: away - reach, needs: away, has: reach };
  }
  return best.short > 0 ? [reachReason(work, best.needs, best.has, context.units)] : [];
}

function standsAt(
  digger: Digger,
  work: WorkQuantities,
  free: readonly PlanPoint[],
  { groundAt }: CanContext,
): { at: PlanPoint; reach: number }[] {
  return free.map((at) => {
    const above = (groundAt?.(at) ?? NaN) - work.floor.lowest;
    return { at, reach: reachAtDepth(digger, Number.isNaN(above) ? faceOf(work) : above) };
  });
}

/**
 * Tanks' holes whose whole floor the digger does not reach from outside the edge, though it can dig
 * them: such a hole is dug backing away, and what lies on its far side is not reached again.
 */
export function notReachedFromOutside(digger: Digger, context: CanContext): Finding[] {
  return context.dig.works.flatMap((work) => {
    const edge = work.outlines?.daylight ?? [];
    const middle = middleOf(edge);
    if (work.kind !== "tank" || !(work.deepest > 0) || middle === null) return [];
    const ground: Ground = groundBefore(work, context);
    const back = axisToEdge(digger, context);
    const free = placesAround(edge, back).filter(
      (place) => barOf(digger, place, middle, ground) === null,
    );
    const far = farthestShort(work, standsAt(digger, work, free, context));
    if (free.length === 0 || far.short <= 0) return [];
    const { units } = context;
    return [
      {
        level: "caution" as const,
        code: "machine.dig-backwards",
        where: work.id,
        text:
          `${digger.name} reaches ${length.print(far.has, units)} at the depth of ${work.name}; from ` +
          `outside its edge the far part of the floor is ${length.print(far.needs, units)} off. It digs ` +
          "the hole backing away, standing on ground not yet dug, and cannot trim or bed the far side " +
          "afterwards: check the far end before it moves back, or take a longer reach.",
        source: "geometry, with the reach of the catalogue (typical, no source)",
      },
    ];
  });
}

/** The part of a pit's floor that is hardest to reach, each part from the best place for it. */
function farthestShort(
  work: WorkQuantities,
  stands: readonly { at: PlanPoint; reach: number }[],
): { short: number; needs: number; has: number } {
  let worst = { short: 0, needs: 0, has: 0 };
  for (const place of floorPlaces(work.outlines?.toe ?? [])) {
    let best = { short: Infinity, needs: Infinity, has: 0 };
    for (const { at, reach } of stands) {
      const away = Math.hypot(at[0] - place[0], at[1] - place[1]);
      if (away - reach < best.short) best = { short: away - reach, needs: away, has: reach };
    }
    if (best.short > worst.short) worst = best;
  }
  return worst;
}

function reachReason(work: WorkQuantities, needs: number, has: number, units: UnitSystem): Reason {
  return {
    code: "reach",
    work: work.id,
    text: `reaches ${length.print(has, units)} at the depth of ${work.name}; from where it may stand the floor is ${length.print(needs, units)} off`,
    needs,
    has,
    unit: "m",
  };
}

/** Corners of a floor, places at most 0.5 m apart along its edge, and a 0.5 m grid inside it. */
function floorPlaces(toe: readonly Ring[]): PlanPoint[] {
  const places: PlanPoint[] = [];
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const ring of toe) {
    const [first] = ring;
    if (first === undefined) continue;
    places.push(...placesAlong([...ring, first], 0.5).map(({ at }) => at));
    for (const [x, y] of ring) {
      [west, east] = [Math.min(west, x), Math.max(east, x)];
      [south, north] = [Math.min(south, y), Math.max(north, y)];
    }
  }
  for (let x = west + 0.25; x < east; x += 0.5) {
    for (let y = south + 0.25; y < north; y += 0.5) {
      if (distanceToRings([x, y], toe) === 0) places.push([x, y]);
    }
  }
  return places;
}

/** The mean of the corners of rings; null without corners. */
export function middleOf(rings: readonly Ring[]): PlanPoint | null {
  const corners = rings.flat();
  if (corners.length === 0) return null;
  const sum = corners.reduce<PlanPoint>(([sx, sy], [x, y]) => [sx + x, sy + y], [0, 0]);
  return [sum[0] / corners.length, sum[1] / corners.length];
}

/** Steps from the set-back to the farthest standing place at which a trench's bottom is reached. */
const STEPS_BACK = 5;

/**
 * A trench is dug standing in line with it on ground not yet dug, from either end, as far from the
 * place being dug as the arm reaches: each place must be had from one way or the other, and the far
 * corner of the floor's width reached at the full depth.
 */
function trenchReasons(
  digger: Digger,
  work: WorkQuantities,
  trench: Trench,
  ground: Ground,
): Reason[] {
  const back = axisToEdge(digger, ground);
  const needs = Math.hypot(back, trench.width / 2);
  const has = reachAtDepth(digger, faceOf(work));
  const reasons: Reason[] = [];
  if (needs > has) reasons.push(reachReason(work, needs, has, ground.units));
  const farthest = Math.max(back, Math.sqrt(Math.max(0, has ** 2 - (trench.width / 2) ** 2)));
  const stands = Array.from(
    { length: STEPS_BACK },
    (_, i) => back + (i * (farthest - back)) / (STEPS_BACK - 1),
  );
  for (const { at, way } of placesAlong(trench.path, 1)) {
    const bars: Bar[] = [];
    const isFree = stands.some((away) =>
      [away, -away].some((along) => {
        const place: PlanPoint = [at[0] + along * way[0], at[1] + along * way[1]];
        const bar = barOf(digger, place, at, ground);
        if (bar !== null) bars.push(bar);
        return bar === null;
      }),
    );
    if (isFree) continue;
    reasons.push(...barReason(digger, work, bars, ground.units));
    break;
  }
  return reasons;
}
