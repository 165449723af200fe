/** Where the digger and the crane of a scheme stand at their work, for drawing. Site coordinates, m. */
import {
  diggerPlace,
  diggersOf,
  placeOn,
  type Digger,
  type LiftCrane,
  type StandLift,
} from "../machines/index.js";
import type { PlanPoint, Site, Tank } from "../site/index.js";
import { groundAt } from "./lookup.js";
import { schemeOf } from "./estimate.js";
import type { Estimate } from "./types.js";

/** The digger beside a hole. */
export interface DiggerAtWork {
  digger: Digger;
  /** Id and name of what it digs. */
  work: string;
  name: string;
  /** Axis of swing, and what the arm points at, in plan. */
  at: PlanPoint;
  towards: PlanPoint;
}

/**
 * The scheme's digger at the work of that id, or where that is not dug at the first tank's hole, or
 * the first hole of all. Null where nothing is dug or nothing entered leaves it a place.
 */
export function diggerAtWork(
  site: Site,
  schemeId: string,
  estimate: Estimate,
  workId: string | null,
): DiggerAtWork | null {
  const scheme = schemeOf(site, schemeId);
  const digger = diggersOf(scheme).find(({ id }) => id === estimate.machines.digger.id);
  const dug = estimate.works.filter((work) => work.deepest > 0);
  const work =
    dug.find(({ id }) => id === workId) ?? dug.find(({ kind }) => kind === "tank") ?? dug[0];
  if (digger === undefined || work === undefined) return null;
  const place = diggerPlace(digger, work, {
    ...{ scheme, dig: estimate, units: site.units },
    ...placeOn(site, (at) => groundAt(site, at) ?? NaN),
  });
  if (place === null) return null;
  return { digger, work: work.id, name: work.name, ...place };
}

/** The crane at a stand, with the tank that it sets. */
export interface CraneAtWork {
  crane: LiftCrane;
  tank: Tank;
  stand: StandLift;
  /** Axis of rotation in plan. */
  at: PlanPoint;
}

/**
 * The crane at the best stand for the tank of that id, or else for the first tank: the stand that
 * works with the smallest share of the rating, or the first where none does (its `works` says so).
 * Null without a crane, a stand or a tank.
 */
export function craneAtWork(
  site: Site,
  schemeId: string,
  estimate: Estimate,
  workId: string | null,
): CraneAtWork | null {
  const scheme = schemeOf(site, schemeId);
  const { lift } = estimate;
  const lifted = lift?.tanks.find(({ tank }) => tank === workId) ?? lift?.tanks[0];
  const best = lifted?.best ?? lift?.best ?? null;
  const stand = lifted?.stands.find((one) => one.stand === best) ?? lifted?.stands[0];
  const at = scheme.machines?.lift?.stands.find(({ id }) => id === stand?.stand)?.at;
  const tank = scheme.works.find((work) => work.id === lifted?.tank);
  if (!lift || stand === undefined || at === undefined || tank?.kind !== "tank") return null;
  return { crane: lift.crane, tank, stand, at };
}
