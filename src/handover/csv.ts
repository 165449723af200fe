import Papa from "papaparse";
import type { HandoverJob } from "./job.js";
import { MONEY_FORMAT, plainCell } from "./sheet.js";
import type { Cell } from "./sheet.js";
import { standingLines } from "./standing.js";

/** The media type of a CSV with headings. */
export const CSV_TYPE = "text/csv;charset=utf-8;header=present";

/** Decimals of a number in a CSV: the seventh of a degree on the earth is a centimetre. */
const DECIMALS = 7;

const CENTS = 2;

/** What a spreadsheet would reckon or run; an amount of money below 0 is neither. */
const FORMULA = /^(?!-\d+\.\d\d$)[=+\-@\t\r].*$/;

/** Told to a spreadsheet that would otherwise guess an older alphabet, and spoil "yd³". */
const BYTE_ORDER_MARK = "\uFEFF";

/**
 * A table as CSV after RFC 4180: first row the headings, then the rows, then an empty row and what
 * stands in every file, a label and a text each. A text that a spreadsheet would take for a formula
 * (it begins with = + - @, a tab or a return) gets an apostrophe before it. Numbers are plain, with a
 * point: money to the cent, all else to seven decimals. A total of money is that of the whole
 * amounts, so it may differ by cents from the sum of what is written.
 */
export function csvOf(job: HandoverJob, rows: readonly (readonly Cell[])[]): string {
  const table = rows.map((row) => row.map(plainOf));
  const all = [...table, [""], ...standingLines(job)];
  const text = Papa.unparse(
    all.map((row) => [...row]),
    { escapeFormulae: FORMULA, newline: "\r\n" },
  );
  return `${BYTE_ORDER_MARK}${text}\r\n`;
}

function plainOf(cell: Cell): number | string {
  const plain = plainCell(cell);
  if (plain === null) return "";
  if (typeof plain === "number" && isMoney(cell)) return centsOf(plain);
  return typeof plain === "number" ? Number(plain.toFixed(DECIMALS)) : plain;
}

const isMoney = (cell: Cell): boolean =>
  cell !== null && typeof cell === "object" && "format" in cell && cell.format === MONEY_FORMAT;

/** "1234.50", never "-0.00". */
function centsOf(amount: number): string {
  const shown = amount.toFixed(CENTS);
  return Number(shown) === 0 ? (0).toFixed(CENTS) : shown;
}
