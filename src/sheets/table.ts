/** Tables on paper: ruled lines, wrapped words, and a head that comes again where a table goes on. */
import { words as texts } from "../words/index.js";
import type { FlowItem } from "./flow.js";
import { headingItem, LEADING } from "./prose.js";
import { PENS, rule, words } from "./strokes.js";
import { textWidth, wrapText } from "./textWidth.js";

export interface TableColumn {
  /** A table whose heads are all empty has no head. */
  head: string;
  /** Figures: as wide as the longest, set to the right. Others share what is left by `share`. */
  figures?: boolean;
  share?: number;
}

export interface TableRow {
  cells: readonly string[];
  /** `group` spans the table and stays with the row after it; `sum` closes a column of figures. */
  kind?: "group" | "sum";
}

export interface Table {
  title?: string;
  columns: readonly TableColumn[];
  rows: readonly TableRow[];
}

interface SetColumn extends TableColumn {
  left: number;
  width: number;
}

/** Between the words of neighbouring columns, in bodies. */
const APART = 1.1;
/** A table of no more rows is not parted. */
const KEPT_WHOLE = 7;
/** Above and below the words of a row, in bodies: as it reads best, and the least. */
export const ROOMY = 0.32;
export const TIGHT = 0.16;
const FAINT = { width: 0.18, color: "#8a8a8a" };

/** How a table is set, mm; the pad in bodies. */
interface Setting {
  size: number;
  width: number;
  pad: number;
}

/**
 * The table as items of a flow.
 * @param size height of the letters' body, mm
 * @param pad above and below the words of a row, in bodies
 */
export function tableItems(table: Table, size: number, width: number, pad = ROOMY): FlowItem[] {
  const { title, rows } = table;
  const set = { size, width, pad };
  const columns = setColumns(table, size, width);
  const isHeaded = columns.some(({ head }) => head !== "");
  const head = isHeaded ? [headRow(columns, set)] : [];
  const titled = (text: string): FlowItem[] => [headingItem(text, size, width), ...head];
  const opening = title === undefined ? head : titled(title);
  const again = title === undefined ? head : titled(texts.sheets.goesOn(title));
  return [
    ...opening,
    ...rows.map((row, i): FlowItem => {
      const last = i === rows.length - 1;
      const item = row.kind === "group" ? groupRow(row, set) : cellsRow(row, columns, set);
      // What follows a table stands a little off.
      const tied =
        !last && (item.tied === true || rows.length <= KEPT_WHOLE || i === rows.length - 2);
      return { ...item, height: item.height + (last ? 1.6 * size : 0), tied, again };
    }),
  ];
}

/** Words that a column of figures must hold in one line. */
function figuresWidth(i: number, { columns, rows }: Table, size: number): number {
  const cells = rows
    .filter(({ kind }) => kind !== "group")
    .map(({ cells, kind }) =>
      textWidth(cells[i] ?? "", kind === "sum" ? "strong" : "text", size, true),
    );
  const { head } = columns[i]!;
  const heads = head.split(" ").map((word) => textWidth(word, "strong", size));
  // A head takes two lines before it makes a column wider.
  return Math.max(0, ...cells, ...heads, 0.55 * textWidth(head, "strong", size));
}

function setColumns(table: Table, size: number, width: number): SetColumn[] {
  const { columns } = table;
  const narrow = columns.map((column, i) =>
    column.figures === true ? figuresWidth(i, table, size) : 0,
  );
  const free =
    width - narrow.reduce((sum, each) => sum + each, 0) - APART * size * (columns.length - 1);
  const shares = columns.reduce(
    (sum, { figures, share }) => sum + (figures === true ? 0 : (share ?? 1)),
    0,
  );
  let left = 0;
  return columns.map((column, i): SetColumn => {
    const own = column.figures === true ? narrow[i]! : (free * (column.share ?? 1)) / shares;
    const set = { ...column, left, width: own };
    left += own + APART * size;
    return set;
  });
}

function headRow(columns: readonly SetColumn[], { size, width, pad }: Setting): FlowItem {
  const cells = columns.map(({ head, width: room }) => wrapText(head, "strong", size, room));
  const lines = Math.max(1, ...cells.map(({ length }) => length));
  const height = size * (LEADING * lines + 2 * pad);
  return {
    height,
    tied: true,
    draw: (left, top) => [
      ...columns.flatMap((column, i) => {
        // Heads stand on the rule.
        const first = lines - cells[i]!.length;
        return cells[i]!.map((line, j) =>
          cellWords(
            line,
            column,
            left,
            top + size * (pad + 0.9 + LEADING * (first + j)),
            size,
            "strong",
          ),
        );
      }),
      rule(left, top + height, left + width, top + height, PENS.thin),
    ],
  };
}

function cellsRow(
  { cells, kind }: TableRow,
  columns: readonly SetColumn[],
  { size, width, pad }: Setting,
): FlowItem {
  const face = kind === "sum" ? "strong" : "text";
  const set = columns.map((column, i) => wrapText(cells[i] ?? "", face, size, column.width + 1e-6));
  const lines = Math.max(1, ...set.map(({ length }) => length));
  const height = size * (LEADING * lines + 2 * pad);
  return {
    height,
    draw: (left, top) => [
      ...(kind === "sum" ? [rule(left, top, left + width, top, PENS.thin)] : []),
      ...columns.flatMap((column, i) =>
        set[i]!.map((line, j) =>
          cellWords(line, column, left, top + size * (pad + 0.9 + LEADING * j), size, face),
        ),
      ),
      rule(left, top + height, left + width, top + height, FAINT),
    ],
  };
}

function groupRow({ cells }: TableRow, { size, width, pad }: Setting): FlowItem {
  const lines = wrapText(cells[0] ?? "", "strong", size, width);
  const height = size * (LEADING * lines.length + 2 * pad + 0.5);
  return {
    height,
    tied: true,
    draw: (left, top) => [
      ...lines.map((line, i) =>
        words(line, [left, top + size * (pad + 1.4 + LEADING * i)], "strong", size),
      ),
      rule(left, top + height, left + width, top + height, FAINT),
    ],
  };
}

function cellWords(
  text: string,
  { left: from, width, figures }: SetColumn,
  left: number,
  base: number,
  size: number,
  face: "text" | "strong",
) {
  return figures === true
    ? words(text, [left + from + width, base], face, size, { anchor: "end", tabular: true })
    : words(text, [left + from, base], face, size);
}
