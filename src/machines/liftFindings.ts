/** What the lift has to say to a person: findings, each with its source. */
import { ruleOf } from "../site/index.js";
import type { Finding } from "../site/index.js";
import { length, mass, pipeSlope, pressure } from "../units/index.js";
import type { UnitSystem } from "../units/index.js";
import { liftRules } from "./cranes.js";
import type { LiftJob, LiftResult, StandLift, TankLift } from "./liftTypes.js";
import { standSlope } from "./liftWarnings.js";
import type { Reason } from "./types.js";

const OPERATOR = "The operator decides.";

/** Findings of a lift in the order of the tanks, the crane's own first. */
export function liftFindings(job: LiftJob, result: LiftResult): Finding[] {
  const findings: Finding[] = [];
  if (job.lift.crane.by === "catalogue") {
    findings.push({
      // Every crane of the catalogue is typical only: each stand that fails is a finding of its own.
      level: "note",
      code: "lift.typical-crane",
      where: "site",
      text: `The chart of ${result.crane.name} is invented to plan with. Lift only by the chart of the crane on offer. ${OPERATOR}`,
      source: result.crane.source,
    });
  } else if (result.crane.block === undefined) {
    findings.push({
      level: "caution",
      code: "lift.no-block",
      where: "site",
      text: `No weight of the hook block of ${result.crane.name} is entered, so none is counted. It counts as load: ask for it. ${OPERATOR}`,
      source: "WAC 296-24-24005",
    });
  }
  findings.push(...slopingStands(job));
  for (const tank of result.tanks) findings.push(...tankFindings(job, tank));
  return findings;
}

/** Stands on ground that slopes more than a crane is set up on without more ado: one finding. */
function slopingStands(job: LiftJob): Finding[] {
  const { site, lift } = job;
  const rule = ruleOf(site, "stand-slope");
  const sloping = lift.stands
    .map(({ name, at }) => ({ name, at, slope: standSlope(job, at) }))
    .filter((stand): stand is typeof stand & { slope: number } => stand.slope !== null);
  const [first] = sloping;
  if (first === undefined) return [];
  const print = (slope: number): string => pipeSlope.print(slope, site.units);
  const named = sloping.map(({ name, slope }) => `${name} ${print(slope)}`).join(", ");
  const text = `The ground slopes where the crane might stand: ${named}. From ${print(rule.value)} level a place for it first, with its mats. ${OPERATOR}`;
  const found = { level: "caution", code: "lift.slope", where: "site" } as const;
  return [{ ...found, at: first.at, text, source: rule.source }];
}

function tankFindings(job: LiftJob, tank: TankLift): Finding[] {
  const { units } = job.site;
  if (tank.load === null) {
    return [
      {
        level: "caution",
        code: "lift.no-weight",
        where: tank.tank,
        text: `No weight is entered for ${tank.name}, so its lift is not worked out. Get it from the maker's ticket. ${OPERATOR}`,
        source: "the ticket's weight is lifted by, not an estimate: common practice, no source",
      },
    ];
  }
  const best = tank.stands.find(({ stand }) => stand === tank.best);
  const findings: Finding[] = [];
  if (best === undefined && tank.stands.length > 0) {
    findings.push({
      level: "stop",
      code: "lift.no-stand",
      where: tank.tank,
      text: `${tank.name} can be set from none of the places entered, by the figures given: what is said of each place tells why. Add a place that none of it speaks against, or ask for another crane. ${OPERATOR}`,
      source: job.crane.source,
    });
  }
  if (best?.share) findings.push(bestFinding(tank, best, best.share.value, units));
  for (const stand of tank.stands) findings.push(...standFindings(job, tank, stand));
  return findings;
}

function bestFinding(tank: TankLift, best: StandLift, share: number, units: UnitSystem): Finding {
  const near = liftRules().nearRating;
  const isNear = share > near.value;
  return {
    level: isNear ? "caution" : "note",
    code: isNear ? "lift.near-rating" : "lift.stand",
    where: tank.tank,
    text: `${tank.name} from ${best.name}: radius ${length.print(best.radius.value, units)}, ${pipeSlope.print(share, units, { digits: 0 })} of the rating${isNear ? ", which leaves little for a wrong weight or a longer radius" : ""}. ${OPERATOR}`,
    source: isNear ? near.source : (best.rated?.source ?? "geometry"),
  };
}

function standFindings(job: LiftJob, tank: TankLift, stand: StandLift): Finding[] {
  const { units } = job.site;
  const findings = stand.reasons.map((reason): Finding => {
    const figures = `${printed(reason.has, reason.unit, units)} where ${printed(reason.needs, reason.unit, units)} counts`;
    return {
      // Where another place serves, this one is only worth knowing; near a line it never is.
      level: tank.best !== null && reason.code !== "line" ? "note" : "caution",
      code: `lift.${reason.code}`,
      where: tank.tank,
      text: `${tank.name} from ${stand.name}: ${reason.text} (${figures}). ${OPERATOR}`,
      source: sourceOf(reason, stand),
    };
  });
  if (stand.line?.isAskFirst) {
    const { value, source } = ruleOf(job.site, "line-ask");
    findings.push({
      level: "caution",
      code: "lift.line-ask",
      where: tank.tank,
      text: `${tank.name} from ${stand.name}: boom or load could come within ${length.print(value, units)} of ${stand.line.name} in plan. Ask its owner first.${stand.line.isOwners ? " At its voltage the owner says how far to keep." : ""} ${OPERATOR}`,
      source,
    });
  }
  return findings;
}

function sourceOf({ code }: Reason, stand: StandLift): string {
  switch (code) {
    case "edge":
      return stand.edge?.needed.source ?? "geometry";
    case "line":
      return stand.line?.needed.source ?? "geometry";
    case "pad":
      return stand.pad?.source ?? "geometry";
    default:
      return stand.rated?.source ?? "the crane's chart as entered; geometry";
  }
}

function printed(value: number, unit: string, units: UnitSystem): string {
  if (unit === "kg") return mass.print(value, units);
  return unit === "Pa" ? pressure.print(value, units) : length.print(value, units);
}
