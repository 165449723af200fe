/** Overhead power lines over the ground where a digger swings and a truck tips. */
import type { DigResult } from "../dig/index.js";
import { ruleOf } from "../site/index.js";
import type { Finding, Limit, Locality, PlanPoint, Rule, Scheme } from "../site/index.js";
import { distance, type UnitSystem } from "../units/index.js";
import { axisToEdge } from "./canIt.js";
import type { Digger } from "./catalogue.js";
import { lineClearance } from "./cranes.js";
import { distanceToLine, distanceToRings, isOverheadLine, placesAlong } from "./standing.js";

/** What a digger and a truck are held against. */
export interface UnderLines {
  site: Locality;
  scheme: Scheme;
  dig: Pick<DigResult, "works" | "earth">;
  units: UnitSystem;
  limits?: readonly Limit[];
}

/** How near one machine can come to a line, m. */
interface Near {
  machine: string;
  /** In plan, from the line to the nearest part of the machine. */
  plan: number;
  /** The highest that it comes above the ground, m, and where that is from. */
  raised: number;
  raisedSource: string;
  /** Where it works that is nearest, and what that is. */
  place: string;
  at: PlanPoint;
}

/** m between places along a line. */
const STEP = 0.5;

/**
 * One finding for each overhead line and machine that can come within the distance at which its
 * owner is asked: a caution with the least distance to keep. A digger may be anywhere from which it
 * digs, turned any way; a truck on the drives and at the edge of holes that earth goes to or from.
 * Where the line's height is given, height counts too; else only the distance in plan.
 */
export function checkOverhead(digger: Digger, given: UnderLines): Finding[] {
  return (given.limits ?? [])
    .filter(isOverheadLine)
    .flatMap((line) =>
      [diggerNear(digger, line, given), truckNear(line, given)].flatMap((near) =>
        near === null ? [] : findingOf(line, near, given),
      ),
    );
}

/** Least distance, m, between a machine and a line: in space where the line's height is known. */
export function roomTo({ plan, raised }: Pick<Near, "plan" | "raised">, line: Limit): number {
  if (line.height === undefined) return plan;
  return Math.hypot(plan, Math.max(0, line.height - raised));
}

function diggerNear(digger: Digger, line: Limit, given: UnderLines): Near | null {
  const { scheme, dig, site } = given;
  const swings = axisToEdge(digger, { scheme, ...site }) + digger.reach;
  const holes = dig.works.flatMap(({ name, deepest, outlines }) =>
    deepest > 0 && outlines !== undefined ? [{ name, rings: outlines.daylight }] : [],
  );
  const nearest = nearestOf(line, holes);
  if (nearest === null) return null;
  const plan = Math.max(0, nearest.away - swings);
  const place = `digging ${nearest.name}`;
  return {
    ...nearest,
    machine: digger.name,
    plan,
    place,
    ...raisedTo(ruleOf(site, "digger-raised")),
  };
}

function truckNear(line: Limit, given: UnderLines): Near | null {
  const { scheme, dig, site, limits = [] } = given;
  const hauls = dig.earth.surplusLoose > 0 && !scheme.works.some(({ kind }) => kind === "pile");
  const served = dig.works.flatMap(({ name, deepest, fill, outlines }) => {
    const brought = Object.keys(fill).some((material) => material !== "native");
    const isServed = outlines !== undefined && (brought || (hauls && deepest > 0));
    return isServed ? [{ name: `beside ${name}`, rings: outlines.daylight }] : [];
  });
  const drives = limits.flatMap((limit) =>
    limit.kind === "drive" && limit.path !== undefined
      ? [{ name: `on ${limit.name ?? "the drive"}`, path: limit.path, width: limit.width ?? 0 }]
      : [],
  );
  const nearest = nearestOf(line, served, drives);
  if (nearest === null) return null;
  const { at, away, name } = nearest;
  const place = `tipping ${name}`;
  return {
    at,
    machine: "A dump truck",
    plan: away,
    place,
    ...raisedTo(ruleOf(site, "truck-raised")),
  };
}

function raisedTo({ value, source }: Rule): Pick<Near, "raised" | "raisedSource"> {
  return { raised: value, raisedSource: source };
}

interface Nearest {
  name: string;
  away: number;
  at: PlanPoint;
}

/** The place on a line that is nearest to any of some holes or drives; null without any. */
function nearestOf(
  line: Limit,
  holes: readonly { name: string; rings: readonly (readonly (readonly [number, number])[])[] }[],
  drives: readonly { name: string; path: readonly PlanPoint[]; width: number }[] = [],
): Nearest | null {
  let best: Nearest | null = null;
  const hold = (name: string, away: number, at: PlanPoint): void => {
    if (best === null || away < best.away) best = { name, away, at };
  };
  for (const { at } of placesAlong(line.path ?? [], STEP)) {
    for (const { name, rings } of holes) hold(name, distanceToRings(at, rings), at);
    for (const { name, path, width } of drives) {
      hold(name, Math.max(0, distanceToLine(at, path, false) - width / 2), at);
    }
  }
  return best;
}

function findingOf(line: Limit, near: Near, { site, units }: UnderLines): Finding[] {
  const ask = ruleOf(site, "line-ask");
  const room = roomTo(near, line);
  if (room >= ask.value) return [];
  const clearance = lineClearance(line.voltage);
  const name = line.name ?? "an overhead line";
  const height =
    line.height === undefined
      ? ""
      : `; how high it comes, ${distance.print(near.raised, units)}: ${near.raisedSource}`;
  const flat = line.height === undefined ? " in plan; no height of the line is entered" : "";
  const come =
    room > 0
      ? `could come within ${distance.print(room, units)} of ${name}${flat}`
      : `could touch ${name}${flat}`;
  const keep = distance.print(clearance.least, units);
  const kept =
    room < clearance.least
      ? `It has to keep ${keep} off at the least: mark a limit that it does not pass, or have the line switched off and earthed by its owner.`
      : `It has to keep ${keep} off at the least, and it is within ${distance.print(ask.value, units)}: ask its owner first.`;
  const voltage =
    line.voltage === undefined
      ? " Its voltage is not entered: ask its owner."
      : clearance.isOwners
        ? " At its voltage the owner says how far to keep."
        : "";
  return [
    {
      level: "caution",
      code: room < clearance.least ? "line.overhead" : "line.overhead-ask",
      where: line.id,
      at: near.at,
      text: `${near.machine}, ${near.place}, ${come}. ${kept}${voltage}`,
      source: `${clearance.source}; ${ask.source}${height}; written for cranes, used here for every machine that reaches up`,
    },
  ];
}
