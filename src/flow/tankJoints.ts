import type { PipeRun } from "../dig/index.js";
import type { Scheme, Tank } from "../site/index.js";
import { tankAt } from "./tankAt.js";
import type { OutletJoint, TankJoint } from "./types.js";

/**
 * Where gravity pipes meet tanks whose inlet or outlet height is given: the far end against the
 * inlet (base + inlet), the near end against the outlet. A pipe that meets no such tank, or whose
 * invert there is not known, has no joint.
 */
export function tankJoints(runs: readonly PipeRun[], scheme: Scheme): TankJoint[] {
  return runs
    .filter((run) => run.service === "gravity")
    .flatMap((run) => [jointAt(run, "outlet", scheme), jointAt(run, "inlet", scheme)])
    .filter((joint) => joint !== undefined);
}

/** The tank of a joint. Throws when the scheme has none of its id. */
export function tankOf(joint: TankJoint, scheme: Scheme): Tank {
  const tank = scheme.works.find((work) => work.id === joint.tank);
  if (tank?.kind === "tank") return tank;
  throw new Error(`joint: got tank "${joint.tank}", expected the id of a tank of the scheme`);
}

/** What a joint is at, in words: "the inlet of Tank 1", "Drain outlet of House". */
export function placeOf(joint: TankJoint | OutletJoint, scheme: Scheme): string {
  if ("building" in joint) return joint.name;
  return `the ${joint.side} of ${tankOf(joint, scheme).name}`;
}

function jointAt(run: PipeRun, side: TankJoint["side"], scheme: Scheme): TankJoint | undefined {
  const station = side === "inlet" ? run.stations.at(-1) : run.stations[0];
  const tank = station === undefined ? undefined : tankAt(station.at, scheme);
  const height = tank?.body[side];
  if (station === undefined || tank === undefined || height === undefined) return undefined;
  if (!Number.isFinite(station.invert)) return undefined;
  const tankInvert = tank.base + height;
  return {
    pipe: run.id,
    tank: tank.id,
    side,
    pipeInvert: station.invert,
    tankInvert,
    off: station.invert - tankInvert,
  };
}
