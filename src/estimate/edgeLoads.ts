/** What heavy stands or drives on the lot while holes are open, in plan. */
import { rectangleInPlan, type PlanShape } from "../flow/index.js";
import {
  diggerPlace,
  diggersOf,
  placeOn,
  type CanContext,
  type GroundAt,
} from "../machines/index.js";
import type { EdgeLoad } from "../safety/index.js";
import type { Scheme, Site } from "../site/index.js";
import type { LiftResult, MachinesResult } from "../machines/index.js";

/**
 * The crane's pads at the stand that is best for all tanks, the drives that trucks come on, and the
 * digger's tracks at each hole while those dug before are open. A digger beside the hole that it
 * digs, and a crane beside a hole that its lift is checked for already, are not told again.
 */
export function edgeLoads(
  site: Site,
  scheme: Scheme,
  { dig, groundAt, machines, lift }: Stood,
): EdgeLoad[] {
  const context = { scheme, dig, units: site.units, ...placeOn(site, groundAt) };
  return [
    ...craneLoads(scheme, lift),
    ...driveLoads(site),
    ...diggerLoads(scheme, context, machines.digger.id),
  ];
}

/** What the job has made out of where things stand. */
interface Stood {
  dig: CanContext["dig"];
  groundAt: GroundAt;
  machines: MachinesResult;
  lift: LiftResult | null;
}

function craneLoads(scheme: Scheme, lift: LiftResult | null): EdgeLoad[] {
  const stand = scheme.machines?.lift?.stands.find(({ id }) => id === lift?.best);
  if (lift === null || stand === undefined) return [];
  const spread = lift.crane.outriggers ?? 0;
  const pads: PlanShape =
    spread > 0
      ? rectangleInPlan({ at: stand.at, bearing: 0, length: spread, width: spread })
      : { points: [stand.at], closed: false };
  const except = lift.tanks.map(({ tank }) => tank);
  return [{ name: `the crane's pads at ${stand.name}`, shape: pads, except }];
}

/** A drive's own middle line; half its width counts as part of it. */
function driveLoads({ limits = [] }: Site): EdgeLoad[] {
  return limits.flatMap(({ kind, name, path, closed, width }): EdgeLoad[] => {
    if (kind !== "drive" || path === undefined || path.length === 0) return [];
    const shape = { points: path, closed: closed === true };
    return [{ name: `trucks on ${name ?? "the drive"}`, shape, out: (width ?? 0) / 2, except: [] }];
  });
}

function diggerLoads(scheme: Scheme, context: CanContext, digger: string): EdgeLoad[] {
  const machine = diggersOf(scheme).find(({ id }) => id === digger);
  if (machine === undefined) return [];
  return context.dig.works.flatMap((work, i): EdgeLoad[] => {
    if (work.deepest <= 0) return [];
    const place = diggerPlace(machine, work, context);
    if (place === null) return [];
    const [dx, dy] = [place.towards[0] - place.at[0], place.towards[1] - place.at[1]];
    const shape = rectangleInPlan({
      at: place.at,
      bearing: (Math.atan2(dx, dy) * 180) / Math.PI,
      length: machine.trackLength,
      width: machine.width,
    });
    // Holes that come later are not open yet.
    const except = context.dig.works.slice(i).map(({ id }) => id);
    const name = `the digger's tracks while it digs ${work.name}`;
    return [{ name, shape, except, passing: true }];
  });
}
