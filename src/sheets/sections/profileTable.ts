/** The table of figures under a profile: a column for each place, led down from where it lies. */
import { distance, elevation } from "../../units/index.js";
import type { UnitSystem } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { GroupMark, Mark, Spot } from "../paper.js";
import { textWidth, wrapText } from "../textWidth.js";
import { INK, PENS, TEXT } from "./pens.js";
import type { ProfileColumn } from "./profileData.js";
import { spreadInRow } from "./spread.js";

interface Row {
  name: string;
  print: (column: ProfileColumn) => string;
}

/** mm: of a row, and of the lines that lead to the columns. */
const ROW = 3.9;
const LEAD = 4;
const LINE = 2.3;

function rowsOf(units: UnitSystem): Row[] {
  const { rows } = words.sheetsSections.profile;
  const digits = units === "us" ? 1 : 2;
  const unit = distance.unitLabel(units);
  const height =
    (read: (column: ProfileColumn) => number) =>
    (column: ProfileColumn): string => {
      const z = read(column);
      return Number.isFinite(z)
        ? elevation.print(z, units, { bare: true })
        : words.sheetsSections.notKnown;
    };
  return [
    {
      name: rows.station(unit),
      print: ({ station }) => distance.print(station, units, { bare: true, digits }),
    },
    { name: rows.found(unit), print: height(({ found }) => found) },
    { name: rows.finished(unit), print: height(({ finished }) => finished) },
    { name: rows.invert(unit), print: height(({ invert }) => invert) },
    { name: rows.depth(unit), print: height(({ found, invert }) => found - invert) },
    { name: rows.floor(unit), print: height(({ floor }) => floor) },
    { name: rows.cover(unit), print: height(({ cover }) => cover) },
  ];
}

/** mm that the names of the rows take to the left of the columns. */
export function namesWidth(units: UnitSystem): number {
  return Math.max(...rowsOf(units).map(({ name }) => textWidth(name, "text", TEXT.small))) + 2;
}

export interface TableAsk {
  columns: readonly ProfileColumn[];
  units: UnitSystem;
  /** mm: where the columns may stand, and the top of the lines that lead to them. */
  left: number;
  right: number;
  top: number;
  /** mm: the right edge of the ground over it, which its rules reach. */
  edge: number;
  /** mm on paper of a station. */
  x: (station: number) => number;
}

export interface ProfileTable {
  /** The columns that have room, in order. */
  listed: readonly ProfileColumn[];
  height: number;
  marks: GroupMark;
}

/** Draws the table; columns of the lowest rank are left out where they do not all fit. */
export function profileTable(ask: TableAsk): ProfileTable {
  const { units, left, right, top, x } = ask;
  const rows = rowsOf(units);
  const width = columnWidth(rows, ask.columns);
  const sizeOf = (column: ProfileColumn): number => Math.max(width, longestWord(column) + 1.2);
  const listed = withRoom(ask.columns, width, sizeOf, right - left, x);
  const middles = spreadInRow(
    listed.map((column) => ({ at: x(column.station), size: sizeOf(column) })),
    0,
    left,
    right,
  );
  const whats = listed.map((column) =>
    column.what.flatMap((each) => wrapText(each, "strong", TEXT.small, sizeOf(column) - 1)),
  );
  const head = Math.max(0, ...whats.map((lines) => lines.length)) * LINE + (whats.length ? 1.4 : 0);
  const body = top + LEAD + head;
  const foot = body + rows.length * ROW;
  const marks: Mark[] = [];
  const end = Math.max(ask.edge, ...middles.map((middle, i) => middle + sizeOf(listed[i]!) / 2));
  const rule = (y: number, pen = PENS.rule): void => {
    const from: Spot = [left - namesWidth(units), y];
    marks.push({ kind: "path", lines: [[from, [end, y]]], closed: false, pen });
  };
  rows.forEach(({ name, print }, i) => {
    const base = body + (i + 0.72) * ROW;
    rule(body + i * ROW, i === 0 ? PENS.thin : PENS.rule);
    marks.push(textAt([left - namesWidth(units), base], name, "start", "text"));
    listed.forEach((column, k) => {
      marks.push({
        ...textAt([middles[k]! + width / 2 - 1, base], print(column), "end", "text"),
        tabular: true,
      });
    });
  });
  rule(foot, PENS.thin);
  listed.forEach((column, k) => {
    const at = middles[k]!;
    const lead: Spot[] = [
      [x(column.station), top],
      [at, top + LEAD],
    ];
    marks.push({ kind: "path", lines: [lead], closed: false, pen: PENS.thin });
    whats[k]!.forEach((line, n) => {
      marks.push(textAt([at, top + LEAD + 2 + n * LINE], line, "middle", "strong"));
    });
  });
  return {
    listed,
    height: foot - top,
    marks: { kind: "group", layer: words.sheetsSections.layers.table, marks },
  };
}

function textAt(
  at: Spot,
  text: string,
  anchor: "start" | "middle" | "end",
  face: "text" | "strong",
): Mark & { kind: "text" } {
  return { kind: "text", at, text, face, size: TEXT.small, anchor, color: INK };
}

function columnWidth(rows: readonly Row[], columns: readonly ProfileColumn[]): number {
  const widths = columns.flatMap((column) =>
    rows.map(({ print }) => textWidth(print(column), "text", TEXT.small, true)),
  );
  return Math.max(10, ...widths.map((width) => width + 2));
}

/** mm of the longest word of what is at a column: no word is broken. */
function longestWord({ what }: ProfileColumn): number {
  const all = what.flatMap((each) => each.split(/\s+/));
  return Math.max(0, ...all.map((word) => textWidth(word, "strong", TEXT.small)));
}

/** A column that only tells of a break keeps so much of its width clear of the next, at the least. */
const CLEAR = 0.95;

/**
 * Leaves out columns of the lowest rank that would have to stand aside, then of any rank what has no
 * room, those nearest to their neighbours first.
 */
function withRoom(
  columns: readonly ProfileColumn[],
  width: number,
  sizeOf: (column: ProfileColumn) => number,
  room: number,
  x: (station: number) => number,
): ProfileColumn[] {
  const lowest = Math.min(...columns.map(({ rank }) => rank));
  const kept: ProfileColumn[] = columns.filter(({ rank }) => rank > lowest);
  for (const column of columns.filter(({ rank }) => rank === lowest)) {
    const at = x(column.station);
    const crowded = kept.some(({ station }) => Math.abs(x(station) - at) < CLEAR * width);
    if (!crowded || kept.length === 0) kept.push(column);
  }
  kept.sort((a, b) => a.station - b.station);
  const apart = (i: number): number => {
    const [before, after] = [kept[i - 1], kept[i + 1]];
    return (after?.station ?? Infinity) - (before?.station ?? -Infinity);
  };
  const taken = (): number => kept.reduce((sum, column) => sum + sizeOf(column), 0);
  while (kept.length > 1 && taken() > room) {
    const least = Math.min(...kept.map(({ rank }) => rank));
    const candidates = kept.map((_, i) => i).filter((i) => kept[i]!.rank === least);
    const out = candidates.reduce((best, i) => (apart(i) < apart(best) ? i : best));
    kept.splice(out, 1);
  }
  return kept;
}
