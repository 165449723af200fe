/** The sheet of what is dug and by which machines, for whoever digs, lifts and trucks. */
import { lineClearance, type Estimate } from "../../estimate/index.js";
import { isBuriedLine, ruleOf, type PlanPoint, type Scheme, type Site } from "../../site/index.js";
import { distance, elevation, length, mass, plainNumber, wallSlope } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { SheetMaker } from "../paper.js";
import { drawDigs, dugWorks, numberDigs } from "./drawDigs.js";
import { drawHeaps } from "./drawHeaps.js";
import { drawLimits } from "./drawLimits.js";
import {
  drawCranes,
  drawDiggers,
  drawTruckWays,
  machinePlaces,
  machinesOf,
  type Stood,
} from "./drawMachines.js";
import { nameBuildings } from "./drawWorks.js";
import { drawZones, isOverhead, zonesOf } from "./drawZones.js";
import { drawBenchmark, drawContours, drawSurveyEdge } from "./ground.js";
import { workPlaces } from "./layoutPlan.js";
import { onBarrier } from "./onBarrier.js";
import type { PlanTable } from "./panel.js";
import { planSheet } from "./planSheet.js";

const texts = words.sheetsPlan;

export const EXCAVATION_PLAN = "excavation-plan";

/** Draws holes, heaps and machines; nothing where nothing is dug. */
export const excavationPlan: SheetMaker = ({ site, schemeId, estimate }, room, windows) => {
  const scheme = site.schemes.find(({ id }) => id === schemeId);
  const dug = dugWorks(estimate);
  if (scheme === undefined || dug.length === 0) return [];
  const stood = machinesOf(site, schemeId, estimate);
  const zones = zonesOf(site, schemeId, estimate);
  const edges = dug.flatMap(({ outlines }) => outlines?.daylight.flat() ?? []);
  const sheet = planSheet(
    {
      ...{ id: EXCAVATION_PLAN, title: texts.titles.excavation, units: site.units },
      places: [
        ...edges.map(([x, y]): PlanPoint => [x, y]),
        ...workPlaces(scheme, estimate),
        ...machinePlaces(stood),
      ],
      tables: [
        holeTable(site, scheme, estimate),
        ...stood.cranes.map((one) => liftTable(site, one)),
        rulesTable(site, estimate, onBarrier(estimate, stood)),
      ],
      draw: (drawing) => {
        drawSurveyEdge(drawing, site);
        drawContours(drawing, site, true);
        drawZones(drawing, site, estimate, zones);
        drawLimits(drawing, site, { grey: true, courses: false });
        drawHeaps(drawing, site, estimate, true);
        drawDigs(drawing, scheme, estimate);
        nameBuildings(drawing, scheme);
        drawTruckWays(drawing, site);
        drawDiggers(drawing, stood);
        drawCranes(drawing, site, stood);
        numberDigs(drawing, site, scheme, estimate);
        drawBenchmark(drawing, site);
        return [];
      },
    },
    room,
    windows,
  );
  return [sheet];
};

function holeTable(site: Site, { works }: Scheme, estimate: Estimate): PlanTable {
  const { units } = site;
  const { hole, floor, deepest, face, walls, title } = texts.digs;
  return {
    title,
    head: ["", hole, floor, deepest, face, walls],
    align: ["end", "start", "end", "end", "end", "end"],
    rows: dugWorks(estimate).map((dug, i) => {
      const work = works.find(({ id }) => id === dug.id);
      const report = estimate.holes.find((one) => one.work === dug.id);
      return [
        String(i + 1),
        dug.name,
        elevation.print(dug.floor.lowest, units),
        distance.print(dug.deepest, units),
        distance.print(report?.face ?? dug.tallestFace, units),
        work !== undefined && "walls" in work ? wallText(work.walls, units) : texts.digs.none,
      ];
    }),
    notes: [texts.digs.people],
  };
}

function wallText(
  walls: Extract<Scheme["works"][number], { walls: unknown }>["walls"],
  units: Site["units"],
): string {
  if (walls.by === "layers") return texts.digs.byLayers;
  if (walls.by === "benches") {
    return texts.digs.benches(length.print(walls.rise, units), length.print(walls.tread, units));
  }
  const runs = walls.sides ?? [walls.run];
  const [low, high] = [Math.min(...runs), Math.max(...runs)];
  const print = (run: number): string => wallSlope.print(run, units);
  return low === high ? print(low) : texts.digs.from(print(low), print(high));
}

function liftTable(
  { units }: Site,
  { stand, crane, tank, load }: Stood["cranes"][number],
): PlanTable {
  const t = texts.lifts;
  const { rated, share, radius, line } = stand;
  const rows = [
    [t.crane, crane.name],
    [t.stand, stand.name],
    [t.load, load === null ? t.unknown : mass.print(load, units)],
    [t.radius, distance.print(radius.value, units)],
    [t.rated, rated === null ? t.beyond : mass.print(rated.value, units)],
    [t.share, share === null ? t.unknown : `${plainNumber(100 * share.value, 0)}%`],
    ...(line === null ? [] : [[t.line(line.name), distance.print(line.distance.value, units)]]),
  ];
  const over = rated === null || (share !== null && share.value > 1);
  const reasons = stand.reasons.map(({ text }) => `${crane.name} ${text}.`);
  return {
    ...{ title: t.title(tank.name), rows, ...(over && { wrong: [[4, 1]] as const }) },
    notes: [...reasons, t.source(crane.source), t.decides],
  };
}

/** The lines that are drawn for people's safety, each with its source. */
function rulesTable(site: Site, estimate: Estimate, barred: readonly string[]): PlanTable {
  const { units, limits = [], locate } = site;
  const t = texts.rules;
  const said = (id: string): string => {
    const { title, value, unit, source } = ruleOf(site, id);
    const shown = unit === "m" ? distance.print(value, units) : plainNumber(value, 2);
    return t.rule(title, shown, source);
  };
  const overhead = limits.filter(isOverhead).map((limit) => {
    const { least, isOwners, source } = lineClearance(limit.voltage);
    const name = limit.name ?? t.line;
    return isOwners ? t.owners(name) : t.rule(t.away(name), distance.print(least, units), source);
  });
  const buried = limits.some(({ kind }) => isBuriedLine(kind));
  const ladders = estimate.holes.some((hole) => hole.ladders.length > 0);
  const call =
    locate?.ticket === undefined || locate.date === undefined
      ? t.noTicket
      : t.ticket(locate.ticket, locate.date);
  return {
    title: t.title,
    rows: [],
    notes: [
      call,
      said("spoil-back"),
      ...(ladders ? [said("way-out-within")] : []),
      ...(buried ? [said("hand-within")] : []),
      ...overhead,
      ...(barred.length > 0 ? [t.barrier(barred)] : []),
      t.person,
    ],
  };
}
