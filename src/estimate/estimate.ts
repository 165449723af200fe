import { costOf, leftEarthFindings, type CostResult } from "../cost/index.js";
import { cutsBeside } from "../dig/index.js";
import type { CutBeside, PipeRun } from "../dig/index.js";
import { checkFlow, wordingFor } from "../flow/index.js";
import { baseGround, elevationAt, type BaseGround } from "../ground/index.js";
import {
  checkLift,
  isBuried,
  placeOn,
  planMachines,
  type Given,
  type MachinesCosted,
} from "../machines/index.js";
import { checkLand } from "../land/index.js";
import { checkRunoff } from "../runoff/index.js";
import { checklist } from "../permit/index.js";
import { cautions, checkLoads, checkSafety, checkStanding } from "../safety/index.js";
import {
  acceptanceOf,
  parted,
  isLocated,
  materialsOf,
  ruleOf,
  type Finding,
  type PlanPoint,
  type Scheme,
  type Site,
  type SiteProblem,
} from "../site/index.js";
import { printMarked } from "../units/index.js";
import { checkSteep } from "./checkSteep.js";
import { wholeDig } from "./dugSites.js";
import { edgeLoads } from "./edgeLoads.js";
import { heightsAfter } from "./heightAfter.js";
import { holeGround, rockGround } from "./holeGround.js";
import type { Estimate } from "./types.js";

/**
 * The whole estimate of one scheme: dig, flow, machines, cost, findings and standing cautions.
 * Pure: the same site gives the same estimate. The site must be one that `checkSite` and
 * `surveyProblem` accept and the scheme one of its own; anything else throws.
 */
export function estimate(site: Site, schemeId: string): Estimate {
  const scheme = schemeOf(site, schemeId);
  const base = groundOf(site);
  const materials = materialsOf(site);
  const { result: dig, ground } = wholeDig(site, scheme, base);
  const standing = checkStanding(scheme, heightsAfter(ground, base), wordingFor(site.units), site);
  const groundAt = (place: PlanPoint): number => heightAt(base, place);
  const under = holeGround(site, base, groundAt);
  const { flow, findings: flowFindings } = checkFlow(site, scheme, dig.pipes, {
    ...{ works: dig.works, groundAt, waterAt: under.waterAt, rockAt: rockGround(site, under) },
  });
  const beside = besideLines({ site, scheme, base, dig });
  const bare = checkLand(site, scheme, dig.works, base);
  const costWith = (machines: MachinesCosted): CostResult =>
    costOf(scheme, site.currency, dig, machines, materials, bare.land.barrier, site.units);
  const wholeCost: Given["wholeCost"] = (tried) => costWith(tried).total.likely;
  const place = placeOn(site, groundAt);
  const given = { place, beside, site, wholeCost, ...locateOf(site) };
  const machines = planMachines(scheme, dig, materials, site.units, given);
  const lift = checkLift(site, scheme, dig, groundAt, bare.land.barriers);
  const runoff = checkRunoff(site, scheme, dig.works, base);
  const safety = checkSafety(site, scheme, dig, { beside, groundAt, under });
  const loads = edgeLoads(site, scheme, { dig, groundAt, machines, lift: lift.result });
  const cost = costWith(machines);
  return {
    format: "bankyard-estimate",
    version: 1,
    ...{ site: site.name, scheme: scheme.id },
    cut: dig.cut,
    works: dig.works,
    earth: dig.earth,
    haul: dig.haul,
    pipes: pipesOf(dig.pipes),
    flow,
    machines,
    lift: lift.result,
    runoff: runoff.works,
    land: bare.land,
    setbacks: safety.setbacks,
    holes: safety.holes,
    permit: checklist({ site, scheme, works: dig.works, flow, setbacks: safety.setbacks }),
    cost,
    findings: takenOn(site, scheme, [
      ...base.findings,
      ...dig.findings,
      ...flowFindings,
      ...safety.findings,
      ...standing,
      ...checkSteep(site, scheme, base),
      ...checkLoads(safety.holes, dig, loads, site),
      ...runoff.findings,
      ...bare.findings,
      ...machines.findings,
      ...lift.findings,
      ...cost.findings,
      ...leftEarthFindings(scheme, dig, materials, site.units),
    ]),
    cautions: cautions(),
  };
}

/** Days to wait after the locate call, where it is still to be made. */
function locateOf(site: Site): Pick<Given, "locate"> {
  return isLocated(site) ? {} : { locate: { days: site.locate?.days ?? null } };
}

function pipesOf(runs: readonly PipeRun[]): Estimate["pipes"] {
  return runs.map(({ id, length, fall, drop, cover }) => ({ id, length, fall, drop, cover }));
}

/** What a scheme cuts within the tolerance of the site's buried lines; needs the dig of it. */
export function besideLines(ground: Parameters<typeof cutsBeside>[0]): CutBeside[] {
  const lines = (ground.site.limits ?? []).filter(isBuried);
  return cutsBeside(ground, lines, ruleOf(ground.site, "hand-within").value);
}

/** What keeps a ground from being built from the survey, as a problem placed in the file. */
export function surveyProblem(site: Site): SiteProblem | null {
  const ground = baseGround(site);
  if (ground.ok) return null;
  const { code, text, mend } = ground.problem;
  const path = code === "breakline" ? "survey.breaklines" : "survey.points";
  return { code: "bad-survey", path, text, mend };
}

/** The scheme of that id; throws when the site has none. */
export function schemeOf(site: Site, schemeId: string): Scheme {
  const scheme = site.schemes.find((each) => each.id === schemeId);
  if (!scheme) {
    const known = site.schemes.map((each) => each.id).join(", ");
    throw new Error(`got scheme "${schemeId}", expected one of: ${known}`);
  }
  return scheme;
}

/** The ground of a site whose survey is sound; throws when it is not. */
export function groundOf(site: Site): BaseGround {
  const ground = baseGround(site);
  if (!ground.ok) throw new Error(`survey: ${ground.problem.text}; ${ground.problem.mend}`);
  return ground.base;
}

/** Ground as found at a place, m; NaN beyond the survey. */
function heightAt({ tin }: BaseGround, [x, y]: PlanPoint): number {
  const z = elevationAt(tin, x - tin.origin[0], y - tin.origin[1]);
  return z === null ? NaN : z + tin.origin[2];
}

/**
 * The findings in the site's units, worst first, each with the reason for which the file takes it on. An acceptance that
 * does not tell what was said covers none where several have its code and place.
 */
function takenOn(site: Site, scheme: Scheme, findings: readonly Finding[]): Finding[] {
  return worstFirst(findings).map((marked) => {
    const finding = {
      ...marked,
      text: printMarked(marked.text, site.units),
      source: printMarked(marked.source, site.units),
    };
    const accepted = acceptanceOf(site, scheme.id, finding);
    if (accepted === null) return finding;
    const { reason, by, on, said } = accepted;
    const alike = findings.filter(
      (one) => one.code === finding.code && one.where === finding.where,
    );
    if (said === undefined && alike.length > 1) return finding;
    const then = said === undefined || said === parted(finding.text)[0] ? undefined : said;
    const who = {
      ...(then !== undefined && { then }),
      ...(by !== undefined && { by }),
      ...(on !== undefined && { on }),
    };
    return { ...finding, accepted: { reason, ...who } };
  });
}

const WORST: readonly Finding["level"][] = ["stop", "caution", "note"];

function worstFirst(findings: readonly Finding[]): Finding[] {
  return [...findings].sort((a, b) => WORST.indexOf(a.level) - WORST.indexOf(b.level));
}
