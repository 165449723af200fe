/** Puts a plan together: its tables, the window that it shows, its marks, and its legend. */
import type { PlanPoint, Site } from "../../site/index.js";
import { words } from "../../words/index.js";
import type { LegendRow, Mark, PlanWindow, Room, RoomOf, SheetContent } from "../paper.js";
import { textWidth } from "../textWidth.js";
import { layoutsOf, tableMarks, type PlanLayout, type PlanTable } from "./panel.js";
import { INK, PENS, TYPE } from "./pens.js";
import { PlanDrawing } from "./planDrawing.js";
import { onPaper } from "./planFrame.js";
import type { PlanFrame } from "./planFrame.js";
import { extentOf, fittingScale, middleOfExtent, type Extent } from "./scales.js";

export interface PlanSpec {
  id: string;
  title: string;
  units: Site["units"];
  /** What has to be in sight, m. */
  places: readonly PlanPoint[];
  tables: readonly PlanTable[];
  /** Draws the plan; what it hands back is said under it. */
  draw: (drawing: PlanDrawing) => readonly string[];
}

/** mm between what matters and the edge of the plan: lettering outside the lot stands there. */
const MARGIN = 5;
/** mm under a plan for what is to be said of it. */
const NOTES = 4;
/** Rounds in which legend and room settle; the room of all rows seen is taken after that. */
const ROUNDS = 3;

/** The sheet of a plan. Throws where the places are none. */
export function planSheet(
  spec: PlanSpec,
  roomOf: RoomOf,
  windows: Readonly<Record<string, PlanWindow>>,
): SheetContent {
  return drawnPlan(spec, roomOf, windows).content;
}

/** The same, and the survey points that found no room for what stands beside them. */
export function drawnPlan(
  spec: PlanSpec,
  roomOf: RoomOf,
  windows: Readonly<Record<string, PlanWindow>>,
): { content: SheetContent; left: readonly string[] } {
  const { layout, drawing, notes } = settled(spec, roomOf, windows[spec.id]);
  return contentOf(spec, layout, drawing, notes);
}

/** What a plan shows by itself, whatever window a person has chosen. Throws where places are none. */
export function planFrameOf(spec: PlanSpec, roomOf: RoomOf): PlanFrame {
  return settled(spec, roomOf, undefined).layout.frame;
}

interface Settled {
  layout: FramedLayout;
  drawing: PlanDrawing;
  notes: readonly string[];
}

/** A plan drawn but for its lettering, where legend and room agree. */
function settled(spec: PlanSpec, roomOf: RoomOf, window: PlanWindow | undefined): Settled {
  const extent = extentOf(spec.places);
  if (extent === null) throw new Error(`plan "${spec.id}": got no places, expected some`);
  let legend: readonly LegendRow[] = [];
  for (let round = 0; ; round++) {
    const layout = bestLayout(roomOf(legend), spec, extent, window);
    const drawing = new PlanDrawing(layout.frame);
    const notes = spec.draw(drawing);
    const rows = drawing.legendRows();
    if (sameNames(rows, legend) || round >= ROUNDS) return { layout, drawing, notes };
    legend = round + 1 < ROUNDS ? rows : allOf(legend, rows);
  }
}

function sameNames(some: readonly LegendRow[], others: readonly LegendRow[]): boolean {
  return some.length === others.length && some.every(({ name }, i) => name === others[i]?.name);
}

function allOf(some: readonly LegendRow[], others: readonly LegendRow[]): LegendRow[] {
  const known = new Set(some.map(({ name }) => name));
  return [...some, ...others.filter(({ name }) => !known.has(name))];
}

interface FramedLayout extends PlanLayout {
  frame: PlanFrame;
}

/** The layout at which the plan is largest; the window that a person chose stands in any of them. */
function bestLayout(
  room: Room,
  { units, tables }: PlanSpec,
  extent: Extent,
  window: PlanWindow | undefined,
): FramedLayout {
  const framed = layoutsOf(room, tables).map((layout): FramedLayout => {
    const plan = { ...layout.plan, height: layout.plan.height - NOTES };
    const scale = window?.scale ?? fittingScale(extent, plan, units, MARGIN);
    const middle: PlanPoint = window
      ? [window.middle[0], window.middle[1]]
      : middleOfExtent(extent);
    return { ...layout, frame: { room: plan, middle, scale } };
  });
  const size = ({ frame: { room: plan } }: FramedLayout): number => plan.width * plan.height;
  return framed.reduce((best, one) => {
    const better = one.frame.scale - best.frame.scale || size(best) - size(one);
    return better < 0 ? one : best;
  });
}

/** Whether a place that the plan is of lies off its part of the paper: only a person's window does that. */
function isCutOff({ places }: PlanSpec, frame: PlanFrame): boolean {
  const { left, top, width, height } = frame.room;
  return places.some((place) => {
    const [x, y] = onPaper(frame, place);
    return x < left || x > left + width || y < top || y > top + height;
  });
}

function contentOf(
  spec: PlanSpec,
  { frame, placed, rule }: FramedLayout,
  drawing: PlanDrawing,
  said: readonly string[],
): { content: SheetContent; left: readonly string[] } {
  const texts = words.sheetsPlan;
  const { id, title } = spec;
  const partial = isCutOff(spec, frame);
  const { marks, legend, leftOut, spots } = drawing.finish(texts.layers.lettering);
  const notes = [
    ...(partial ? [texts.cutOff] : []),
    ...said,
    ...(spots.left.length > 0
      ? [texts.spots(spots.left.length, spots.left.length + spots.written.length)]
      : []),
    ...(leftOut > 0 ? [texts.leftOut(leftOut)] : []),
  ];
  const tables: Mark[] = placed.flatMap(({ table, left, top }) => tableMarks(table, [left, top]));
  if (rule !== null) tables.push({ kind: "path", lines: [rule], closed: false, pen: PENS.thin });
  tables.push(...notesUnder(frame.room, notes));
  const content: SheetContent = {
    ...{ id, title, scale: frame.scale, north: 0, ...(partial && { partial }) },
    window: { middle: [frame.middle[0], frame.middle[1]], scale: frame.scale },
    marks: [...marks, { kind: "group", layer: texts.layers.tables, marks: tables }],
    legend,
  };
  return { content, left: spots.left };
}

function notesUnder({ left, top, width, height }: Room, notes: readonly string[]): Mark[] {
  if (notes.length === 0) return [];
  const text = notes.join(" ");
  const size = Math.max(
    1.8,
    Math.min(TYPE.small, (TYPE.small * width) / textWidth(text, "text", TYPE.small)),
  );
  return [
    {
      ...{ kind: "text", at: [left, top + height + NOTES - 1], text, face: "text", size },
      ...{ anchor: "start", color: INK.grey },
    },
  ];
}
