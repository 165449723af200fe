/** The sheet of what is to be built: works, pipes, limits behind them, distances kept, ties. */
import { boreSize, lotEdge, workOutline, type Estimate } from "../../estimate/index.js";
import type { Pipe, PlanPoint, Scheme, Site } from "../../site/index.js";
import { distance, elevation, pipeSlope } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { PlanWindow, SheetMaker } from "../paper.js";
import { dimensionSample, drawDimension } from "./dimension.js";
import { ringLine } from "./clip.js";
import { drawHeaps } from "./drawHeaps.js";
import { drawLimits } from "./drawLimits.js";
import { drawSections, sectionPlaces } from "./drawSections.js";
import { drawWorks } from "./drawWorks.js";
import { lotPlaces } from "./existingGround.js";
import {
  drawBenchmark,
  drawContours,
  drawFinishedContours,
  drawSurveyEdge,
  finishedContours,
} from "./ground.js";
import { drawLotCorners } from "./lotCorners.js";
import type { PlanTable } from "./panel.js";
import { lineSample } from "./lineStyle.js";
import { INK, pen } from "./pens.js";
import { shownOf, type PlanFrame } from "./planFrame.js";
import { WEIGHT, type PlanDrawing } from "./planDrawing.js";
import { planFrameOf, planSheet, type PlanSpec } from "./planSheet.js";
import {
  drawSetbacks,
  numberedSetbacks,
  setbackTable,
  tiesOf,
  type NumberedSetback,
  type Tie,
} from "./setbackSheet.js";

const texts = words.sheetsPlan;

export const LAYOUT_PLAN = "layout-plan";
export const WORKS_PLAN = "works-plan";

/** By how much larger the works have to come out on a sheet of their own for there to be one. */
const LARGER = 1.4;

/**
 * Draws the layout of a scheme on the whole lot, and the works once more where they come out much
 * larger without it: distances and ties then stand on the first sheet, pipes, levels and lines of
 * sections on the second. Nothing where the scheme has no works.
 */
export const layoutPlan: SheetMaker = ({ site, schemeId, estimate }, room, windows) => {
  const scheme = site.schemes.find(({ id }) => id === schemeId);
  if (scheme === undefined || scheme.works.length === 0) return [];
  const laid: Laid = {
    ...{ site, scheme, estimate },
    numbered: numberedSetbacks(site, scheme, estimate),
    ties: tiesOf(site, scheme),
    finished: finishedContours(site, schemeId, estimate),
  };
  const [whole, works] = [wholeSpec(laid), worksSpec(laid)];
  const large = planFrameOf(works, room);
  if (planFrameOf(whole, room).scale < LARGER * large.scale) {
    return [planSheet(whole, room, windows)];
  }
  const window = windows[WORKS_PLAN];
  const shown = window === undefined ? large : { ...large, ...ownWindow(window) };
  // Whoever has moved the layout to see a part of it larger wants to see all that is there.
  const first = windows[LAYOUT_PLAN] === undefined ? lotSpec(laid, shown) : whole;
  return [planSheet(first, room, windows), planSheet(works, room, windows)];
};

const ownWindow = ({ middle: [x, y], scale }: PlanWindow): Omit<PlanFrame, "room"> => ({
  middle: [x, y],
  scale,
});

interface Laid {
  site: Site;
  scheme: Scheme;
  estimate: Estimate;
  numbered: readonly NumberedSetback[];
  ties: readonly Tie[];
  finished: readonly (readonly PlanPoint[])[];
}

/** The works on the lot with the distances that they keep; `larger` is drawn again by itself. */
function lotSpec(laid: Laid, larger: PlanFrame): PlanSpec {
  const { site, scheme, estimate, numbered } = laid;
  return {
    ...layoutOf(laid),
    tables: setbackTable(site, scheme, estimate, numbered),
    draw: (drawing) => {
      drawBehind(drawing, laid);
      drawWorks(drawing, site, scheme, estimate, false);
      drawLarger(drawing, larger, laid);
      return drawDistances(drawing, laid);
    },
  };
}

/** The works by themselves: what each is, its levels, its pipes, where sections cut it. */
function worksSpec(laid: Laid): PlanSpec {
  const { site, scheme, estimate } = laid;
  return {
    ...{ id: WORKS_PLAN, title: texts.titles.works, units: site.units },
    places: [...workPlaces(scheme, estimate), ...sectionPlaces(site, scheme, estimate)],
    tables: pipeTable(site, scheme, estimate),
    draw: (drawing) => {
      drawBehind(drawing, laid);
      return drawInFull(drawing, laid);
    },
  };
}

const layoutOf = ({ site, scheme, estimate }: Laid): Omit<PlanSpec, "tables" | "draw"> => ({
  ...{ id: LAYOUT_PLAN, title: texts.titles.layout, units: site.units },
  places: [...lotPlaces(site), ...workPlaces(scheme, estimate)],
});

/** Both on one sheet. */
function wholeSpec(laid: Laid): PlanSpec {
  const { site, scheme, estimate, numbered } = laid;
  return {
    ...layoutOf(laid),
    tables: [
      ...setbackTable(site, scheme, estimate, numbered),
      ...pipeTable(site, scheme, estimate),
    ],
    draw: (drawing) => {
      drawBehind(drawing, laid);
      const notes = drawInFull(drawing, laid);
      return [...drawDistances(drawing, laid), ...notes];
    },
  };
}

function drawBehind(drawing: PlanDrawing, { site, estimate, finished }: Laid): void {
  drawSurveyEdge(drawing, site);
  drawContours(drawing, site, true);
  drawFinishedContours(drawing, finished);
  drawLimits(drawing, site, { grey: true, courses: false });
  drawLotCorners(drawing, site, true);
  drawHeaps(drawing, site, estimate, false);
  drawBenchmark(drawing, site);
}

function drawInFull(drawing: PlanDrawing, { site, scheme, estimate }: Laid): string[] {
  const hasValves = drawWorks(drawing, site, scheme, estimate);
  drawSections(drawing, site, scheme, estimate);
  return hasValves ? [texts.valvesAt] : [];
}

function drawDistances(drawing: PlanDrawing, { site, scheme, numbered, ties }: Laid): string[] {
  drawSetbacks(drawing, site, numbered);
  drawTies(drawing, site, ties);
  const hasTank = scheme.works.some(({ kind }) => kind === "tank");
  return hasTank && ties.length === 0 ? [texts.noTies] : [];
}

const EDGE = pen(0.35, INK.black, [8, 1.5]);

/** The edge of what of the site stands on the next sheet: its paper may reach beyond the land. */
function drawLarger(
  drawing: PlanDrawing,
  larger: PlanFrame,
  { site, scheme, estimate }: Laid,
): void {
  const land = [...[...lotEdge(site), ...lotPlaces(site), ...workPlaces(scheme, estimate)]];
  const corners = shownOf(larger, land);
  const pieces = drawing.line(texts.layers.larger, ringLine(corners), { pen: EDGE }, WEIGHT.usual);
  if (pieces.length > 0) drawing.row(texts.legend.larger, lineSample({ pen: EDGE }));
}

/** Corners of all works of a scheme, and the feet of its heaps. */
export function workPlaces({ works }: Scheme, estimate: Estimate): PlanPoint[] {
  return works.flatMap((work) => {
    const heap = estimate.works.find(({ id }) => id === work.id)?.heap;
    const toe = (heap?.toe ?? []).flat().map(([x, y]): PlanPoint => [x, y]);
    return [...(workOutline(work) ?? []), ...toe];
  });
}

const TIE = pen(0.18, INK.black, [5, 0.9, 0.9, 0.9]);

function drawTies(drawing: PlanDrawing, { units }: Site, ties: readonly Tie[]): void {
  for (const { from, to } of ties) {
    const far = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const text = distance.print(far, units, { digits: 2 });
    const tie = { from, to, text, pen: TIE, heads: false };
    if (drawDimension(drawing, texts.layers.dimensions, tie)) {
      drawing.row(texts.legend.tie, dimensionSample(TIE, false));
    }
  }
}

/** Every pipe with its bore, length, fall, and inverts where they are given. */
function pipeTable(site: Site, { works }: Scheme, estimate: Estimate): PlanTable[] {
  const pipes = works.flatMap((work) => (work.kind === "trench" ? work.pipes : []));
  if (pipes.length === 0) return [];
  const { pipe, inside, length, fall, inverts, invertsOrCover, title } = texts.pipes;
  const covered = pipes.some(({ grade }) => grade.by === "cover");
  const ends = (covered ? invertsOrCover : inverts)(distance.unitLabel(site.units));
  return [
    {
      title,
      head: [pipe, inside, length, fall, ends],
      rows: pipes.map((one) => pipeRow(site, one, estimate)),
    },
  ];
}

function pipeRow({ units }: Site, pipe: Pipe, estimate: Estimate): string[] {
  const laid = estimate.pipes.find(({ id }) => id === pipe.id);
  if (laid === undefined) return [pipe.name];
  const level = (z: number): string => elevation.print(z, units, { bare: true });
  const depth = (metres: number): string => distance.print(metres, units, { bare: true });
  const { grade, service } = pipe;
  const ends =
    grade.by === "cover"
      ? texts.pipes.cover(depth(laid.cover.least), depth(laid.cover.most))
      : texts.pipes.from(level(grade.start), level(grade.start - laid.drop));
  return [
    pipe.name,
    boreSize(pipe.inside, units),
    distance.print(laid.length, units),
    service === "gravity" ? pipeSlope.print(laid.fall, units) : texts.pipes.none,
    ends,
  ];
}
