/** The sheet of what is to be built: works, pipes, limits behind them, distances kept, ties. */
import { boreSize, workOutline, type Estimate } from "../../estimate/index.js";
import type { Pipe, PlanPoint, Scheme, Site } from "../../site/index.js";
import { distance, elevation, pipeSlope } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { SheetMaker } from "../paper.js";
import { dimensionSample, drawDimension } from "./dimension.js";
import { drawHeaps } from "./drawHeaps.js";
import { drawLimits } from "./drawLimits.js";
import { drawSections } from "./drawSections.js";
import { drawWorks } from "./drawWorks.js";
import { lotPlaces } from "./existingGround.js";
import { drawBenchmark, drawContours, drawFinishedContours, finishedContours } from "./ground.js";
import type { PlanTable } from "./panel.js";
import { INK, pen } from "./pens.js";
import { planSheet } from "./planSheet.js";
import type { PlanDrawing } from "./planDrawing.js";
import { drawSetbacks, letteredSetbacks, setbackTable, tiesOf, type Tie } from "./setbackSheet.js";

const texts = words.sheetsPlan;

export const LAYOUT_PLAN = "layout-plan";

/** Draws the layout of a scheme; nothing where it has no works. */
export const layoutPlan: SheetMaker = ({ site, schemeId, estimate }, room, windows) => {
  const scheme = site.schemes.find(({ id }) => id === schemeId);
  if (scheme === undefined || scheme.works.length === 0) return [];
  const lettered = letteredSetbacks(site, scheme, estimate);
  const ties = tiesOf(site, scheme);
  const finished = finishedContours(site, schemeId, estimate);
  const sheet = planSheet(
    {
      ...{ id: LAYOUT_PLAN, title: texts.titles.layout, units: site.units },
      places: [...lotPlaces(site), ...workPlaces(scheme, estimate)],
      tables: [
        ...setbackTable(site, scheme, estimate, lettered),
        ...pipeTable(site, scheme, estimate),
      ],
      draw: (drawing) => {
        drawContours(drawing, site, true);
        drawFinishedContours(drawing, finished);
        drawLimits(drawing, site, { grey: true, courses: false });
        drawHeaps(drawing, site, estimate, false);
        const hasValves = drawWorks(drawing, site, scheme, estimate);
        drawSections(drawing, site, scheme, estimate);
        drawBenchmark(drawing, site);
        drawSetbacks(drawing, site, lettered);
        drawTies(drawing, site, ties);
        const hasTank = scheme.works.some(({ kind }) => kind === "tank");
        return [
          ...(hasTank && ties.length === 0 ? [texts.noTies] : []),
          ...(hasValves ? [texts.valvesAt] : []),
        ];
      },
    },
    room,
    windows,
  );
  return [sheet];
};

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
  const { pipe, inside, length, fall, inverts, title } = texts.pipes;
  return [
    {
      title,
      head: [pipe, inside, length, fall, inverts],
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
