/** The job as tasks: what is done to each work, what must come first, and what it needs. */
import type { DigResult } from "../dig/index.js";
import { NATIVE } from "../site/index.js";
import type { Material, Scheme, Work } from "../site/index.js";
import { diggingTables } from "./catalogue.js";
import type { DiggingTables } from "./catalogue.js";
import type { DaysSettings, Resource, Task, TaskKind } from "./dayTypes.js";
import { USUAL_CREW } from "./daysSettings.js";
import type { HandDug } from "./handDigging.js";
import { hireCatalogue } from "./hireCatalogue.js";
import type { HireCatalogue } from "./hireCatalogue.js";
import { wayOfDigging } from "./output.js";
import { knownMaterial } from "./ownEarth.js";
import { placingSteps } from "./placing.js";
import type { StepHours } from "./placing.js";
import { exactly, hoursAt, mapRange, sumRanges } from "./range.js";
import { surplusTime } from "./surplus.js";
import type { Range, WorkHours } from "./types.js";

const FROM_OUTPUT = "digging output and compacting rates of the catalogue";

/** What is known of the machines: hours of each work and of setting up. */
export interface TaskHours {
  works: readonly WorkHours[];
  setUp: Range;
  /** What must be dug by hand beside buried lines, before the digger comes near. */
  byHand: readonly HandDug[];
  /** Days to wait after the locate call (null: not known); absent: it is made already. */
  locate?: { days: number | null };
}

/** Everything that the tasks are made from, and the list as it grows. */
interface TaskList {
  scheme: Scheme;
  dig: DigResult;
  materials: ReadonlyMap<string, Material>;
  settings: DaysSettings;
  times: HireCatalogue["times"];
  tables: DiggingTables;
  tasks: Task[];
  /** Ids so far: of the last digging, of tanks set, of pipes under pressure, and of all refilling. */
  lastDug: string;
  tanksSet: string[];
  pressureLaid: string[];
  refilled: string[];
  /** Hours of placing by step, of each work asked for. */
  steps: Map<string, readonly StepHours[]>;
}

/**
 * The tasks of a scheme from what is dug and placed and how long that takes. Works are dug in their
 * order; each is bedded, its tank set or pipe laid, tested, inspected and then backfilled, while
 * others go on where they need nothing of the same. Pipe waits for every tank before it in the list
 * to be set. Topsoil goes back last. Hours of digging and placing add up to those of the works.
 * Empty when there is nothing to do. Throws if the dig names a material that `materials` lacks.
 */
export function tasksOf(
  scheme: Scheme,
  dig: DigResult,
  machines: TaskHours,
  materials: ReadonlyMap<string, Material>,
  settings: DaysSettings,
): Task[] {
  const list: TaskList = {
    ...{ scheme, dig, materials, settings, times: hireCatalogue().times, tables: diggingTables() },
    ...{ tasks: [], lastDug: "set-up", tanksSet: [], pressureLaid: [], refilled: [] },
    steps: new Map(),
  };
  if (!machines.works.some((work) => work.hours.high > 0)) return [];
  const located = addLocate(list, machines.locate);
  add(list, "setUp", null, "Bring the digger, set up", {
    after: located,
    needs: ["digger", "crew"],
    hours: machines.setUp,
    deliveries: ["digger"],
    source: FROM_OUTPUT,
  });
  for (const work of machines.works) {
    addByHand(list, work, machines.byHand);
    const drawn = scheme.works.find(({ id }) => id === work.id);
    const dug = addDigging(list, work, drawn?.kind === "strip");
    if (drawn?.kind === "tank") addTank(list, work, drawn, dug);
    else if (drawn?.kind === "trench") addTrench(list, work, drawn, dug);
    else if (drawn?.kind !== "strip") addFilling(list, work, drawn, dug);
  }
  addPumps(list);
  addSurplus(list);
  addRestoring(list, machines.works);
  return list.tasks;
}

interface TaskParts {
  after?: readonly string[];
  needs?: readonly Resource[];
  hours?: Range;
  wait?: number;
  inOneDay?: boolean;
  deliveries?: readonly string[];
  source?: string;
}

const NOTHING: readonly never[] = [];

/** Adds one task and gives its id. One person alone cannot work by hand while digging. */
function add(
  list: TaskList,
  kind: TaskKind,
  work: string | null,
  name: string,
  parts: TaskParts,
): string {
  const step = kind === "setUp" ? "set-up" : kind;
  const id = work === null ? step : `${work}:${step}`;
  const needs = parts.needs ?? NOTHING;
  const isAlone = list.settings.crew < 2 && needs.includes("digger") && !needs.includes("crew");
  list.tasks.push({
    id,
    name,
    work,
    kind,
    after: parts.after ?? NOTHING,
    needs: isAlone ? [...needs, "crew"] : needs,
    hours: parts.hours ?? exactly(0),
    wait: parts.wait ?? 0,
    inOneDay: parts.inOneDay ?? false,
    deliveries: parts.deliveries ?? NOTHING,
    source: parts.source ?? list.times.source,
  });
  return id;
}

/**
 * The locate call comes before any digging, and its days are waited for: those entered, else the
 * usual ones, since a schedule without any would have the digger there before the marks.
 */
function addLocate(list: TaskList, locate: TaskHours["locate"]): string[] {
  if (locate === undefined) return [];
  const usual = hireCatalogue().locate;
  const { days } = locate;
  const called = "Call the utility locate service, wait for the marks";
  const name =
    days === null ? `${called} (${usual.days} working days taken; enter your state's)` : called;
  const from = days === null ? usual.source : "the days to wait are your state's, as entered";
  const source = `29 CFR 1926.651(b); ${from}`;
  return [add(list, "locate", null, name, { wait: days ?? usual.days, source })];
}

/** What lies beside a buried line is laid bare by hand first. */
function addByHand(list: TaskList, work: WorkHours, byHand: readonly HandDug[]): void {
  const parts = byHand.filter((part) => part.work === work.id);
  if (parts.length === 0) return;
  list.lastDug = add(list, "hand", work.id, `Dig by hand beside what is buried: ${work.name}`, {
    after: [list.lastDug],
    needs: ["crew"],
    hours: sumRanges(parts.map(({ hours }) => hours)),
    source: diggingTables().byHand.source,
  });
}

/** Digging in earth, then breaking rock; gives the id of what must be done before going on. */
function addDigging(list: TaskList, work: WorkHours, isStrip: boolean): string {
  const lines = work.materials.filter(({ action }) => action === "dig");
  const isRock = (material: string): boolean =>
    material !== NATIVE &&
    wayOfDigging(knownMaterial(material, list.materials), list.tables).hammered;
  const hoursOf = (rock: boolean): Range =>
    sumRanges(lines.filter(({ material }) => isRock(material) === rock).map(({ hours }) => hours));
  const [earth, rock] = [hoursOf(false), hoursOf(true)];
  if (earth.high > 0) {
    const name = isStrip ? `Strip: ${work.name}` : `Dig: ${work.name}`;
    list.lastDug = add(list, isStrip ? "strip" : "dig", work.id, name, {
      ...{ after: [list.lastDug], needs: ["digger"], hours: earth, source: FROM_OUTPUT },
    });
  }
  if (rock.high > 0) {
    list.lastDug = add(list, "break", work.id, `Break rock: ${work.name}`, {
      ...{ after: [list.lastDug], needs: ["digger", "hammer"], hours: rock, source: FROM_OUTPUT },
    });
  }
  return list.lastDug;
}

/** The step's task if it has hours; gives the id to go on from. */
function addPlacing(
  list: TaskList,
  work: WorkHours,
  kind: "bed" | "zone" | "backfill",
  after: string,
): string {
  let steps = list.steps.get(work.id);
  if (!steps) {
    const drawn = list.scheme.works.find(({ id }) => id === work.id);
    steps = placingSteps(drawn, work, list.dig.pipes);
    list.steps.set(work.id, steps);
  }
  const part = steps.find(({ step }) => step === kind);
  if (!part || !(part.hours.high > 0)) return after;
  const words = { bed: "Bed", zone: "Pipe zone", backfill: "Backfill in layers" };
  const id = add(list, kind, work.id, `${words[kind]}: ${work.name}`, {
    after: [after],
    needs: ["digger", "compactor", "crew"],
    hours: part.hours,
    deliveries: broughtIn(list, part.materials),
    source: FROM_OUTPUT,
  });
  if (kind === "backfill") list.refilled.push(id);
  return id;
}

function broughtIn(list: TaskList, materials: readonly string[]): string[] {
  const bought = materials.filter((id) => id !== NATIVE);
  return bought.map((id) => knownMaterial(id, list.materials).name);
}

function addInspection(list: TaskList, work: WorkHours, after: string): string {
  return add(list, "inspect", work.id, `Inspection: ${work.name}`, {
    after: [after],
    wait: list.settings.inspectionWait,
    source: "a wait set for this job; ask the office that inspects",
  });
}

function addTank(list: TaskList, work: WorkHours, drawn: Work, dug: string): void {
  const bedded = addPlacing(list, work, "bed", dug);
  const set = add(list, "set", work.id, `Set: ${work.name}`, {
    after: [bedded],
    needs: ["craneTruck", "crew"],
    hours: list.times.setTank,
    inOneDay: true,
    deliveries: [drawn.name],
  });
  list.tanksSet.push(set);
  const filled = add(list, "test", work.id, `Fill for the test: ${work.name}`, {
    ...{ after: [set], needs: ["crew"], hours: byHand(list, list.times.fillTank) },
  });
  const stood = add(list, "stand", work.id, `Stand full: ${work.name}`, {
    after: [filled],
    wait: list.settings.standing,
    source: "water-tightness by standing full a day, as in ASTM C1227 (recalled)",
  });
  addPlacing(list, work, "backfill", addInspection(list, work, stood));
}

function addTrench(list: TaskList, work: WorkHours, drawn: Work, dug: string): void {
  if (!(work.hours.high > 0)) return;
  const runs = list.dig.pipes.filter(({ trench }) => trench === work.id);
  const metres = runs.reduce((sum, { length }) => sum + length, 0);
  const bedded = addPlacing(list, work, "bed", dug);
  const laid = add(list, "lay", work.id, `Lay pipe: ${work.name}`, {
    after: [bedded, ...list.tanksSet],
    needs: ["crew"],
    hours: hoursAt(metres, list.settings.layPerHour),
    deliveries: [`pipe for ${drawn.name}`],
  });
  if (runs.some(({ service }) => service !== "gravity")) list.pressureLaid.push(laid);
  const tested = add(list, "test", work.id, `Test the line: ${work.name}`, {
    ...{ after: [laid], needs: ["crew"], hours: byHand(list, list.times.testLine) },
  });
  const seen = addInspection(list, work, tested);
  addPlacing(list, work, "backfill", addPlacing(list, work, "zone", seen));
}

/** Pads, raised beds, buildings: what goes in follows the digging. */
function addFilling(list: TaskList, work: WorkHours, drawn: Work | undefined, dug: string): void {
  if (!(work.place.high > 0)) return;
  const lines = work.materials.filter(({ action }) => action === "place");
  const isBed = drawn?.kind === "bed";
  // A bed stands on what was built before it, such as its pad.
  const before = isBed ? list.refilled.filter((id) => id.endsWith(":pad")) : [];
  const id = add(
    list,
    isBed ? "fill" : "pad",
    work.id,
    `${isBed ? "Fill" : "Build up"}: ${work.name}`,
    {
      after: [dug, ...before],
      needs: isBed ? ["digger", "crew"] : ["digger", "compactor", "crew"],
      hours: work.place,
      deliveries: broughtIn(
        list,
        lines.map(({ material }) => material),
      ),
      source: FROM_OUTPUT,
    },
  );
  list.refilled.push(id);
}

/** Pump and electrician where there is pressure pipe, and a test of both; after filled beds. */
function addPumps(list: TaskList): void {
  if (list.pressureLaid.length === 0) return;
  const { setPump, electrical, testPump } = list.times;
  const after = [...list.pressureLaid, ...list.tanksSet];
  const hours = byHand(list, setPump);
  const deliveries = ["pump"];
  const pump = add(list, "pump", null, "Set the pump", {
    after,
    needs: ["crew"],
    hours,
    deliveries,
  });
  const wired = add(list, "electrical", null, "Connect power and alarm (electrician)", {
    ...{ after: [pump], needs: ["electrician"], hours: electrical },
  });
  const beds = list.tasks.filter(({ kind }) => kind === "fill").map(({ id }) => id);
  add(list, "test", null, "Run and test the pump", {
    ...{ after: [wired, ...beds], needs: ["crew"], hours: byHand(list, testPump) },
  });
}

/** What is left over, after all that is put back. */
function addSurplus(list: TaskList): void {
  const time = surplusTime(list.scheme, list.dig);
  if (time === undefined) return;
  const { kind, work, name, hours } = time;
  add(list, kind, work, name, {
    after: [...list.refilled, list.lastDug],
    needs: kind === "haul" ? ["digger", "dumpTruck"] : ["digger"],
    hours,
  });
}

/** Topsoil of the strips, last of all. */
function addRestoring(list: TaskList, works: readonly WorkHours[]): void {
  const after = list.tasks
    .filter(({ kind }) => ["backfill", "pad", "fill", "spread", "haul"].includes(kind))
    .map(({ id }) => id);
  for (const work of works) {
    const drawn = list.scheme.works.find(({ id }) => id === work.id);
    if (drawn?.kind !== "strip" || !(work.place.high > 0)) continue;
    add(list, "restore", work.id, `Put topsoil back: ${work.name}`, {
      after: [list.lastDug, ...after],
      needs: ["digger"],
      hours: work.place,
      source: FROM_OUTPUT,
    });
  }
}

/** Hours of the catalogue's crew, for this one. */
function byHand(list: TaskList, hours: Range): Range {
  return mapRange(hours, (h) => (h * USUAL_CREW) / list.settings.crew);
}
