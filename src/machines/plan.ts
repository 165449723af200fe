import type { DigResult } from "../dig/index.js";
import type { Finding, Material, Quantity, Scheme } from "../site/index.js";
import { length } from "../units/index.js";
import type { UnitSystem } from "../units/index.js";
import { catalogueDiggers, diggingTables } from "./catalogue.js";
import type { Digger } from "./catalogue.js";
import { hireOf, workingDays } from "./hire.js";
import { setUpHours, timeWork, workHours } from "./hours.js";
import type { Job, TimedWork } from "./hours.js";
import { ownEarth } from "./ownEarth.js";
import { mapRange, sumRanges } from "./range.js";
import type { Candidate, MachinesResult, Range, Rental } from "./types.js";

/** Working hours in a day when the scheme says nothing: as hire terms count a day (8 h). */
export const DEFAULT_HOURS_PER_DAY = 8;

const COMPARED = "typical, no source; compare with the figures of the machine on offer";

/** One digger with the whole job worked out for it. */
interface Trial {
  digger: Digger;
  works: TimedWork[];
  setUp: Range;
  hours: Range;
  hammerHours: Range;
  rental: Rental;
  /** Why it cannot do the job; empty when it can. */
  obstacles: string[];
}

/**
 * Chooses the digger, and works out its hours work by work, whole days and cheapest hire, beside
 * every other digger of the catalogue. The scheme's own digger is used if it names one, else the
 * cheapest to hire of those that can. Hours in h, days whole, money as in the price list, without
 * fuel. `units` is for the words of reasons and findings alone. Nothing to dig gives zeros.
 * Throws only if the dig names a material that `materials` does not hold.
 */
export function planMachines(
  scheme: Scheme,
  dig: DigResult,
  materials: ReadonlyMap<string, Material>,
  units: UnitSystem = "metric",
): MachinesResult {
  const hoursPerDay = scheme.machines?.hoursPerDay ?? DEFAULT_HOURS_PER_DAY;
  // The schema lets the share be 0, which is no work at all: then the catalogue's stands in.
  const efficiency = scheme.machines?.efficiency || diggingTables().efficiency.likely;
  let own: ReturnType<Job["own"]> | undefined;
  const ownOnce = () => (own ??= ownEarth(dig.cut, materials));
  const job: Job = { scheme, dig, materials, own: ownOnce, efficiency };
  const trials = catalogueDiggers().map((digger) => tryDigger(job, digger, hoursPerDay, units));
  const able = trials.filter((trial) => trial.obstacles.length === 0);
  const cheapest = able.reduce<Trial | undefined>(
    (best, trial) => (best && best.rental.total.likely <= trial.rental.total.likely ? best : trial),
    undefined,
  );
  const named = trials.find((trial) => trial.digger.id === scheme.machines?.digger);
  const chosen = named ?? cheapest ?? deepestDigger(trials);
  return {
    digger: {
      id: chosen.digger.id,
      name: chosen.digger.name,
      reason: choiceReason(chosen, named !== undefined, able.length),
    },
    hoursPerDay,
    works: chosen.works.map(workHours),
    setUp: chosen.setUp,
    hours: chosen.hours,
    days: workingDays(chosen.hours, hoursPerDay),
    hammerHours: chosen.hammerHours,
    fuel: mapRange(chosen.hours, (h) => h * chosen.digger.fuelPerHour),
    working: workingOf(chosen, hoursPerDay),
    rental: chosen.rental,
    candidates: trials.map((trial) => candidateOf(trial, hoursPerDay, cheapest)),
    findings: findingsOf(scheme, chosen, able, dig, materials),
  };
}

function tryDigger(job: Job, digger: Digger, hoursPerDay: number, units: UnitSystem): Trial {
  const works = job.dig.works.map((work) => timeWork(job, work, digger));
  const setUp = setUpHours(works);
  const hours = sumRanges([setUp, ...works.map((work) => work.hours)]);
  const hammerHours = sumRanges(works.map((work) => work.hammer));
  return {
    digger,
    works,
    setUp,
    hours,
    hammerHours,
    rental: hireOf(digger, hours, hammerHours, hoursPerDay, job.scheme.prices),
    obstacles: obstaclesOf(job, digger, units),
  };
}

/** Why a digger cannot do the works: too shallow for a hole, or too wide for a trench. */
function obstaclesOf(job: Job, digger: Digger, units: UnitSystem): string[] {
  const obstacles: string[] = [];
  for (const work of job.dig.works) {
    if (work.deepest > digger.digDepth) {
      obstacles.push(
        `digs to ${length.print(digger.digDepth, units)}; ` +
          `${work.name} needs ${length.print(work.deepest, units)}`,
      );
    }
    const drawn = job.scheme.works.find((w) => w.id === work.id);
    const isNarrow = drawn?.kind === "trench" && drawn.width < digger.narrowBucket;
    if (isNarrow && work.deepest > 0) {
      obstacles.push(
        `its narrowest bucket is ${length.print(digger.narrowBucket, units)}; ` +
          `${work.name} is ${length.print(drawn.width, units)} wide`,
      );
    }
  }
  return obstacles;
}

function deepestDigger(trials: readonly Trial[]): Trial {
  const [first, ...others] = trials;
  if (!first) throw new Error("diggers: got none in the catalogue, expected at least one");
  return others.reduce(
    (best, trial) => (trial.digger.digDepth > best.digger.digDepth ? trial : best),
    first,
  );
}

function choiceReason(chosen: Trial, isNamed: boolean, ableCount: number): string {
  const obstacle = chosen.obstacles[0];
  if (isNamed)
    return obstacle ? `chosen for this scheme, but ${obstacle}` : "chosen for this scheme";
  if (obstacle)
    return `no digger of the catalogue can: even this one, which digs deepest, ${obstacle}`;
  if (chosen.hours.likely === 0) return "nothing to dig";
  return `cheapest to hire of the ${ableCount} that can`;
}

function candidateOf(trial: Trial, hoursPerDay: number, cheapest: Trial | undefined): Candidate {
  const [obstacle] = trial.obstacles;
  const able =
    trial === cheapest ? "cheapest to hire of those that can" : "can, at a higher hire price";
  return {
    id: trial.digger.id,
    name: trial.digger.name,
    can: obstacle === undefined,
    reason: obstacle ?? able,
    hours: trial.hours,
    days: workingDays(trial.hours, hoursPerDay),
    price: trial.rental.total,
  };
}

function workingOf(chosen: Trial, hoursPerDay: number): MachinesResult["working"] {
  const hours = chosen.hours.likely;
  const { source: setUpSource } = diggingTables().setUp;
  const worksIn = chosen.works.map((w) => ({ name: w.name, value: w.hours.likely, unit: "h" }));
  const hoursWorking: Quantity = {
    value: hours,
    unit: "h",
    formula: "set-up + hours of every work",
    inputs: [{ name: "set-up", value: chosen.setUp.likely, unit: "h" }, ...worksIn],
    source: `set-up: ${setUpSource}`,
  };
  return {
    hours: hoursWorking,
    days: {
      value: workingDays(chosen.hours, hoursPerDay).likely,
      unit: "d",
      formula: "hours ÷ hours per day, rounded up to whole days",
      inputs: [
        { name: "hours", value: hours, unit: "h" },
        { name: "hours per day", value: hoursPerDay, unit: "h" },
      ],
      source: "hire terms count 8 h as a day (published rental terms); yours may differ",
    },
    fuel: {
      value: hours * chosen.digger.fuelPerHour,
      unit: "m³",
      formula: "hours × fuel per hour",
      inputs: [
        { name: "hours", value: hours, unit: "h" },
        { name: "fuel per hour", value: chosen.digger.fuelPerHour, unit: "m³/h" },
      ],
      source: chosen.digger.source,
    },
  };
}

function findingsOf(
  scheme: Scheme,
  chosen: Trial,
  able: readonly Trial[],
  dig: DigResult,
  materials: ReadonlyMap<string, Material>,
): Finding[] {
  const findings: Finding[] = [];
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
      text: `${chosen.digger.name} ${obstacle}. ${
        others === "" ? "No digger of the catalogue can do every work." : `These can: ${others}.`
      }`,
      source: COMPARED,
    });
  }
  findings.push(...nearLimit(chosen, dig));
  if (chosen.hammerHours.likely > 0) findings.push(rockFinding(dig, materials));
  return findings;
}

/** Works that use nearly all of the digging depth: reached only with the arm hanging straight. */
function nearLimit(chosen: Trial, dig: DigResult): Finding[] {
  const { digger } = chosen;
  return dig.works
    .filter((w) => w.deepest > 0.9 * digger.digDepth && w.deepest <= digger.digDepth)
    .map((work) => ({
      level: "caution" as const,
      code: "machine.near-limit",
      where: work.id,
      text:
        `${work.name} takes more than nine tenths of the digging depth of ${digger.name}, ` +
        "which it has only straight below the arm, standing at the edge. Ask for the next size up.",
      source: "common practice, no source",
    }));
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
