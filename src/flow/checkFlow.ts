import type { PipeRun, WorkQuantities } from "../dig/index.js";
import type { Finding, PlanPoint, Scheme, Site } from "../site/index.js";
import { checkPipe } from "./checkPipe.js";
import { dailyFlow, sizeScheme } from "./design.js";
import {
  bendsOf,
  carriesOf,
  crossingFindings,
  crossingsOf,
  drainFindings,
  rockShare,
} from "./drains.js";
import { bareFloatFindings, floatFindings, tanksAfloat, waterFindings } from "./floating.js";
import { highestTank } from "./highestTank.js";
import { joinFindings, liquidDepthFindings, tankDropFindings } from "./joins.js";
import { outletJoints } from "./outletJoints.js";
import { isMissing, partsOf, solvePressure } from "./pressure.js";
import { pressureFindings } from "./pressureFindings.js";
import type { PressureResult } from "./pressureTypes.js";
import { settlingFindings } from "./settling.js";
import { sizingFindings } from "./sizingFindings.js";
import { moundFindings, moundSizes } from "./sizingMound.js";
import { soakFindings } from "./soakDepth.js";
import { staticLifts } from "./staticLift.js";
import { tankJoints } from "./tankJoints.js";
import { flattestStretch } from "./stretches.js";
import type { FlowResult, PipeCheck } from "./types.js";
import { wordingFor, type Wording } from "./wording.js";

/** What the checks know of the dig besides the pipes. */
export interface FlowGround {
  works: readonly WorkQuantities[];
  /** Ground as found at a place, m; NaN beyond the survey. */
  groundAt: (place: PlanPoint) => number;
  /** Depth below the ground at which the probes met water, m; null or absent where none did. */
  waterAt?: ((place: PlanPoint) => number) | null;
  /** Depth below the ground of the first rock, m, and its name; null or absent where no probe tells. */
  rockAt?: ((place: PlanPoint) => { depth: number; name: string }) | null;
}

const NO_GROUND: FlowGround = { works: [], groundAt: () => NaN };

/**
 * Checks every pipe of a scheme as the dig laid it: fall against the rule for its size, cover,
 * capacity, the meeting of gravity pipes with tanks and each other, the lift of pressure pipes; then
 * solves every pressure system, sizes the scheme and weighs its tanks against uplift. Results in SI;
 * the texts of findings and mends in the site's own units. Sources stand beside each rule used.
 */
export function checkFlow(
  site: Site,
  scheme: Scheme,
  pipes: readonly PipeRun[],
  ground: FlowGround = NO_GROUND,
): { flow: FlowResult; findings: Finding[] } {
  const words = wordingFor(site.units);
  const joints = tankJoints(pipes, scheme);
  const daily = dailyFlow(scheme);
  const outlets = outletJoints(pipes, scheme);
  const around = {
    site,
    runs: pipes,
    joints,
    outlets,
    scheme,
    words,
    daily: daily?.value ?? null,
    ground,
  };
  const checked = pipes.map((run) => checkRun(run, around));
  const { lifts, findings: liftFindings } = staticLifts(pipes, scheme, words);
  const pumped = pressureSystems(pipes, scheme, words);
  const flotation = tanksAfloat(scheme, ground);
  const plain = sizeScheme(scheme);
  const mounds = moundSizes(site, scheme, ground.groundAt, {
    areaWanted: plain.areaWanted?.value ?? null,
    bottom: plain.field.value,
  });
  const sizing = { ...plain, mounds };
  return {
    flow: {
      pipes: checked.map((each) => each.check),
      joints,
      outlets,
      lifts,
      highest: scheme.works.flatMap((work) =>
        work.kind === "tank" ? (highestTank(work, pipes, scheme) ?? []) : [],
      ),
      pressure: pumped.results,
      flotation,
      sizing,
    },
    findings: [
      ...checked.flatMap((each) => each.findings),
      ...liftFindings,
      ...pumped.findings,
      ...settlingFindings(pipes, scheme),
      ...tankDropFindings(scheme, words),
      ...liquidDepthFindings(scheme, words),
      ...waterFindings(flotation, words),
      ...floatFindings(flotation, scheme, words),
      ...bareFloatFindings(flotation, scheme),
      ...sizingFindings(sizing, scheme, site.units),
      ...moundFindings(mounds),
      ...soakFindings(site, scheme, pipes, ground, words),
    ],
  };
}

interface Around {
  site: Site;
  runs: readonly PipeRun[];
  joints: FlowResult["joints"];
  outlets: FlowResult["outlets"];
  scheme: Scheme;
  words: Wording;
  daily: number | null;
  ground: FlowGround;
}

function checkRun(run: PipeRun, around: Around): { check: PipeCheck; findings: Finding[] } {
  const { site, runs, scheme, words, daily, ground } = around;
  const { check, findings } = checkPipe(run, around);
  const carries = carriesOf(run, flattestStretch(run).fall, scheme, daily);
  const crossings = crossingsOf(run, runs);
  return {
    check: {
      ...check,
      carries,
      bends: bendsOf(run),
      crossings,
      rock: rockShare(run, ground.works, site),
    },
    findings: [
      ...findings,
      ...drainFindings(run, carries, scheme, words),
      ...joinFindings(run, runs, scheme, words),
      ...crossingFindings(run, crossings, words),
    ],
  };
}

function pressureSystems(
  runs: readonly PipeRun[],
  scheme: Scheme,
  words: Wording,
): { results: PressureResult[]; findings: Finding[] } {
  const results: PressureResult[] = [];
  const findings: Finding[] = [];
  const daily = dailyFlow(scheme);
  for (const system of scheme.flow?.pressure ?? []) {
    const parts = partsOf(system, runs, scheme);
    if (isMissing(parts)) {
      findings.push({
        level: "stop",
        code: "pressure.part-missing",
        where: scheme.works.some((work) => work.id === system.tank) ? system.tank : "site",
        text: `${system.name} cannot be worked out: ${parts.missing}. Choose it anew under Flow.`,
        source: "geometry",
      });
      continue;
    }
    const result = solvePressure(parts, scheme, daily);
    results.push(result);
    findings.push(...pressureFindings(result, parts, scheme, words));
  }
  return { results, findings };
}
