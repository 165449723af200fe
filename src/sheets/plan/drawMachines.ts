/** Machines on a plan: diggers at their work with their reach, the crane with its boom, trucks' ways. */
import {
  craneAtWork,
  diggerAtWork,
  rectangle,
  type CraneAtWork,
  type DiggerAtWork,
  type Estimate,
} from "../../estimate/index.js";
import type { PlanPoint, Site } from "../../site/index.js";
import { distance, mass } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { Mark, Spot } from "../paper.js";
import { dugWorks } from "./drawDigs.js";
import { lineSample } from "./lineStyle.js";
import { INK, pen, PENS, TYPE } from "./pens.js";
import { RANK, WEIGHT, type PlanDrawing } from "./planDrawing.js";

const texts = words.sheetsPlan;

const REACH = pen(0.18, INK.black, [2.2, 1.2]);
const RADIUS = pen(0.35, INK.black, [6, 1, 1, 1]);
const TRUCKS = { pen: pen(0.35, INK.black, [4, 1.2]), arrows: true };

/** Degrees clockwise from north of the way from one place to another. */
function bearingTo(from: PlanPoint, to: PlanPoint): number {
  return (Math.atan2(to[0] - from[0], to[1] - from[1]) * 180) / Math.PI;
}

/** Where machines stand: the digger at each hole by its number, the crane for each tank. */
export interface Stood {
  diggers: readonly (DiggerAtWork & { order: number })[];
  cranes: readonly (CraneAtWork & { load: number | null })[];
}

export function machinesOf(site: Site, schemeId: string, estimate: Estimate): Stood {
  const diggers = dugWorks(estimate).flatMap(({ id }, i) => {
    const stood = diggerAtWork(site, schemeId, estimate, id);
    return stood?.work === id ? [{ ...stood, order: i + 1 }] : [];
  });
  const cranes = (estimate.lift?.tanks ?? []).flatMap(({ tank, load }) => {
    const stood = craneAtWork(site, schemeId, estimate, tank);
    return stood?.tank.id === tank ? [{ ...stood, load: load?.value ?? null }] : [];
  });
  return { diggers, cranes };
}

/** Places that have to be in sight for the machines. */
export function machinePlaces({ diggers, cranes }: Stood): PlanPoint[] {
  const square = (at: PlanPoint, side: number): PlanPoint[] => rectangle(at, 0, side, side);
  return [
    ...diggers.flatMap(({ at, digger }) => square(at, 2 * digger.tailSwing)),
    ...cranes.flatMap(({ at, crane }) => square(at, 1.5 * (crane.outriggers ?? 2))),
  ];
}

/** The digger's tracks and tail at each hole, with the circle of its reach. */
export function drawDiggers(drawing: PlanDrawing, { diggers }: Stood): void {
  const layer = texts.layers.machines;
  for (const { digger, at, towards, order } of diggers) {
    const tracks = rectangle(at, bearingTo(at, towards), digger.trackLength, digger.width);
    const shown = drawing.area(layer, [tracks], { pen: PENS.middle, fill: { color: INK.pale } });
    drawing.circle(layer, at, digger.reach, { pen: REACH });
    drawing.circle(layer, at, digger.tailSwing, { pen: PENS.thin });
    drawing.line(layer, [at, towards], { pen: PENS.middle }, WEIGHT.usual);
    if (shown.length === 0) continue;
    drawing.row(texts.legend.digger, diggerSample());
    const lettering = { lines: [texts.digger(order)], size: TYPE.small };
    const clear = drawing.mm(digger.width / 2) + 0.8;
    drawing.label(RANK.names, { ...lettering, anchor: drawing.spot(at), clear, must: true });
  }
}

/** The crane at the best stand for each tank: pads, boom to the tank, circle of its radius. */
export function drawCranes(drawing: PlanDrawing, { units }: Site, { cranes }: Stood): void {
  const layer = texts.layers.machines;
  for (const { at, tank, crane, stand, load } of cranes) {
    const spread = crane.outriggers ?? 0;
    if (spread > 0) {
      const pads = rectangle(at, bearingTo(at, tank.at), spread, spread);
      drawing.area(layer, [pads], { pen: PENS.middle });
      for (const pad of pads) drawing.symbol(layer, pad, padMark, 0.7);
    }
    drawing.circle(layer, at, stand.radius.value, { pen: RADIUS });
    const boom = drawing.line(layer, [at, tank.at], { pen: PENS.strong }, WEIGHT.strong);
    if (!drawing.symbol(layer, at, axisMark, 1) && boom.length === 0) continue;
    drawing.row(texts.legend.crane, craneSample());
    const lifts = load === null ? texts.lifts.unknown : mass.print(load, units);
    const radius = distance.print(stand.radius.value, units);
    const lines = [texts.craneAt(stand.name), texts.lift(radius, lifts)];
    const lettering = { lines, size: TYPE.usual, face: "strong" as const };
    drawing.label(RANK.must, { ...lettering, anchor: drawing.spot(at), clear: 1.8, must: true });
  }
}

/** Drives are the ways of the trucks, as far as they are entered. */
export function drawTruckWays(drawing: PlanDrawing, { limits = [] }: Site): void {
  for (const { kind, path, closed } of limits) {
    if (kind !== "drive" || path === undefined || closed === true) continue;
    const pieces = drawing.line(texts.layers.machines, path, TRUCKS, WEIGHT.usual);
    if (pieces.length > 0) drawing.row(texts.legend.truck, lineSample(TRUCKS));
  }
}

const axisMark = (at: Spot): Mark[] => [
  { kind: "circle", at, radius: 0.9, pen: PENS.strong, fill: { color: "#ffffff" } },
];

const padMark = ([x, y]: Spot): Mark[] => [
  {
    ...{ kind: "path", closed: true, fill: { color: INK.black } },
    lines: [
      [
        [x - 0.6, y - 0.6],
        [x + 0.6, y - 0.6],
        [x + 0.6, y + 0.6],
        [x - 0.6, y + 0.6],
      ],
    ],
  },
];

function diggerSample(): Mark[] {
  return [
    {
      ...{ kind: "path", closed: true, pen: PENS.middle, fill: { color: INK.pale } },
      lines: [
        [
          [0.5, 1],
          [4.5, 1],
          [4.5, 3],
          [0.5, 3],
        ],
      ],
    },
    {
      kind: "path",
      lines: [
        [
          [2.5, 2],
          [7.5, 2],
        ],
      ],
      closed: false,
      pen: PENS.middle,
    },
    {
      kind: "path",
      lines: [
        [
          [8.6, 0.2],
          [9.3, 1.4],
          [9.3, 2.6],
          [8.6, 3.8],
        ],
      ],
      closed: false,
      pen: REACH,
    },
  ];
}

function craneSample(): Mark[] {
  return [
    {
      kind: "path",
      lines: [
        [
          [0.6, 0.3],
          [4, 0.3],
          [4, 3.7],
          [0.6, 3.7],
          [0.6, 0.3],
        ],
      ],
      closed: false,
      pen: PENS.middle,
    },
    {
      kind: "path",
      lines: [
        [
          [2.3, 2],
          [8.6, 2],
        ],
      ],
      closed: false,
      pen: PENS.strong,
    },
    ...axisMark([2.3, 2]),
    {
      kind: "path",
      lines: [
        [
          [8.6, 0.1],
          [9.2, 1.3],
          [9.2, 2.7],
          [8.6, 3.9],
        ],
      ],
      closed: false,
      pen: { width: 0.35, color: INK.black },
    },
  ];
}
