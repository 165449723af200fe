import type { CutBeside, DigResult } from "../dig/index.js";
import type { Finding, Material, Scheme, Site } from "../site/index.js";
import type { UnitSystem } from "../units/index.js";
import { heldAgainst, nearLimit, notReachedFromOutside } from "./canIt.js";
import type { CanContext } from "./canIt.js";
import { diggersOf, diggingTables, ownDiggerFindings } from "./catalogue.js";
import type { Digger, DiggingTables } from "./catalogue.js";
import { checkOverhead } from "./overhead.js";
import { handDigging } from "./handDigging.js";
import { hireOf, workingDays } from "./hire.js";
import { setUpHours, timeWork } from "./hours.js";
import type { Job } from "./hours.js";
import { startsTooEarly, startsTooLate } from "./locateDays.js";
import { ownEarth } from "./ownEarth.js";
import { exactly, sumRanges } from "./range.js";
import type { MachinesCosted, MachinesResult } from "./result.js";
import { surplusTime } from "./surplus.js";
import type { Candidate, Reason } from "./types.js";
import { cheapestOf, planTrial, type PlannedTrial, type Trial } from "./wholeCost.js";

/** Working hours in a day when the scheme says nothing: as hire terms count a day (8 h). */
export const DEFAULT_HOURS_PER_DAY = 8;

const COMPARED = "typical, no source; compare with the figures of the machine on offer";

/** What stands in for the catalogue, as in one draw of a simulation. */
export interface Given {
  tables?: DiggingTables;
  diggers?: readonly Digger[];
  /** Where the works lie, so that standing places can be judged; absent: on open, level ground. */
  place?: Pick<CanContext, "limits" | "groundAt" | "rules">;
  /** What the works cut within the tolerance of buried lines; they are among the limits. */
  beside?: readonly CutBeside[];
  /** Days to wait after the locate call (null: not known); absent: it is made already. */
  locate?: { days: number | null };
  /** Whose local numbers hold; absent: overhead lines and the locate call are not checked. */
  site?: Pick<Site, "rules" | "locate">;
  /** Why each digger cannot, by id, where that is known already: it does not change with a draw. */
  held?: ReadonlyMap<string, readonly Reason[]>;
  /** Likely cost of the whole job with a digger, money; absent: everything hired, alone. */
  wholeCost?: (machines: MachinesCosted) => number;
}

/**
 * Chooses the digger, and works out its hours work by work, whole days and cheapest hire, beside
 * every other digger of the catalogue. The scheme's own digger is used if it names one, else, of
 * those that can, the one with which the whole job costs least. Hours in h, days whole, money as
 * in the price list; hire is without fuel. `units` is for the words of reasons and findings alone; `given` stands in for the catalogue.
 * Nothing to dig gives zeros.
 * Throws only if the dig names a material that `materials` does not hold.
 */
export function planMachines(
  scheme: Scheme,
  dig: DigResult,
  materials: ReadonlyMap<string, Material>,
  units: UnitSystem = "metric",
  given: Given = {},
): MachinesResult {
  const hoursPerDay = scheme.machines?.hoursPerDay ?? DEFAULT_HOURS_PER_DAY;
  const tables = given.tables ?? diggingTables();
  // The schema lets the share be 0, which is no work at all: then the catalogue's stands in.
  const efficiency = scheme.machines?.efficiency || tables.efficiency.likely;
  let own: ReturnType<Job["own"]> | undefined;
  const ownOnce = () => (own ??= ownEarth(dig.cut, materials));
  const job: Job = { scheme, dig, materials, own: ownOnce, efficiency, tables };
  const trials = (given.diggers ?? diggersOf(scheme)).map((digger) =>
    tryDigger(
      job,
      digger,
      hoursPerDay,
      given.held?.get(digger.id) ?? heldAgainst(digger, { scheme, dig, units, ...given.place }),
    ),
  );
  const once = given.tables !== undefined;
  const byHand = handDigging(given.beside ?? [], dig.works, given.place?.limits ?? [], materials);
  const { locate, wholeCost } = given;
  const plans = new Map<Trial, PlannedTrial>();
  const planned = (trial: Trial): PlannedTrial => {
    const rest = { scheme, dig, materials, hoursPerDay, once };
    const plan = plans.get(trial) ?? planTrial(trial, { ...rest, byHand, locate, wholeCost });
    plans.set(trial, plan);
    return plan;
  };
  const able = trials.filter((trial) => trial.obstacles.length === 0);
  const cheapest = cheapestOf(able.map(planned))?.trial;
  const named = trials.find((trial) => trial.digger.id === scheme.machines?.digger);
  const chosen = named ?? cheapest ?? nearestToAble(trials, planned);
  const { works, job: days, rental, fuel, working } = planned(chosen);
  const { left } = chosen;
  const digger = chosen.digger;
  return {
    digger: {
      id: chosen.digger.id,
      name: chosen.digger.name,
      reason: choiceReason(chosen, named !== undefined, able.length),
    },
    hoursPerDay,
    works,
    setUp: chosen.setUp,
    ...(left && { left }),
    hours: chosen.hours,
    days: workingDays(chosen.hours, hoursPerDay),
    hammerHours: chosen.hammerHours,
    ...{ fuel, working, rental, job: days, byHand },
    candidates: trials.map((trial) => candidateOf(trial, hoursPerDay, cheapest, plans.get(trial))),
    findings: [
      ...findingsOf(scheme, chosen, able, dig, materials),
      ...(once ? [] : notReachedFromOutside(digger, { scheme, dig, units, ...given.place })),
      ...lineFindings(digger, { scheme, dig, units }, given),
    ],
  };
}

function lineFindings(
  digger: Digger,
  job: { scheme: Scheme; dig: DigResult; units: UnitSystem },
  { site, place }: Given,
): Finding[] {
  if (site === undefined) return [];
  return [
    ...startsTooEarly(site, job.scheme),
    ...startsTooLate(site, job.scheme),
    ...checkOverhead(digger, { site, ...job, ...place }),
  ];
}

function tryDigger(
  job: Job,
  digger: Digger,
  hoursPerDay: number,
  obstacles: readonly Reason[],
): Trial {
  const works = job.dig.works.map((work) => timeWork(job, work, digger));
  const setUp = setUpHours(works, job.tables);
  const worked = works.some((work) => work.hours.likely > 0);
  const left = worked ? surplusTime(job.scheme, job.dig) : undefined;
  const shaping = left?.hours ?? exactly(0);
  const hours = sumRanges([setUp, ...works.map((work) => work.hours), shaping]);
  const hammerHours = sumRanges(works.map((work) => work.hammer));
  return {
    digger,
    works,
    setUp,
    ...(left && { left }),
    hours,
    hammerHours,
    rental: hireOf(digger, hours, hammerHours, hoursPerDay, job.scheme.prices),
    obstacles,
  };
}

/**
 * Where none can: the deepest when depth is against every one of them, else of those with least
 * against them the one with which the job costs least.
 */
function nearestToAble(trials: readonly Trial[], planned: (trial: Trial) => PlannedTrial): Trial {
  const isTooShallow = ({ obstacles }: Trial): boolean =>
    obstacles.some(({ code }) => code === "depth");
  if (trials.length > 0 && trials.every(isTooShallow)) return deepestOf(trials);
  const fewest = Math.min(...trials.map(({ obstacles }) => obstacles.length));
  const nearest = trials.filter(({ obstacles }) => obstacles.length === fewest);
  const chosen = cheapestOf(nearest.map(planned))?.trial ?? nearest[0];
  if (!chosen) throw new Error("diggers: got none in the catalogue, expected at least one");
  return chosen;
}

function deepestOf(trials: readonly Trial[]): Trial {
  return trials.reduce((best, trial) =>
    trial.digger.digDepth > best.digger.digDepth ? trial : best,
  );
}

function choiceReason(chosen: Trial, isNamed: boolean, ableCount: number): string {
  const obstacle = chosen.obstacles[0]?.text;
  if (isNamed)
    return obstacle ? `chosen for this scheme, but ${obstacle}` : "chosen for this scheme";
  if (obstacle)
    return `no digger of the catalogue can: even this one, which digs deepest, ${obstacle}`;
  if (chosen.hours.likely === 0) return "nothing to dig";
  return `the whole job costs least with it, of the ${ableCount} that can`;
}

function candidateOf(
  trial: Trial,
  hoursPerDay: number,
  cheapest: Trial | undefined,
  plan: PlannedTrial | undefined,
): Candidate {
  const [obstacle] = trial.obstacles;
  const able = trial === cheapest ? "the job costs least with it" : "can; the job costs more";
  return {
    id: trial.digger.id,
    name: trial.digger.name,
    can: obstacle === undefined,
    reasons: trial.obstacles,
    reason: obstacle?.text ?? able,
    hours: trial.hours,
    days: workingDays(trial.hours, hoursPerDay),
    price: (plan ?? trial).rental.total,
    ...(plan && {
      whole: plan.whole,
      jobDays: plan.job.schedule.likely.workingDays,
      calendarDays: plan.job.schedule.likely.calendarDays,
    }),
  };
}

function findingsOf(
  scheme: Scheme,
  chosen: Trial,
  able: readonly Trial[],
  dig: DigResult,
  materials: ReadonlyMap<string, Material>,
): Finding[] {
  const findings: Finding[] = ownDiggerFindings(scheme);
  const wanted = scheme.machines?.digger;
  if (wanted !== undefined && wanted !== chosen.digger.id) {
    findings.push({
      level: "caution",
      code: "machine.unknown",
      where: "site",
      text: `The catalogue has no digger “${wanted}”; ${chosen.digger.name} is used instead.`,
      source: "the site file",
    });
  }
  for (const obstacle of chosen.obstacles) {
    const others = able.map((trial) => trial.digger.name).join(", ");
    findings.push({
      level: "stop",
      code: "machine.cannot",
      where: "site",
      text: `${chosen.digger.name} ${obstacle.text}. ${
        others === "" ? "No digger of the catalogue can do every work." : `These can: ${others}.`
      }`,
      source: COMPARED,
    });
  }
  findings.push(...nearLimit(chosen.digger, dig));
  if (chosen.hammerHours.likely > 0) findings.push(rockFinding(dig, materials));
  return findings;
}

function rockFinding(dig: DigResult, materials: ReadonlyMap<string, Material>): Finding {
  const names = Object.keys(dig.cut)
    .map((id) => materials.get(id))
    .filter((material) => material?.kind === "rock")
    .map((material) => material?.name.toLowerCase());
  return {
    level: "caution",
    code: "machine.hammer",
    where: "site",
    text:
      `Hard rock (${names.join(", ")}) is taken out with a hydraulic hammer. Its output differs ` +
      "several times over with the rock and the carrier: break a trial piece before hiring by the week.",
    source:
      "Parsakhoo et al., Journal of Forest Science 57(12), 2011, 565–573; no published rate was found for small carriers",
  };
}
