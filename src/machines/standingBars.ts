/** What keeps a digger from a standing place: slope, overhead lines, buildings and limits. */
import type { WorkQuantities } from "../dig/index.js";
import { areaOutline, isBuriedLine } from "../site/index.js";
import type { Limit, Locality, PlanPoint, Scheme, Work } from "../site/index.js";
import { length, pipeSlope } from "../units/index.js";
import type { UnitSystem } from "../units/index.js";
import type { Digger } from "./catalogue.js";
import { lineClearance } from "./cranes.js";
import {
  crossesLine,
  distanceToLimit,
  distanceToRings,
  isOverheadLine,
  slopeAt,
} from "./standing.js";
import type { GroundAt } from "./standing.js";
import type { Reason } from "./types.js";

/** The ground that a digger stands on, and what was built on it before. */
export interface Ground extends Locality {
  scheme: Scheme;
  units: UnitSystem;
  limits?: readonly Limit[];
  groundAt?: GroundAt;
  before: readonly Work[];
  bars: Obstacles;
}

/** What may be in the way, sorted out once for all places. */
export interface Obstacles {
  lines: readonly Limit[];
  /** Limits on the ground that a machine keeps off, with the box of each. */
  others: readonly { limit: Limit; box: Box }[];
  buildings: readonly { name: string; outline: readonly PlanPoint[]; box: Box }[];
}

/** West, south, east, north, m. */
type Box = readonly [number, number, number, number];

/** Limits that a machine drives over: what is done there is another question. */
const DRIVEN_OVER = ["drive", "easement", "flood-path"];

/** Sorts out what may be in the way of a digger, given what was built before. */
export function obstaclesOf(limits: readonly Limit[], before: readonly Work[]): Obstacles {
  return {
    lines: limits.filter(isOverheadLine),
    // A service in the ground may be driven over, unlike a lot line, a stream or a fence.
    others: limits
      .filter(
        (limit) =>
          !isOverheadLine(limit) && !isBuriedLine(limit.kind) && !DRIVEN_OVER.includes(limit.kind),
      )
      .map((limit) => ({
        limit,
        box: boxOf([...(limit.path ?? []), ...(limit.at ? [limit.at] : [])]),
      })),
    buildings: before.flatMap((work) => {
      if (work.kind !== "building") return [];
      const outline = areaOutline(work) ?? [];
      return [{ name: work.name, outline, box: boxOf(outline) }];
    }),
  };
}

function boxOf(places: readonly (readonly [number, number])[]): Box {
  const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of places) {
    box[0] = Math.min(box[0], x);
    box[1] = Math.min(box[1], y);
    box[2] = Math.max(box[2], x);
    box[3] = Math.max(box[3], y);
  }
  return box;
}

/** Whether a box comes within `reach` m of the line between two places, judged by boxes. */
function isNear(box: Box, p: PlanPoint, q: PlanPoint, reach: number): boolean {
  return (
    box[0] - reach <= Math.max(p[0], q[0]) &&
    box[2] + reach >= Math.min(p[0], q[0]) &&
    box[1] - reach <= Math.max(p[1], q[1]) &&
    box[3] + reach >= Math.min(p[1], q[1])
  );
}

/** One thing that bars a standing place: what would be needed there and what there is. */
export interface Bar {
  code: "stand-line" | "stand-building" | "stand-limit" | "stand-slope";
  /** What it is called. */
  name: string;
  /** m, or rise per run for a slope. */
  needs: number;
  has: number;
}

/**
 * The first thing that keeps a digger from standing at a place to dig `towards`, or null. Distances
 * are in plan: an overhead line counts as if as low as the arm, for no height of it is trusted, with
 * the arm stretched out any way. Ground beyond the survey is not held against it.
 */
export function barOf(
  digger: Digger,
  place: PlanPoint,
  towards: PlanPoint,
  ground: Ground,
): Bar | null {
  return (
    lineBar(digger, place, ground) ??
    buildingBar(digger, place, towards, ground) ??
    limitBar(digger, place, towards, ground) ??
    slopeBar(digger, place, ground)
  );
}

function lineBar(digger: Digger, place: PlanPoint, ground: Ground): Bar | null {
  for (const limit of ground.bars.lines) {
    const away = distanceToLimit(place, limit);
    const needs = digger.reach + lineClearance(limit.voltage).least;
    if (away < needs) return { code: "stand-line", name: nameOf(limit), needs, has: away };
  }
  return null;
}

/** Share of the arm, at its tip, that may lie over a building's edge. */
const ARM_SHORT = 0.05;

function buildingBar(
  digger: Digger,
  place: PlanPoint,
  towards: PlanPoint,
  ground: Ground,
): Bar | null {
  // Nearly all of the arm: what is dug may lie at the very wall.
  const arm: PlanPoint = [
    towards[0] + ARM_SHORT * (place[0] - towards[0]),
    towards[1] + ARM_SHORT * (place[1] - towards[1]),
  ];
  for (const { name, outline, box } of ground.bars.buildings) {
    if (!isNear(box, place, towards, digger.tailSwing)) continue;
    const bar = { code: "stand-building" as const, name, needs: digger.tailSwing };
    if (crossesLine(place, arm, outline, true)) return { ...bar, has: 0 };
    const away = distanceToRings(place, [outline]);
    if (away > digger.tailSwing) continue;
    const tails = tailPlaces(digger.tailSwing, place, towards);
    if (away === 0 || tails.some((tail) => crossesLine(place, tail, outline, true))) {
      return { ...bar, has: away };
    }
  }
  return null;
}

/** Where the tail goes as the arm swings a quarter turn either way from the work, every 15°. */
function tailPlaces(swing: number, place: PlanPoint, towards: PlanPoint): PlanPoint[] {
  const back = Math.atan2(place[1] - towards[1], place[0] - towards[0]);
  return Array.from({ length: 13 }, (_, i): PlanPoint => {
    const turn = back + ((i - 6) * Math.PI) / 12;
    return [place[0] + swing * Math.cos(turn), place[1] + swing * Math.sin(turn)];
  });
}

function limitBar(
  digger: Digger,
  place: PlanPoint,
  towards: PlanPoint,
  ground: Ground,
): Bar | null {
  for (const { limit, box } of ground.bars.others) {
    if (!isNear(box, place, towards, digger.tailSwing)) continue;
    const spot = limit.at;
    const away = spot === undefined ? Infinity : Math.hypot(place[0] - spot[0], place[1] - spot[1]);
    const isOver = limit.path !== undefined && crossesLine(place, towards, limit.path);
    if (away >= digger.tailSwing && !isOver) continue;
    const has = isOver ? 0 : away;
    return { code: "stand-limit", name: nameOf(limit), needs: digger.tailSwing, has };
  }
  return null;
}

function slopeBar(digger: Digger, place: PlanPoint, { groundAt }: Ground): Bar | null {
  if (groundAt === undefined) return null;
  const slope = slopeAt(groundAt, place, digger.trackLength / 2);
  if (!(slope > digger.mostSlope)) return null;
  return { code: "stand-slope", name: "the ground", needs: slope, has: digger.mostSlope };
}

function nameOf({ name, kind }: Limit): string {
  return name ?? kind;
}

/** One reason for each sort of bar, where no place is free: of each sort the nearest to being one. */
export function barReason(
  digger: Digger,
  work: WorkQuantities,
  bars: readonly Bar[],
  units: UnitSystem,
): Reason[] {
  const mildest = new Map<Bar["code"], Bar>();
  for (const bar of bars) {
    const kept = mildest.get(bar.code);
    if (kept === undefined || bar.needs - bar.has < kept.needs - kept.has) {
      mildest.set(bar.code, bar);
    }
  }
  return [...mildest.values()].map((bar) => ({
    code: bar.code,
    work: work.id,
    text: textOf(bar, digger, work, units),
    needs: bar.needs,
    has: bar.has,
    unit: bar.code === "stand-slope" ? "" : "m",
  }));
}

function textOf(bar: Bar, digger: Digger, work: WorkQuantities, units: UnitSystem): string {
  const has = bar.code === "stand-slope" ? "" : length.print(bar.has, units);
  const where = `has nowhere to stand for ${work.name}`;
  switch (bar.code) {
    case "stand-line":
      return `${where} clear of ${bar.name}: ${has} off in plan at most, and its reach and the least distance to keep make ${length.print(bar.needs, units)}`;
    case "stand-building":
      return `${where} clear of ${bar.name}: it swings ${length.print(digger.tailSwing, units)} behind and is ${has} off`;
    case "stand-limit":
      return bar.has === 0
        ? `${where} but beyond ${bar.name}`
        : `${where} clear of ${bar.name}: it swings ${length.print(digger.tailSwing, units)} behind and is ${has} off`;
    case "stand-slope":
      return `${where} on a slope it takes (${pipeSlope.print(bar.has, units)}): the ground there slopes ${pipeSlope.print(bar.needs, units)} or more`;
  }
}
