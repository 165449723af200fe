/** Distances kept, on the plan and in its table. */
import {
  isKeptOffWater,
  setbackLines,
  type Estimate,
  type SetbackKept,
  type SetbackLine,
} from "../../estimate/index.js";
import type { PlanPoint, Scheme, Site } from "../../site/index.js";
import { distance } from "../../units/index.js";
import { words } from "../../words/index.js";
import { dimensionSample, drawDimension } from "./dimension.js";
import type { PlanTable } from "./panel.js";
import { PENS } from "./pens.js";
import type { PlanDrawing } from "./planDrawing.js";

const texts = words.sheetsPlan;

/** A pair whose line is drawn, with the number that stands there and in the table. */
export interface NumberedSetback extends SetbackLine {
  number: string;
}

/** m by which a distance may fall short of what is asked by rounding alone. */
const ROUNDING = 0.0005;

export function isShort({ distance: there, wanted }: SetbackKept): boolean {
  return there < wanted - ROUNDING;
}

/** The lines that are drawn: of each kind of part the one nearest to each limit, and every short one. */
export function numberedSetbacks(
  site: Site,
  scheme: Scheme,
  estimate: Estimate,
): NumberedSetback[] {
  const { setbacks, works } = estimate;
  const lines = setbackLines(site, scheme, works, setbacks);
  const shown = lines.filter(({ kept }) => isShort(kept) || isNearest(kept, setbacks));
  return shown.map((line, i) => ({ ...line, number: String(i + 1) }));
}

function isNearest(kept: SetbackKept, all: readonly SetbackKept[]): boolean {
  const alike = all.filter(({ from, to }) => from === kept.from && to === kept.to);
  const least = Math.min(...alike.map((one) => one.distance));
  return alike.find((one) => one.distance === least) === kept;
}

export function drawSetbacks(
  drawing: PlanDrawing,
  { units }: Site,
  lines: readonly NumberedSetback[],
): void {
  for (const { kept, from, to, number } of lines) {
    const short = isShort(kept);
    const pen = short ? PENS.wrong : PENS.dimension;
    const text = distance.print(kept.distance, units);
    const dimension = { from, to, text, number, pen, heads: true };
    if (!drawDimension(drawing, texts.layers.dimensions, dimension)) continue;
    const name = short ? texts.legend.setbackShort : texts.legend.setback;
    drawing.row(name, dimensionSample(pen, true, true));
  }
}

/** A table has no more columns of limits, or of works, than this; with more of both it is a list. */
const MOST_COLUMNS = 6;

/** All pairs: works down and limits across, the other way round where limits are many, or a list. */
export function setbackTable(
  site: Site,
  scheme: Scheme,
  { setbacks }: Estimate,
  numbered: readonly NumberedSetback[],
): PlanTable[] {
  if (setbacks.length === 0) return [];
  const cell = (kept: SetbackKept | undefined): Cell => ({
    text: cellText(site, kept),
    isShort: kept !== undefined && isShort(kept),
    number: numbered.find((one) => one.kept === kept)?.number ?? null,
  });
  const places = [...scheme.works, ...(site.limits ?? [])];
  const nameOf = (id: string): string => places.find((one) => one.id === id)?.name ?? id;
  const title = texts.setbacks.title(distance.unitLabel(site.units));
  // By themselves, since they find room beside the figures more often than under them.
  const notes = { title: texts.setbacks.about, rows: [], notes: notesOf(site, setbacks, numbered) };
  const parts = axisOf(setbacks, partKey, ({ work }) => nameOf(work));
  const limits = axisOf(
    setbacks,
    ({ to }) => to,
    ({ toName }) => toName,
  );
  if (limits.keys.length <= MOST_COLUMNS)
    return [{ title, ...matrix(parts, limits, setbacks, cell) }, notes];
  if (parts.keys.length <= MOST_COLUMNS)
    return [{ title, ...matrix(limits, parts, setbacks, cell) }, notes];
  const named = (text: string): Cell => ({ text, isShort: false, number: null });
  const cells = setbacks.map((kept) => [named(nameOf(kept.work)), named(kept.toName), cell(kept)]);
  const head = [texts.setbacks.from, texts.setbacks.to, ""];
  return [{ title, head, ...rowsOf(cells), align: ["start", "start", "end"] }, notes];
}

interface Cell {
  text: string;
  isShort: boolean;
  /** That stands at its line on the plan; null where none is drawn. */
  number: string | null;
}

function rowsOf(cells: readonly (readonly Cell[])[]): Pick<PlanTable, "rows" | "wrong" | "tags"> {
  const each = cells.flatMap((row, r) => row.map((cell, c) => ({ ...cell, r, c })));
  return {
    rows: cells.map((row) => row.map(({ text }) => text)),
    wrong: each.flatMap(({ isShort: short, r, c }) => (short ? [[r, c] as const] : [])),
    tags: each.flatMap(({ number, r, c }) => (number === null ? [] : [[r, c, number] as const])),
  };
}

/** One side of the table: what its rows or columns are told apart by, and are called. */
interface Axis {
  keys: readonly string[];
  keyOf: (kept: SetbackKept) => string;
  names: readonly string[];
}

function axisOf(
  setbacks: readonly SetbackKept[],
  keyOf: (kept: SetbackKept) => string,
  nameOf: (kept: SetbackKept) => string,
): Axis {
  const keys = unique(setbacks.map(keyOf));
  const names = keys.map((key) => {
    const first = setbacks.find((kept) => keyOf(kept) === key);
    return first === undefined ? key : nameOf(first);
  });
  return { keys, keyOf, names };
}

function matrix(
  down: Axis,
  across: Axis,
  setbacks: readonly SetbackKept[],
  cell: (kept: SetbackKept | undefined) => Cell,
): Pick<PlanTable, "head" | "rows" | "wrong" | "tags"> {
  const cells = down.keys.map((row, i) => [
    { text: down.names[i] ?? "", isShort: false, number: null },
    ...across.keys.map((column) =>
      cell(setbacks.find((kept) => down.keyOf(kept) === row && across.keyOf(kept) === column)),
    ),
  ]);
  return { head: ["", ...across.names], ...rowsOf(cells) };
}

const partKey = ({ work, from }: SetbackKept): string => `${work} ${from}`;

function unique(ids: readonly string[]): string[] {
  return [...new Set(ids)];
}

function cellText({ units }: Site, kept: SetbackKept | undefined): string {
  if (kept === undefined) return texts.setbacks.none;
  const print = (metres: number): string => distance.print(metres, units, { bare: true });
  const there = kept.outside === true ? texts.setbacks.outside : print(kept.distance);
  return texts.setbacks.cell(there, print(kept.wanted));
}

function notesOf(
  site: Site,
  setbacks: readonly SetbackKept[],
  numbered: readonly NumberedSetback[],
): string[] {
  const sources = unique(setbacks.filter(({ own }) => !own).map(({ source }) => source));
  const own = setbacks.some((kept) => kept.own);
  return [
    ...(numbered.length < setbacks.length ? [texts.setbacks.notes] : []),
    ...(setbacks.some(isShort) ? [texts.setbacks.short] : []),
    ...(isKeptOffWater(site, setbacks) ? [words.limits.table.waterLine] : []),
    texts.setbacks.asked([...(own ? [texts.setbacks.own] : []), ...sources]),
  ];
}

/** A tie: from a corner of the lot to the middle of a tank, m. */
export interface Tie {
  tank: string;
  from: PlanPoint;
  to: PlanPoint;
}

/** Two ties for each tank, from the lot corners whose lines cross it best and are not too long. */
export function tiesOf({ limits = [] }: Pick<Site, "limits">, { works }: Scheme): Tie[] {
  const corners = limits.flatMap(({ kind, path }) => (kind === "lot-line" ? (path ?? []) : []));
  return works.flatMap((work): Tie[] => {
    if (work.kind !== "tank") return [];
    const pair = bestCorners(corners, work.at);
    return (pair ?? []).map((from) => ({ tank: work.id, from, to: work.at }));
  });
}

function bestCorners(corners: readonly PlanPoint[], at: PlanPoint): [PlanPoint, PlanPoint] | null {
  let best: [PlanPoint, PlanPoint] | null = null;
  let most = -Infinity;
  corners.forEach((a, i) => {
    for (const b of corners.slice(i + 1)) {
      const [ax, ay, bx, by] = [a[0] - at[0], a[1] - at[1], b[0] - at[0], b[1] - at[1]];
      const [da, db] = [Math.hypot(ax, ay), Math.hypot(bx, by)];
      if (da === 0 || db === 0) continue;
      // The sine of the angle between them is how well they fix the place; long tapes sag and stray.
      const worth = Math.abs(ax * by - ay * bx) / (da * db) - (da + db) / (4 * spread(corners));
      if (worth > most) [best, most] = [[a, b], worth];
    }
  });
  return best;
}

function spread(places: readonly PlanPoint[]): number {
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  return Math.hypot(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
}
