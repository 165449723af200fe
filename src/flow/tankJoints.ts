import type { PipeRun } from "../dig/index.js";
import type { Finding, Scheme } from "../site/index.js";
import { FLOW_SETTINGS } from "./settings.js";
import { tankAt } from "./tankAt.js";
import type { TankJoint } from "./types.js";
import type { Wording } from "./wording.js";

/**
 * Where gravity pipes meet tanks whose inlet or outlet height is given: the far end against the
 * inlet (base + inlet), the near end against the outlet. A joint further off than the tolerance is
 * a finding with the amount. A pipe that meets no such tank, or whose
 * invert there is not known, has no joint.
 */
export function tankJoints(
  runs: readonly PipeRun[],
  scheme: Scheme,
  words: Wording,
): { joints: TankJoint[]; findings: Finding[] } {
  const joints: TankJoint[] = [];
  const findings: Finding[] = [];
  for (const run of runs) {
    if (run.service !== "gravity") continue;
    for (const side of ["outlet", "inlet"] as const) {
      const met = jointAt(run, side, scheme);
      if (met === undefined) continue;
      joints.push(met.joint);
      const finding = misfit(run, met.joint, met.tankName, words);
      if (finding !== undefined) findings.push(finding);
    }
  }
  return { joints, findings };
}

function jointAt(
  run: PipeRun,
  side: TankJoint["side"],
  scheme: Scheme,
): { joint: TankJoint; tankName: string } | undefined {
  const station = side === "inlet" ? run.stations.at(-1) : run.stations[0];
  const tank = station === undefined ? undefined : tankAt(station.at, scheme);
  const height = tank?.body[side];
  if (station === undefined || tank === undefined || height === undefined) return undefined;
  if (!Number.isFinite(station.invert)) return undefined;
  const tankInvert = tank.base + height;
  const joint: TankJoint = {
    pipe: run.id,
    tank: tank.id,
    side,
    pipeInvert: station.invert,
    tankInvert,
    off: station.invert - tankInvert,
  };
  return { joint, tankName: tank.name };
}

function misfit(
  run: PipeRun,
  joint: TankJoint,
  tankName: string,
  words: Wording,
): Finding | undefined {
  if (Math.abs(joint.off) <= FLOW_SETTINGS.jointTolerance) return undefined;
  const does = joint.side === "inlet" ? "ends" : "starts";
  const where = joint.off > 0 ? "above" : "below";
  const amount = words.length(Math.abs(joint.off));
  const move = joint.off > 0 ? "lower" : "raise";
  const opposite = joint.off > 0 ? "raise" : "lower";
  return {
    level: "caution",
    code: `pipe.misses-${joint.side}`,
    where: run.id,
    text:
      `${run.name} ${does} ${amount} ${where} the ${joint.side} of ${tankName}. ` +
      `${capital(move)} that end of the pipe or ${opposite} the tank by as much.`,
    source: "geometry",
  };
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
