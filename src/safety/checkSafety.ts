import type { CutBeside, DigResult, WorkQuantities } from "../dig/index.js";
import { wordingFor } from "../flow/index.js";
import type { Wording } from "../flow/index.js";
import { materialsOf, ruleOf } from "../site/index.js";
import type { Finding, PlanPoint, Scheme, Site, Tank, Work } from "../site/index.js";
import { mass } from "../units/index.js";
import { checkLocalRules } from "./checkLocalRules.js";
import { checkLines } from "./checkLines.js";
import { checkPower } from "./checkPower.js";
import { checkTank } from "./checkTank.js";
import { checkLimits } from "./checkLimits.js";
import { checkWalls } from "./checkWalls.js";
import { checkUndermining, checkWater } from "./edges.js";
import { floorLines, type HoleGround } from "./holeFloor.js";
import { holesOf, type HoleReport } from "./holes.js";
import type { SetbackKept } from "./setbacks.js";
import { checkSlopesThatStay } from "./slopesThatStay.js";

/** What is known of the ground beside the dig; what is absent is not checked. */
export interface SafetyGround {
  /** What the works cut within the tolerance of buried lines. */
  beside?: readonly CutBeside[];
  /** Ground as found at a place, m; NaN where it is not known. */
  groundAt?: (place: PlanPoint) => number;
  /** What lies under the ground; absent: walls are held against materials only. */
  under?: HoleGround;
}

/**
 * What could hurt someone or break a local rule in one scheme: walls of every hole, the lifting of
 * tanks, and works too near to the site's limits. Findings in the order of the works, then limits;
 * texts in the site's own units. A work that the dig did not report is checked for limits only.
 * Without the ground as found, walls are checked by the materials that each hole meets.
 */
export function checkSafety(
  site: Site,
  scheme: Scheme,
  dig: DigResult,
  { beside = [], groundAt = () => NaN, under }: SafetyGround = {},
): { findings: Finding[]; setbacks: SetbackKept[]; holes: HoleReport[] } {
  const words = wordingFor(site.units);
  const context = { materials: materialsOf(site), words, units: site.units, locality: site };
  const findings: Finding[] = [];
  const holes = under === undefined ? [] : holesOf(site, scheme, dig, under);
  for (const work of scheme.works) {
    const hole = dig.works.find((each) => each.id === work.id);
    const report = holes.find((each) => each.work === work.id);
    if (hole !== undefined) findings.push(...checkWalls(work, hole, { ...context, report }));
    if (hole !== undefined) findings.push(...checkSlopesThatStay(work, hole, context));
    // Where a lift is worked out, its own findings give weight and edge.
    if (work.kind === "tank" && scheme.machines?.lift === undefined) {
      findings.push(lifting(work, hole, words, site));
    }
    if (work.kind === "tank") findings.push(...checkTank(work, hole, { site, words, groundAt }));
  }
  const limits = checkLimits(site, scheme, dig.works, words);
  const lines = checkLines(site, scheme, dig, beside);
  const power = checkPower(scheme, dig);
  findings.push(...checkWater(holes, words));
  if (under !== undefined) {
    const floors = (work: Work) => floorLines(work, dig.pipes, under.groundAt);
    findings.push(...checkUndermining(scheme, holes, floors, site, words));
  }
  return {
    findings: [...checkLocalRules(site), ...lines, ...findings, ...limits.findings, ...power],
    setbacks: limits.setbacks,
    holes,
  };
}

function lifting(
  tank: Tank,
  hole: WorkQuantities | undefined,
  words: Wording,
  site: Site,
): Finding {
  const depth = hole === undefined ? 0 : Math.max(hole.tallestFace, hole.deepest);
  const back = ruleOf(site, "crane-back");
  const edge =
    depth > 0
      ? ` Ask where the crane's feet may stand: a rule of thumb keeps them ${back.value} times the depth, here ${words.distance(depth * back.value)}, back from the edge.`
      : "";
  const { emptyMass } = tank.body;
  const weight =
    emptyMass === undefined
      ? `No weight is entered for ${tank.name}. Get it from the maker's ticket before a crane is ordered.`
      : `${tank.name} weighs ${mass.print(emptyMass, site.units)} empty as entered; block and slings count as load too. Lift by the weight on the maker's ticket.`;
  return {
    level: emptyMass === undefined ? "caution" : "note",
    code: emptyMass === undefined ? "lifting.no-weight" : "lifting.weight",
    where: tank.id,
    text: `${weight}${edge} The operator decides.`,
    source: `WAC 296-24-24005 (block and slings); ${back.source}`,
  };
}
