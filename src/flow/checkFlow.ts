import type { PipeRun } from "../dig/index.js";
import type { Finding, Scheme, Site } from "../site/index.js";
import { checkPipe } from "./checkPipe.js";
import { staticLifts } from "./staticLift.js";
import { tankJoints } from "./tankJoints.js";
import type { FlowResult } from "./types.js";
import { wordingFor } from "./wording.js";

/**
 * Checks every pipe of a scheme as the dig laid it: fall against the rule for its size, cover,
 * the meeting of gravity pipes with tanks, and the static lift of pressure pipes. Results in SI;
 * the texts of findings and mends in the site's own units. Sources stand beside each rule used.
 */
export function checkFlow(
  site: Site,
  scheme: Scheme,
  pipes: readonly PipeRun[],
): { flow: FlowResult; findings: Finding[] } {
  const words = wordingFor(site.units);
  const joints = tankJoints(pipes, scheme);
  const checked = pipes.map((run) => checkPipe(run, { runs: pipes, joints, scheme, words }));
  const { lifts, findings: liftFindings } = staticLifts(pipes, scheme, words);
  return {
    flow: { pipes: checked.map((each) => each.check), joints, lifts },
    findings: [...checked.flatMap((each) => each.findings), ...liftFindings],
  };
}
