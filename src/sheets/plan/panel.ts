/** Small tables beside a plan: their size, their marks, and how several share a panel. mm. */
import type { Mark, Room, Spot } from "../paper.js";
import { fitText, textWidth, wrapText } from "../textWidth.js";
import { INK, PENS, TYPE } from "./pens.js";
import { tagMarks, tagMiddle, tagWidth } from "./tag.js";
import { words } from "../../words/index.js";

export interface PlanTable {
  title: string;
  /** Absent: the rows need no heads. */
  head?: readonly string[];
  rows: readonly (readonly string[])[];
  /** Of each column; absent: the first starts at the left, the others end at the right. */
  align?: readonly ("start" | "end")[];
  /** Row and column of cells that say something is wrong. */
  wrong?: readonly (readonly [row: number, column: number])[];
  /** Row and column of cells that a number in a frame leads, and the number: see tag.ts. */
  tags?: readonly (readonly [row: number, column: number, number: string])[];
  notes?: readonly string[];
}

const ROW = 3.4;
const GAP = 3;
/** mm between columns, and the most that one is wide. */
const BETWEEN = 2.5;
const WIDEST = 46;
const TITLE = 4.4;
const LEAST_WIDTH = 34;
/** mm that a table of notes alone is wide, and from one line of a note to the next. */
const NOTES_WIDTH = 66;
const NOTE = 2.7;
/** mm between one note and the next. */
const NOTE_GAP = 0.7;
/** mm between tables and the room's edge. */
const INSET = 1.5;

/** A table with its place in a panel. */
export interface PlacedTable {
  table: PlanTable;
  left: number;
  top: number;
}

/** Widths of a table's columns, mm. */
function columnsOf({ head = [], rows, tags = [] }: PlanTable): number[] {
  const count = Math.max(head.length, ...rows.map((row) => row.length));
  return Array.from({ length: count }, (_, i) => {
    const texts = rows.map((row) => textWidth(row[i] ?? "", "text", TYPE.small, true));
    const numbers = tags.filter(([, column]) => column === i).map(([, , tag]) => tagWidth(tag));
    const tag = Math.max(0, ...numbers);
    const words = (head[i] ?? "").split(" ");
    const word = Math.max(...words.map((one) => textWidth(one, "strong", TYPE.small)));
    return Math.min(WIDEST, Math.max(word + 0.1, tag + Math.max(0, ...texts)));
  });
}

/** The heads of a table's columns, each in as many lines as its column's width asks. */
function headLines(table: PlanTable): string[][] {
  const columns = columnsOf(table);
  return (table.head ?? []).map((text, i) => wrapText(text, "strong", TYPE.small, columns[i]!));
}

/** mm between lines of a head. */
const HEAD = 2.5;

export function tableWidth(table: PlanTable): number {
  const columns = columnsOf(table);
  const wide = columns.reduce((sum, each) => sum + each + BETWEEN, -BETWEEN);
  const least = table.rows.length === 0 ? NOTES_WIDTH : LEAST_WIDTH;
  return Math.max(least, wide, Math.min(60, textWidth(table.title, "strong", TYPE.usual)));
}

/** Where each part of a table begins below its top, and how high it is in all. */
function linesOf(table: PlanTable): { title: string[]; notes: string[][]; height: number } {
  const width = tableWidth(table);
  const title = wrapText(table.title, "strong", TYPE.usual, width);
  const notes = (table.notes ?? []).map((note) => wrapText(note, "text", TYPE.small, width));
  const noted = notes.reduce((sum, lines) => sum + lines.length * NOTE + NOTE_GAP, 0);
  const titled = title.length * TITLE * 0.75 + TITLE * 0.25;
  return { title, notes, height: titled + headHeight(table) + table.rows.length * ROW + noted };
}

function headHeight(table: PlanTable): number {
  const lines = Math.max(0, ...headLines(table).map((one) => one.length));
  return lines === 0 ? 0 : ROW + (lines - 1) * HEAD;
}

/** The same table with as many rows as fit a height; how many are left out is said. */
export function cutToHeight(table: PlanTable, height: number): PlanTable {
  const over = linesOf(table).height - height;
  if (over <= 0) return table;
  const left = Math.min(table.rows.length, Math.ceil(over / ROW) + 1);
  if (left === 0) return table;
  const rows = table.rows.slice(0, table.rows.length - left);
  return { ...table, rows: [...rows, [words.sheetsPlan.rows(left)]] };
}

/** Tables one under the other in as few columns of a height as they need; tables too high are cut. */
export function stackTables(
  tables: readonly PlanTable[],
  height: number,
): { placed: PlacedTable[]; width: number; height: number } {
  const placed: PlacedTable[] = [];
  let [left, top, wide, high] = [0, 0, 0, 0];
  for (const one of tables) {
    const table = cutToHeight(one, height);
    const size = linesOf(table).height;
    if (top > 0 && top + size > height) [left, top, wide] = [left + wide + 2 * GAP, 0, 0];
    placed.push({ table, left, top });
    top += size + GAP;
    wide = Math.max(wide, tableWidth(table));
    high = Math.max(high, top - GAP);
  }
  return { placed, width: left + wide, height: high };
}

/** The marks of a table whose upper left corner is at a spot. */
export function tableMarks(table: PlanTable, [left, top]: Spot): Mark[] {
  const width = tableWidth(table);
  const { title, notes } = linesOf(table);
  const marks: Mark[] = [];
  const write = (text: string, at: Spot, more: Partial<Mark & { kind: "text" }> = {}): void => {
    marks.push({
      ...{ kind: "text", at, text, face: "text", size: TYPE.small, anchor: "start" },
      ...{ color: INK.black, ...more },
    });
  };
  let y = top;
  for (const line of title) {
    y += TITLE * 0.75;
    write(line, [left, y - 0.6], { face: "strong", size: TYPE.usual });
  }
  y += TITLE * 0.25;
  const rule = (at: number): Mark => ({
    ...{ kind: "path", closed: false, pen: PENS.thin },
    lines: [
      [
        [left, at],
        [left + width, at],
      ],
    ],
  });
  marks.push(rule(y - 0.6));
  const ends = columnEnds(table, left, width);
  const headed = headHeight(table);
  headLines(table).forEach((lines, column) => {
    const { at, anchor } = ends[column]!;
    // Heads of fewer lines stand at the foot.
    lines.forEach((text, i) => {
      const up = (lines.length - 1 - i) * HEAD;
      write(text, [at, y + headed - 0.9 - up], { face: "strong", anchor });
    });
  });
  y += headed;
  if (headed > 0) marks.push(rule(y));
  table.rows.forEach((_, row) => {
    y += ROW;
    marks.push(...rowMarks(table, row, ends, width, y - 0.9));
  });
  for (const note of notes) {
    y += NOTE_GAP;
    for (const text of note) {
      y += NOTE;
      write(text, [left, y - 0.6], { color: INK.grey });
    }
  }
  return marks;
}

interface ColumnEnd {
  at: number;
  anchor: "start" | "end";
  wide: number;
}

/** The cells of one row, their base line `base` mm down the paper. */
function rowMarks(
  { rows, wrong = [], tags = [] }: PlanTable,
  row: number,
  ends: readonly ColumnEnd[],
  width: number,
  base: number,
): Mark[] {
  const cells = rows[row]!;
  return cells.flatMap((text, column): Mark[] => {
    const isWrong = wrong.some(([r, c]) => r === row && c === column);
    const { at, anchor, wide } = ends[column]!;
    const face = isWrong ? "strong" : "text";
    const color = isWrong ? INK.wrong : INK.black;
    const tag = tags.find(([r, c]) => r === row && c === column)?.[2];
    const start = anchor === "start" ? at : at - wide;
    const room = cells.length === 1 ? width : wide - (tag === undefined ? 0 : tagWidth(tag));
    const shown = fitText(text, face, TYPE.small, room + 0.01);
    const lettering = { face, size: TYPE.small, color, tabular: true } as const;
    const framed =
      tag === undefined
        ? []
        : tagMarks([start + tagMiddle(tag), base - 0.36 * TYPE.small], tag, color);
    return [...framed, { kind: "text", at: [at, base], text: shown, anchor, ...lettering }];
  });
}

function columnEnds(table: PlanTable, left: number, width: number): ColumnEnd[] {
  const columns = columnsOf(table);
  const wide = columns.reduce((sum, each) => sum + each + BETWEEN, -BETWEEN);
  // What a title leaves over goes to the first column.
  const spare = Math.max(0, width - wide);
  let x = left;
  return columns.map((column, i) => {
    const own = column + (i === 0 ? spare : 0);
    const anchor = table.align?.[i] ?? (i === 0 ? "start" : "end");
    const at = anchor === "start" ? x : x + own;
    x += own + BETWEEN;
    return { at, anchor, wide: own };
  });
}

/** A room for the plan, and tables placed on the rest of the paper. */
export interface PlanLayout {
  plan: Room;
  placed: PlacedTable[];
  /** The line between the two; null without tables. */
  rule: readonly [Spot, Spot] | null;
}

/** The largest share of a room's width or height that tables may take. */
const MOST = 0.5;

/** The ways in which tables can share a room with a plan: in columns at its right, or under it. */
export function layoutsOf(room: Room, tables: readonly PlanTable[]): PlanLayout[] {
  const shown = tables.filter(({ rows, notes }) => rows.length > 0 || (notes ?? []).length > 0);
  if (shown.length === 0) return [{ plan: room, placed: [], rule: null }];
  return [atRight(room, shown), below(room, shown)].filter((layout) => layout !== null);
}

function atRight(room: Room, tables: readonly PlanTable[]): PlanLayout | null {
  const stack = stackTables(tables, room.height - 2 * INSET);
  if (stack.width + GAP > room.width * MOST) return null;
  const plan = { ...room, width: room.width - stack.width - 2 * GAP - INSET };
  const at = plan.left + plan.width;
  return {
    plan,
    placed: moved(stack.placed, [at + 2 * GAP, room.top + INSET]),
    rule: [
      [at + GAP, room.top],
      [at + GAP, room.top + room.height],
    ],
  };
}

/** Under the plan, in a strip as low as the tables allow; the lowest of all is cut where nothing fits. */
function below(room: Room, tables: readonly PlanTable[]): PlanLayout {
  const most = room.height * MOST;
  let height = Math.min(most, Math.max(...tables.map((table) => linesOf(table).height)));
  while (height < most && stackTables(tables, height).width > room.width - 2 * INSET) height += 2;
  const stack = stackTables(tables, Math.min(height, most));
  const plan = { ...room, height: room.height - stack.height - 2 * GAP - INSET };
  const at = plan.top + plan.height;
  return {
    plan,
    placed: moved(stack.placed, [room.left + INSET, at + 2 * GAP]),
    rule: [
      [room.left, at + GAP],
      [room.left + room.width, at + GAP],
    ],
  };
}

function moved(placed: readonly PlacedTable[], [dx, dy]: Spot): PlacedTable[] {
  return placed.map((one) => ({ ...one, left: one.left + dx, top: one.top + dy }));
}
