/** What the office's engineer checks: design flow, sizes, drains, pumps, floats, empty tanks. */
import { boreSize, schemeOf, type PressureResult } from "../../estimate/index.js";
import {
  area,
  dailyFlow,
  elevation,
  flow,
  head,
  length,
  liquidVolume,
  mass,
  minutes,
  pipeSlope,
  plainNumber,
  velocity,
} from "../../units/index.js";
import { words } from "../../words/index.js";
import { loadingWords } from "../loading.js";
import type { SheetJob, SheetMaker } from "../paper.js";
import type { Table, TableRow } from "../table.js";
import { listSheets } from "./listSheets.js";

const says = words.flowLeaf;
const own = words.sheetsLists.flow;
const NONE = "–";

/** The sums over as many sheets as they take; none where nothing flows and no design flow is given. */
export const flowSheets: SheetMaker = (job, room) => {
  const { flow: found } = job.estimate;
  const tables = [
    ...(found.sizing.daily === undefined && found.pipes.length === 0 ? [] : [sizingTable(job)]),
    drainTable(job),
    drainSources(job),
    ...found.pressure.flatMap((system) => [dutyTable(job, system), doseTable(job, system)]),
    floatTable(job),
  ].filter((part) => (typeof part === "string" ? part !== "" : part.rows.length > 0));
  if (tables.length === 0) return [];
  return listSheets(job, room, "flow", own.title, [...tables, own.decides], [1, 2]);
};

const row = (...cells: string[]): TableRow => ({ cells });

/** Name, figure and who says so. */
function figureTable(title: string, rows: readonly TableRow[]): Table {
  return {
    title,
    columns: [
      { head: own.what, share: 2 },
      { head: own.figure, figures: true },
      { head: own.source, share: 3 },
    ],
    rows,
  };
}

function sizingTable({ site, schemeId, estimate }: SheetJob): Table {
  const { units } = site;
  // A rate of the person's own may be that of sand brought in, of which the soil below says nothing.
  const isEntered = schemeOf(site, schemeId).flow?.soil?.by === "rate";
  const { daily, leastTank, tanks, loading, areaWanted, field } = estimate.flow.sizing;
  const rows = [
    [says.designFlow, daily, dailyFlow.print],
    [says.tankWanted, leastTank, liquidVolume.print],
    [says.tanksHold, tanks, liquidVolume.print],
    [isEntered ? says.theFieldTakes : says.theSoilTakes, loading, loadingWords],
    [says.bottomWanted, areaWanted, area.print],
    [says.bottomThereIs, field.value > 0 ? field : undefined, area.print],
  ] as const;
  return figureTable(
    says.designFlowSizes,
    rows.flatMap(([name, quantity, print]) =>
      quantity === undefined
        ? []
        : [row(name, print(quantity.value, units), own.from(quantity.formula, quantity.source))],
    ),
  );
}

const drainsOf = ({ estimate }: SheetJob): SheetJob["estimate"]["flow"]["pipes"] =>
  estimate.flow.pipes.filter(({ service, field }) => service === "gravity" && !field);

/** Who says what falls the drains need and how what they carry is reckoned; each once. */
function drainSources(job: SheetJob): string {
  const drains = drainsOf(job);
  const each = (of: readonly (string | undefined)[]): string =>
    [...new Set(of.filter((one) => one !== undefined))].join("; ");
  const fall = each(drains.map(({ leastFall }) => leastFall?.source));
  const full = each(drains.map(({ carries }) => carries?.full.source));
  return [fall === "" ? "" : own.leastFallFrom(fall), full === "" ? "" : own.fullFrom(full)]
    .filter((one) => one !== "")
    .join(" ");
}

/** Every gravity drain against the fall that its size needs, and what it carries. */
function drainTable(job: SheetJob): Table {
  const { units } = job.site;
  return {
    title: own.drains,
    columns: [
      { head: own.drain, share: 2 },
      { head: words.sheetsLists.size, figures: true },
      { head: words.sheetsLists.fall, figures: true },
      { head: own.leastFall, figures: true },
      { head: own.full, figures: true },
      { head: own.speed, figures: true },
      { head: own.peak, figures: true },
    ],
    rows: drainsOf(job).map(({ name, inside, flattest, leastFall, carries }) => {
      const peak = carries?.peak ?? null;
      return row(
        name,
        boreSize(inside, units),
        pipeSlope.print(flattest.fall, units),
        leastFall === null ? NONE : pipeSlope.print(leastFall.value, units),
        carries === null ? NONE : flow.print(carries.full.value, units),
        carries === null ? NONE : velocity.print(carries.velocity.value, units),
        peak === null ? NONE : peak.over ? own.over : flow.print(peak.flow, units),
      );
    }),
  };
}

/** The duty point and where its head goes. */
function dutyTable({ site: { units } }: SheetJob, system: PressureResult): Table {
  const { parts, wanted } = system;
  const pump = system.pumps.find(({ id }) => id === system.pump);
  const headText = (value: number): string => head.print(value, units);
  return figureTable(own.pumped(system.name), [
    row(says.pumpLabel, pump?.name ?? NONE, pump?.source ?? ""),
    row(says.liftAtRestLabel, headText(system.lift.value), system.lift.formula),
    row(own.runsAtFlow, flow.print(system.flow.value, units), system.flow.formula),
    row(own.runsAgainst, headText(system.head.value), system.head.formula),
    row(says.liftLastHoles, headText(parts.lift), own.partOfHead),
    row(says.lostRiserMain, headText(parts.main), own.partOfHead),
    row(says.lostBranchLaterals, headText(parts.beyond), own.partOfHead),
    row(says.leftLastHole, headText(parts.last), own.partOfHead),
    row(own.wantedFlow, flow.print(wanted.flow.value, units), wanted.flow.source),
    row(own.wantedHead, headText(wanted.head.value), wanted.head.source),
    row(own.meets, pump?.outcome === "runs" && pump.meets ? own.yes : own.no, pump?.why ?? ""),
    row(says.speedMain, velocity.print(system.velocity.value, units), system.velocity.formula),
  ]);
}

/** Dose, run time and the levels of the floats, over the chamber's floor and as elevations. */
function doseTable({ site: { units } }: SheetJob, system: PressureResult): Table {
  const { dose, drainBack, water } = system;
  const title = own.doses(system.name);
  if (dose === null) return figureTable(title, []);
  const { plan, runTime } = dose;
  const level = (name: string, depth: number | null): TableRow =>
    depth === null
      ? row(name, own.noRoom, "")
      : row(
          name,
          own.overFloor(length.print(depth, units)),
          own.atElevation(elevation.print(water.floor + depth, units)),
        );
  return figureTable(title, [
    row(says.oneDose, liquidVolume.print(dose.volume.value, units), dose.volume.formula),
    row(says.runsBackAfterEach, liquidVolume.print(drainBack.value, units), drainBack.formula),
    row(says.drawnEachTimeWith, liquidVolume.print(plan.drawn, units), ""),
    ...(runTime === null
      ? []
      : [row(says.pumpRuns, minutes.print(runTime.value, units), runTime.formula)]),
    row(own.dosesADay, plainNumber(plan.perDay, 1), ""),
    level(says.pumpOff, plan.off),
    level(says.pumpOn, plan.on),
    level(says.alarm, plan.alarm),
    level(says.reserveFull, plan.full),
    row(says.freeOverAlarm, liquidVolume.print(plan.reserve, units), says.freeTo[plan.freeTo]),
  ]);
}

function floatTable({ site: { units }, estimate }: SheetJob): Table {
  return {
    title: says.groundwaterEmptyTanks,
    columns: [
      { head: own.tank, share: 2 },
      { head: own.uplift, figures: true },
      { head: own.weight, figures: true },
      { head: own.factor, figures: true },
      { head: own.bare, figures: true },
      { head: own.wanted, figures: true },
      { head: own.water, share: 2 },
    ],
    rows: estimate.flow.flotation.map(({ name, uplift, weight, factor, bare, wanted, met }) =>
      row(
        name,
        massOf(uplift.value, units),
        massOf(weight.value, units),
        factor === null ? says.standsDry : plainNumber(factor, 2),
        bare === null ? says.standsDry : plainNumber(bare, 2),
        plainNumber(wanted, 2),
        met === true ? own.waterMet : own.waterSet,
      ),
    ),
  };
}

/** m/s², standard gravity (ISO 80000-3). */
const GRAVITY = 9.80665;

/** A force as the mass that weighs so much, as scales and makers' sheets give it. */
const massOf = (newtons: number, units: SheetJob["site"]["units"]): string =>
  mass.print(newtons / GRAVITY, units);
