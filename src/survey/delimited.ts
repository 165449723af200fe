import Papa from "papaparse";
import type { Delimiter, TableRow } from "./types.js";

const SAMPLE_LINES = 60;
const DELIMITERS: readonly Delimiter[] = ["\t", ";", ",", "space"];

/** Lines split into cells. `comment` is the last `#` line before the first row, a possible header. */
export interface SplitTable {
  delimiter: Delimiter;
  rows: readonly TableRow[];
  comment?: TableRow;
}

/**
 * Splits a pasted or opened table. Takes off a byte-order mark, any line ends, blank lines and lines
 * that begin with `#`; keeps each row's line number. Quoted cells may hold the delimiter or a line
 * end; when a quote is never closed (an inch mark), quotes are read as plain marks instead. The
 * delimiter is the one that gives most numeric or empty cells in lines of three cells or more.
 */
export function splitTable(text: string, asked?: Delimiter): SplitTable {
  const lines = text
    .replace(/^\uFEFF/, "")
    .replace(/\r\n?/g, "\n")
    .replace(/[\u00A0\u202F]/g, " ")
    .split("\n");
  const isComment = (line: string | undefined) => line?.trimStart().startsWith("#") === true;
  const kept = lines.map((line) => (isComment(line) ? "" : line));
  const delimiter = asked ?? likeliestDelimiter(kept.filter((line) => line.trim() !== ""));
  const rows = splitRows(kept, delimiter).filter((row) => row.cells.some((cell) => cell !== ""));
  const first = rows[0]?.line ?? 1;
  const at = lines.slice(0, first - 1).findLastIndex(isComment);
  const comment = at < 0 ? undefined : lines[at]?.trimStart().replace(/^#+\s*/, "");
  const cells = comment === undefined ? undefined : splitRows([comment], delimiter)[0]?.cells;
  const table = { delimiter, rows };
  return cells === undefined ? table : { ...table, comment: { line: at + 1, cells } };
}

function splitRows(lines: readonly string[], delimiter: Delimiter): TableRow[] {
  if (delimiter === "space") {
    return lines.map((line, index) => ({ line: index + 1, cells: spacedCells(line) }));
  }
  const text = lines.join("\n");
  const quoted = Papa.parse<string[]>(text, { delimiter, newline: "\n" });
  const torn = quoted.errors.some((error) => error.type === "Quotes");
  // A quote mark that cannot occur in text turns quoting off.
  const plain = torn
    ? Papa.parse<string[]>(text, { delimiter, newline: "\n", quoteChar: "\u0000" })
    : quoted;
  let line = 1;
  return plain.data.map((cells) => {
    const row = { line, cells: cells.map((cell) => cell.replace(/\s*\n\s*/g, " ").trim()) };
    line += 1 + cells.reduce((sum, cell) => sum + lineEnds(cell), 0);
    return row;
  });
}

function lineEnds(cell: string): number {
  return cell.includes("\n") ? cell.split("\n").length - 1 : 0;
}

function spacedCells(line: string): string[] {
  const cells = line.match(/"[^"]*"(?=\s|$)|\S+/g) ?? [];
  return cells.map((cell) => (/^".*"$/.test(cell) ? cell.slice(1, -1).trim() : cell));
}

function likeliestDelimiter(lines: readonly string[]): Delimiter {
  const sample = lines.slice(0, SAMPLE_LINES);
  let best: Delimiter = ",";
  let bestScore = -1;
  for (const delimiter of DELIMITERS) {
    const rows = splitRows(sample, delimiter).map((row) => row.cells);
    const score = rows.reduce((sum, cells) => sum + likeness(cells), 0);
    if (score > bestScore) {
      best = delimiter;
      bestScore = score;
    }
  }
  return best;
}

/** Numbers count in lines of three cells or more; any parting at all breaks a tie. */
function likeness(cells: readonly string[]): number {
  const numbers = cells.length < 3 ? 0 : cells.filter(numericOrEmpty).length;
  return numbers + (cells.length - 1) * 1e-3;
}

function numericOrEmpty(cell: string): boolean {
  return cell === "" || /^[-–—]$/.test(cell) || looksNumeric(cell);
}

/** Digits with signs, points and commas, or an exponent: a number in one or another way of writing. */
export function looksNumeric(cell: string): boolean {
  return /^[-+−]?(?:\d[\d.,]*|[.,]\d+)(?:e[-+]?\d+)?$/i.test(cell) && !/[.,]$/.test(cell);
}

/**
 * The number in a cell, or undefined. With a decimal point, commas may mark thousands (`1,234.5`);
 * with a decimal comma, points may (`1.234,5`).
 */
export function cellNumber(cell: string, decimal: "." | ","): number | undefined {
  if (!looksNumeric(cell)) return undefined;
  const swapped =
    decimal === "." ? cell : cell.replace(/[.,]/g, (mark) => (mark === "," ? "." : ","));
  const grouped = /^[-+−]?\d{1,3}(?:,\d{3})+(?:\.\d+)?$/.test(swapped);
  const plain = (grouped ? swapped.replace(/,/g, "") : swapped).replace("−", "-");
  if (plain.includes(",")) return undefined;
  const value = Number(plain);
  return Number.isFinite(value) ? value : undefined;
}

/**
 * Whether the cells use a decimal comma. `unclear` when every comma stands before just three digits
 * and no cell has a point: `103,250` may be 103.25 or 103250.
 */
export function decimalMark(cells: readonly string[]): { decimal: "." | ","; unclear: boolean } {
  let withComma = 0;
  let points = 0;
  for (const cell of cells) {
    if (!looksNumeric(cell)) continue;
    const lastComma = cell.lastIndexOf(",");
    const lastPoint = cell.lastIndexOf(".");
    if (lastComma < 0 && lastPoint >= 0) points += 1;
    if (lastComma < 0) continue;
    if (lastPoint > lastComma) return { decimal: ".", unclear: false };
    const grouped = /^[-+−]?[1-9]\d{0,2}(,\d{3})+$/.test(cell);
    if (lastPoint >= 0 || !grouped) return { decimal: ",", unclear: false };
    if (cell.indexOf(",") !== lastComma) return { decimal: ".", unclear: false };
    withComma += 1;
  }
  if (withComma === 0 || points > 0) return { decimal: ".", unclear: false };
  return { decimal: ",", unclear: true };
}
