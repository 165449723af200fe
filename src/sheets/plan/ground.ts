/** The ground on a plan: contours with their figures, survey points, breaklines, probes. */
import {
  foundContours,
  groundAt,
  lotEdge,
  stageContours,
  type Estimate,
} from "../../estimate/index.js";
import type { PlanPoint, Site, SurveyPoint } from "../../site/index.js";
import { elevation, length } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { Pen, Spot } from "../paper.js";
import type { Lettering, Seat } from "./lettering.js";
import { lineSample } from "./lineStyle.js";
import { INK, pen, TYPE } from "./pens.js";
import { RANK, WEIGHT, type PlanDrawing } from "./planDrawing.js";
import { isWithin, seatsAlong } from "./seats.js";
import { benchmark, probe, spotHeight, symbolSample } from "./symbols.js";
import { Way } from "./way.js";

const texts = words.sheetsPlan;

/** Contours as found; light ones stand behind what is to be built. */
export function drawContours(drawing: PlanDrawing, site: Site, light: boolean): void {
  const { origin, step, elevations, heavy, starts, places } = foundContours(site);
  const color = light ? INK.paleBrown : INK.brown;
  const [usual, index] = [pen(light ? 0.13 : 0.18, color), pen(light ? 0.25 : 0.4, color)];
  const shown = [false, false];
  elevations.forEach((z, i) => {
    const isHeavy = heavy[i] === 1;
    const line = placesBetween(places, starts[i]!, starts[i + 1]!, origin);
    const ink = isHeavy ? index : usual;
    const pieces = drawing.line(texts.layers.contours, line, { pen: ink }, WEIGHT.light);
    if (pieces.length > 0) shown[isHeavy ? 1 : 0] = true;
    if (isHeavy) for (const piece of pieces) contourFigures(drawing, site, z, step, piece, light);
  });
  const every = (n: number): string => stepText(site, n * step);
  if (shown[1]) drawing.row(texts.legend.heavyContour(every(5)), lineSample({ pen: index }));
  if (shown[0]) drawing.row(texts.legend.contour(every(1)), lineSample({ pen: usual }));
}

/** The outer edge of the surveyed ground: beyond it nothing is known. */
export function drawSurveyEdge(drawing: PlanDrawing, site: Site): void {
  const ink = pen(0.18, INK.grey, [0.5, 0.9]);
  const edge = lotEdge(site);
  const ring = [...edge, ...edge.slice(0, 1)];
  const pieces = drawing.line(texts.layers.surveyEdge, ring, { pen: ink }, WEIGHT.light);
  if (pieces.length > 0) drawing.row(texts.legend.surveyEdge, lineSample({ pen: ink }));
}

function placesBetween(
  places: Float64Array,
  from: number,
  to: number,
  [ox, oy]: readonly [number, number, number],
): PlanPoint[] {
  return Array.from({ length: to - from }, (_, k): PlanPoint => [
    places[2 * (from + k)]! + ox,
    places[2 * (from + k) + 1]! + oy,
  ]);
}

/** "2 ft" or "0.5 m": as many digits as the step has. */
function stepText({ units }: Site, step: number): string {
  const shown = elevation.toSystem(step, units);
  return elevation.print(step, units, { digits: digitsOf(shown) });
}

function digitsOf(value: number): number {
  return (
    [0, 1, 2].find(
      (digits) => Math.abs(value * 10 ** digits - Math.round(value * 10 ** digits)) < 1e-6,
    ) ?? 2
  );
}

/** mm from one figure on a contour to the next. */
const FIGURES_EVERY = 90;

/** The elevation of a contour, written on the line where it runs straight enough. */
function contourFigures(
  drawing: PlanDrawing,
  { units }: Site,
  z: number,
  step: number,
  piece: readonly Spot[],
  light: boolean,
): void {
  const digits = digitsOf(elevation.toSystem(step, units));
  const lettering: Lettering = {
    lines: [elevation.print(z, units, { digits, bare: true })],
    ...{ size: TYPE.small, color: light ? INK.grey : INK.brown },
  };
  const way = new Way(piece);
  const count = Math.max(1, Math.round(way.length / FIGURES_EVERY));
  for (let k = 0; k < count; k++) {
    const stretch = way.between((k / count) * way.length, ((k + 1) / count) * way.length);
    const seats: Seat[] = seatsAlong(stretch, lettering, 0, 13);
    if (seats.length > 0) drawing.label(RANK.contours, { ...lettering, seats });
  }
}

type Rings = readonly (readonly (readonly [number, number])[])[];

/** Nearer to the ground as found than this, m, a contour is no contour of what is built. */
const CHANGED = 0.01;

/** Contours of the finished ground where it differs from the ground as found, m. */
export function finishedContours(
  site: Site,
  schemeId: string,
  { works }: Pick<Estimate, "works">,
): PlanPoint[][] {
  const { step } = foundContours(site);
  // A heap is there for a while only, and drawn by its foot.
  const heaps = works.flatMap(({ heap }) => heap?.toe ?? []);
  return stageContours(site, schemeId, "backfilled", step).lines.flatMap(({ elevation: z, line }) =>
    changedPieces(site, line, z, heaps),
  );
}

export function drawFinishedContours(
  drawing: PlanDrawing,
  contours: readonly (readonly PlanPoint[])[],
): void {
  const ink: Pen = pen(0.25, INK.black, [2.2, 0.9]);
  const shown = contours.map((line) =>
    drawing.line(texts.layers.finished, line, { pen: ink }, WEIGHT.light),
  );
  if (shown.some((pieces) => pieces.length > 0)) {
    drawing.row(texts.legend.finishedContour, lineSample({ pen: ink }));
  }
}

function changedPieces(
  site: Site,
  line: readonly (readonly [number, number])[],
  z: number,
  except: Rings,
): PlanPoint[][] {
  const pieces: PlanPoint[][] = [];
  let piece: PlanPoint[] = [];
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const middle: PlanPoint = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const found = groundAt(site, middle);
    const off = found !== null && Math.abs(found - z) > CHANGED;
    const isChanged = off && !except.some((ring) => isWithin(ring, middle));
    if (isChanged) {
      if (piece.length === 0) piece.push([a[0], a[1]]);
      piece.push([b[0], b[1]]);
    } else if (piece.length > 0) {
      pieces.push(piece);
      piece = [];
    }
  }
  if (piece.length > 0) pieces.push(piece);
  return pieces;
}

/**
 * Survey points with their elevations, as many as find room; those that are listed beside the plan
 * with their number there, from 1, in place of it.
 */
export function drawSpots(drawing: PlanDrawing, site: Site, listed: readonly string[] = []): void {
  const { units, survey, project } = site;
  const bench = project?.benchmark?.point;
  let any = false;
  const ordered = [...survey.points].sort((a, b) => wishFor(site, b) - wishFor(site, a));
  for (const point of ordered) {
    if (point.id === bench) continue;
    const at: PlanPoint = [point.x, point.y];
    if (!drawing.shows(at, 0.7)) continue;
    const spot = drawing.spot(at);
    drawing.put(texts.layers.points, spotHeight(spot));
    drawing.keepOffBox(spot, 0.55, WEIGHT.point);
    any = true;
    const label = { size: TYPE.small, color: INK.grey, anchor: spot, clear: 1, point: point.id };
    const number = listed.indexOf(point.id) + 1;
    if (number > 0) drawing.label(RANK.listed, { ...label, lines: [texts.heights.key(number)] });
    else {
      const lines = [elevation.print(point.z, units, { bare: true })];
      drawing.label(RANK.spots, { ...label, lines });
    }
  }
  if (any) drawing.row(texts.legend.spotHeight, symbolSample(spotHeight));
}

/** Points with a note and those on breaklines have their elevation written first. */
function wishFor({ survey }: Site, { id, note }: SurveyPoint): number {
  const onLine = (survey.breaklines ?? []).some((chain) => chain.includes(id));
  return (note === undefined ? 0 : 2) + (onLine ? 1 : 0);
}

/** The benchmark with what it is and its elevation. */
export function drawBenchmark(drawing: PlanDrawing, { units, survey, project }: Site): void {
  const { point: id, note } = project?.benchmark ?? {};
  const point = survey.points.find((one) => one.id === id);
  if (point === undefined) return;
  const at: PlanPoint = [point.x, point.y];
  if (!drawing.symbol(texts.layers.points, at, benchmark, 1.9)) return;
  drawing.row(texts.legend.benchmark, symbolSample(benchmark));
  const lines = [
    texts.benchmark(point.id),
    ...(note === undefined ? [] : [note]),
    elevation.print(point.z, units),
  ];
  const anchor = drawing.spot(at);
  const lettering = { lines, size: TYPE.usual, face: "strong" as const };
  drawing.label(RANK.must, { ...lettering, anchor, clear: 2.2, must: true });
}

export function drawBreaklines(drawing: PlanDrawing, { survey }: Site): void {
  const at = new Map(survey.points.map(({ id, x, y }) => [id, [x, y] as const]));
  const style = { pen: pen(0.3, INK.black, [2.4, 0.8]) };
  let any = false;
  for (const chain of survey.breaklines ?? []) {
    any = chainLine(drawing, chain, at, style.pen) || any;
  }
  if (any) drawing.row(texts.legend.breakline, lineSample(style));
}

function chainLine(
  drawing: PlanDrawing,
  chain: readonly string[],
  at: ReadonlyMap<string, readonly [number, number]>,
  ink: Pen,
): boolean {
  const line = chain.flatMap((id) => {
    const place = at.get(id);
    return place === undefined ? [] : [place];
  });
  return drawing.line(texts.layers.breaklines, line, { pen: ink }, WEIGHT.light).length > 0;
}

/** Probes with their names, and how deep each went into the ground where the plan has no table. */
export function drawProbes(drawing: PlanDrawing, { ground, units }: Site): void {
  for (const { id, x, y, water } of ground.probes) {
    if (!drawing.symbol(texts.layers.probes, [x, y], probe, 1.5)) continue;
    drawing.row(texts.legend.probe, symbolSample(probe));
    const wet = water === undefined ? [] : [`${texts.probes.water} ${length.print(water, units)}`];
    const anchor = drawing.spot([x, y]);
    const lettering = { lines: [id, ...wet], size: TYPE.small, face: "strong" as const };
    drawing.label(RANK.must, { ...lettering, anchor, clear: 1.9, must: true });
  }
}
