/** A table as it is handed over: one model for a sheet of a workbook and for a CSV. */

/** A number that a spreadsheet reckons itself, with what it comes to now. */
export interface FormulaCell {
  /** As a spreadsheet writes it, without the equals sign: "B3*C3". */
  formula: string;
  value: number;
  /** Number format, such as "#,##0.00". */
  format?: string;
}

/**
 * Number format of money and prices. A spreadsheet shows it as "#,##0.00", which volumes have; its
 * second part, for amounts below 0, tells a CSV that the number is money.
 */
export const MONEY_FORMAT = "#,##0.00;-#,##0.00";

export interface NumberCell {
  number: number;
  format?: string;
  /** A figure that a person may want to change: drawn so. */
  input?: true;
}

/** A text may be bold, and run over the cells after it. */
export interface TextCell {
  text: string;
  strong?: true;
  /** Broken over several lines within its column. */
  wrap?: true;
}

export type Cell = FormulaCell | NumberCell | TextCell | string | null;

export interface Sheet {
  name: string;
  /** Widths of the columns in characters. */
  widths: readonly number[];
  rows: readonly (readonly Cell[])[];
  /** Rows at the top that stay in view. */
  head?: number;
  /** What a changed cell moves and what not: at the foot in a workbook, left out of a CSV. */
  notes?: readonly string[];
}

/** What a cell holds when nothing reckons: a number, a text, or nothing. */
export function plainCell(cell: Cell): number | string | null {
  if (cell === null || typeof cell === "string") return cell;
  if ("text" in cell) return cell.text;
  return "formula" in cell ? cell.value : cell.number;
}

/** "A", "B" … "Z", "AA" of 0, 1 … */
export function columnName(index: number): string {
  const first = Math.floor(index / 26);
  return (first > 0 ? columnName(first - 1) : "") + String.fromCharCode(65 + (index % 26));
}

/** The address of a cell, both from 0: "C4"; on another sheet "'Cost'!C4". */
export function cellAt(row: number, column: number, sheet?: string): string {
  const place = `${columnName(column)}${row + 1}`;
  return sheet === undefined ? place : `'${sheet.replaceAll("'", "''")}'!${place}`;
}
