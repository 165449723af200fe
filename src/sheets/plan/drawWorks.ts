/** The works of a scheme on a plan: outlines, pipes with their fittings, names and finished levels. */
import { partingsOf, workOutline, type Estimate } from "../../estimate/index.js";
import type { Pipe, PlanPoint, Scheme, Site, Trench, Work } from "../../site/index.js";
import { elevation, pipeSlope } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { Fill, Mark, Pen, Spot } from "../paper.js";
import { ringLine } from "./clip.js";
import type { Lettering } from "./lettering.js";
import { lineSample, type LineStyle } from "./lineStyle.js";
import { offsetLine } from "./offsetLine.js";
import { INK, pen, PENS, TYPE } from "./pens.js";
import { RANK, WEIGHT, type PlanDrawing } from "./planDrawing.js";
import { isWithin, seatsAlong, seatsWithin } from "./seats.js";
import { cleanout, outlet, parting, symbolSample, tankMiddle, valve } from "./symbols.js";
import { Way } from "./way.js";

const texts = words.sheetsPlan;

interface WorkStyle {
  name: string;
  pen: Pen;
  fill?: Fill;
}

const hatched = (turn: number, gap: number): Fill => ({
  hatches: [{ kind: "lines", turn, gap, pen: PENS.hatch }],
});
const dotted = (gap: number, size: number, color: string = INK.grey): Fill => ({
  hatches: [{ kind: "dots", gap, size, color }],
});

const STYLES: Readonly<Record<Exclude<Work["kind"], "pile"> | "field", WorkStyle>> = {
  building: { name: texts.legend.building, pen: PENS.strong, fill: hatched(45, 1.8) },
  pad: { name: texts.legend.pad, pen: PENS.middle, fill: hatched(0, 3.2) },
  bed: {
    name: texts.legend.bed,
    pen: PENS.strong,
    fill: { color: "#ffffff", ...dotted(1.5, 0.4) },
  },
  field: { name: texts.legend.field, pen: pen(0.25, INK.black), fill: dotted(1.3, 0.35) },
  trench: { name: texts.legend.trench, pen: pen(0.18, INK.black, [1.4, 0.8]) },
  strip: { name: texts.legend.strip, pen: pen(0.25, INK.brown, [1, 1]) },
  tank: { name: texts.legend.tank, pen: PENS.strong, fill: { color: INK.tone } },
};

/** How pipes are drawn: gravity whole with arrows, pressure dashed, conduit dotted. */
const PIPES: Readonly<Record<Pipe["service"], LineStyle>> = {
  gravity: { pen: pen(0.6, INK.black), arrows: true },
  pressure: { pen: pen(0.5, INK.black, [2.6, 0.8]), letter: "P" },
  conduit: { pen: pen(0.35, INK.black, [0.7, 0.8]), letter: "C" },
};

/**
 * Draws a scheme's works, but for heaps, from the ground up. True where valves are drawn: their
 * places are the main's end.
 * @param told whether labels say how high works are and what each pipe is; else names alone
 */
export function drawWorks(
  drawing: PlanDrawing,
  site: Site,
  scheme: Scheme,
  estimate: Estimate,
  told = true,
): boolean {
  const order: Work["kind"][] = ["strip", "pad", "trench", "bed", "building", "tank"];
  for (const kind of order) {
    for (const work of scheme.works.filter((one) => one.kind === kind)) {
      drawOutline(drawing, work, scheme);
      nameWork(drawing, site, scheme, work, told);
    }
  }
  for (const work of scheme.works) {
    if (work.kind === "trench") drawPipes(drawing, site, work, estimate, told);
    if (told && work.kind === "building") drawOutlets(drawing, work.outlets ?? []);
  }
  if (told) drawPartings(drawing, estimate);
  return told && drawValves(drawing, scheme);
}

/** The outline of a work in its own style, with its row of the legend. */
export function drawOutline(drawing: PlanDrawing, work: Work, scheme: Scheme): void {
  const outline = workOutline(work);
  if (outline === null || work.kind === "pile") return;
  const isField = work.kind === "trench" && scheme.flow?.field?.includes(work.id) === true;
  const style = STYLES[isField ? "field" : work.kind];
  const levels = work.kind === "pad" ? (work.levels ?? []).map((level) => level.outline) : [];
  const shown = [outline, ...levels].map((ring) =>
    drawing.area(texts.layers.works, [ring], style, WEIGHT.usual),
  );
  if (shown.every((pieces) => pieces.length === 0)) return;
  drawing.row(style.name, areaSample(style));
  if (work.kind === "tank" && drawing.shows(work.at, 2)) {
    drawing.put(texts.layers.works, tankMiddle(drawing.spot(work.at)));
  }
}

/** The legend's box laid out like an area. */
export function areaSample({ pen: ink, fill }: { pen: Pen; fill?: Fill }): Mark[] {
  const box: Spot[] = [
    [0.5, 0.4],
    [9.5, 0.4],
    [9.5, 3.6],
    [0.5, 3.6],
  ];
  const edge: Mark = { kind: "path", lines: [ringLine(box)], closed: false, pen: ink };
  return fill === undefined ? [edge] : [{ kind: "path", lines: [box], closed: true, fill }, edge];
}

/** How high a work stands, as its label says. */
function levelsOf(work: Work, { units }: Site): string[] {
  const at = (z: number): string => elevation.print(z, units);
  const levels: string[] = [];
  if (work.kind === "tank") levels.push(texts.levels.lid(at(work.base + work.body.height)));
  if (work.kind === "pad") {
    levels.push(
      work.fall === undefined
        ? texts.levels.finished(at(work.top))
        : texts.levels.falling(at(work.top)),
    );
  }
  if (work.kind === "bed")
    levels.push(texts.levels.base(at(work.base)), texts.levels.lid(at(work.base + work.height)));
  if (work.kind === "building") levels.push(texts.levels.floor(at(work.base)));
  return levels;
}

/** The name of a work that has an area, and its finished level where that is told. */
function nameWork(
  drawing: PlanDrawing,
  site: Site,
  scheme: Scheme,
  work: Work,
  told: boolean,
): void {
  const outline = workOutline(work);
  if (outline === null || work.kind === "trench" || work.kind === "pile") return;
  const levels = told ? levelsOf(work, site) : [];
  const ring = outline.map((place) => drawing.spot(place));
  const visible = outline.some((place) => drawing.shows(place));
  if (!visible) return;
  const lettering: Lettering = {
    ...{ lines: [work.name, ...levels], size: TYPE.usual, face: "strong" },
  };
  const inner = innerRings(drawing, scheme, work);
  const seats = (work.kind === "tank" ? [] : seatsWithin(ring, lettering)).filter(
    ({ middle }) => !inner.some((one) => isWithin(one, middle)),
  );
  drawing.label(RANK.must, {
    ...lettering,
    seats,
    anchor: nearestCorner(ring),
    clear: 1.2,
    must: true,
  });
}

/** What stands on a pad or strip, where its name does not belong. */
function innerRings(drawing: PlanDrawing, { works }: Scheme, work: Work): Spot[][] {
  if (work.kind !== "pad" && work.kind !== "strip") return [];
  return works
    .filter(({ kind }) => kind === "bed" || kind === "tank" || kind === "building")
    .map((one) => (workOutline(one) ?? []).map((place) => drawing.spot(place)));
}

/** The names of a scheme's buildings alone, for a plan that is not about them. */
export function nameBuildings(drawing: PlanDrawing, { works }: Scheme): void {
  for (const work of works) {
    if (work.kind !== "building" || !work.outline.some((place) => drawing.shows(place))) continue;
    const ring = work.outline.map((place) => drawing.spot(place));
    const lettering = { lines: [work.name], size: TYPE.usual, face: "strong" as const };
    const label = {
      ...lettering,
      seats: seatsWithin(ring, lettering),
      anchor: nearestCorner(ring),
    };
    drawing.label(RANK.names, { ...label, clear: 1.2, must: true });
  }
}

/** The corner of a ring that is farthest up and right, where leader lines come in. */
function nearestCorner(ring: readonly Spot[]): Spot {
  return ring.reduce((best, spot) => (spot[0] - spot[1] > best[0] - best[1] ? spot : best));
}

/** mm between the pipes of one trench, which lie too near each other to scale. */
const PIPES_APART = 1.1;

function drawPipes(
  drawing: PlanDrawing,
  site: Site,
  trench: Trench,
  estimate: Estimate,
  told: boolean,
): void {
  trench.pipes.forEach((pipe, i) => {
    const fall = estimate.pipes.find(({ id }) => id === pipe.id)?.fall;
    const path = trench.path.map((place) => drawing.spot(place));
    const off = (i - (trench.pipes.length - 1) / 2) * PIPES_APART;
    const line = offsetLine(path, off);
    const flowing =
      pipe.service === "gravity" && fall !== undefined && fall < 0 ? line.reverse() : line;
    const style = PIPES[pipe.service];
    const pieces = drawing.lineOnPaper(texts.layers.pipes, flowing, style, WEIGHT.strong);
    if (pieces.length === 0) return;
    drawing.row(texts.legend[pipe.service], lineSample(style));
    if (!told) return;
    labelPipe(drawing, site, pipe, fall, pieces);
    drawCleanouts(drawing, trench, pipe);
  });
}

function labelPipe(
  drawing: PlanDrawing,
  { units }: Site,
  pipe: Pipe,
  fall: number | undefined,
  pieces: readonly (readonly Spot[])[],
): void {
  const falls = pipe.service === "gravity" && fall !== undefined;
  const slope = falls ? [texts.falls(pipeSlope.print(fall, units))] : [];
  const lettering: Lettering = { lines: [[pipe.name, ...slope].join(", ")], size: TYPE.small };
  const longest = pieces.reduce((a, b) => (new Way(b).length > new Way(a).length ? b : a));
  const way = new Way(longest);
  const seats = legsOf(longest).flatMap((leg) => [
    ...seatsAlong(leg, lettering, 1.4, 5),
    ...seatsAlong(leg, lettering, -1.4, 5),
  ]);
  const anchor = way.at(way.length / 2).at;
  drawing.label(RANK.names, { ...lettering, seats, anchor, clear: 1.5, must: true });
}

function legsOf(line: readonly Spot[]): Spot[][] {
  const length = (leg: readonly Spot[]): number =>
    Math.hypot(leg[1]![0] - leg[0]![0], leg[1]![1] - leg[0]![1]);
  return line
    .slice(1)
    .map((b, i): Spot[] => [line[i]!, b])
    .sort((a, b) => length(b) - length(a));
}

function drawCleanouts(drawing: PlanDrawing, { path }: Trench, { cleanouts = [] }: Pipe): void {
  const way = new Way(path);
  for (const station of cleanouts) {
    if (station > way.length) continue;
    const [x, y] = way.at(station).at;
    if (drawing.symbol(texts.layers.pipes, [x, y], cleanout, 1)) {
      drawing.row(texts.legend.cleanout, symbolSample(cleanout));
    }
  }
}

function drawOutlets(drawing: PlanDrawing, outlets: readonly { at: PlanPoint }[]): void {
  for (const { at } of outlets) {
    if (drawing.symbol(texts.layers.pipes, at, outlet, 0.8)) {
      drawing.row(texts.legend.outlet, symbolSample(outlet));
    }
  }
}

/** Where the water parts to a field's pipes. */
function drawPartings(drawing: PlanDrawing, { flow }: Estimate): void {
  for (const { at } of partingsOf(flow.pipes)) {
    if (drawing.symbol(texts.layers.pipes, at, parting, 1.3)) {
      drawing.row(texts.legend.parting, symbolSample(parting));
    }
  }
}

/** The branches' valves, at the end of the main that feeds them: their own places are not known. */
function drawValves(drawing: PlanDrawing, { works, flow }: Scheme): boolean {
  let any = false;
  for (const { main, branches } of flow?.pressure ?? []) {
    const last = main[main.length - 1];
    const trench = works.find(
      (work): work is Trench => work.kind === "trench" && work.pipes.some(({ id }) => id === last),
    );
    const end = trench?.path[trench.path.length - 1];
    if (end === undefined || branches.every(({ valve: one }) => one === undefined)) continue;
    if (drawing.symbol(texts.layers.pipes, end, valve, 1.5)) {
      drawing.row(texts.legend.valve, symbolSample(valve));
      any = true;
    }
  }
  return any;
}
