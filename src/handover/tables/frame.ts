import type { Estimate } from "../../estimate/index.js";
import { materialsOf, NATIVE } from "../../site/index.js";
import type { Site } from "../../site/index.js";
import { earthVolume, haulMass } from "../../units/index.js";
import { words } from "../../words/index.js";
import { cellAt, MONEY_FORMAT } from "../sheet.js";
import type { Cell, FormulaCell, NumberCell, Sheet, TextCell } from "../sheet.js";

/** Number formats: volumes and hours, money and prices, factors, whole numbers. */
export const FORMAT = {
  volume: "#,##0.00",
  money: MONEY_FORMAT,
  factor: "0.0000",
  count: "#,##0",
  hours: "0.00",
} as const;

export const head = (text: string): TextCell => ({ text, strong: true, wrap: true });
export const strong = (text: string): TextCell => ({ text, strong: true });
export const formula = (written: string, value: number, format: string): FormulaCell => ({
  formula: written,
  value,
  format,
});
export const input = (number: number, format: string): NumberCell => ({
  number,
  format,
  input: true,
});
export const figure = (number: number, format: string): NumberCell => ({ number, format });

/** Low, likely and high in that order. */
export const ENDS = ["low", "likely", "high"] as const;

/** A sheet as it is written, row by row; knows the row that comes next. */
export class Rows {
  readonly rows: (readonly Cell[])[] = [];

  constructor(readonly sheet: string) {}

  /** Index of the row that is written next. */
  get next(): number {
    return this.rows.length;
  }

  add(...cells: Cell[]): number {
    return this.rows.push(cells) - 1;
  }

  /** An address in this sheet as other sheets write it. */
  from(row: number, column: number): string {
    return cellAt(row, column, this.sheet);
  }

  done(widths: readonly number[], headRows?: number, notes: readonly string[] = []): Sheet {
    const { sheet: name, rows } = this;
    return { name, widths, rows, notes, ...(headRows !== undefined && { head: headRows }) };
  }
}

/** What the tables are made of, with how volumes and weights print on this site. */
export interface Making {
  site: Site;
  estimate: Estimate;
  /** m³ and kg to the site's units. */
  volume: (cubicMetres: number) => number;
  mass: (kilograms: number) => number;
  volumeUnit: string;
  massUnit: string;
  /** One name for each material id, no two alike. */
  cutName: (id: string) => string;
  fillName: (id: string) => string;
}

export function makingOf(site: Site, estimate: Estimate): Making {
  const { units } = site;
  const names = materialNames(site);
  return {
    site,
    estimate,
    volume: (value) => earthVolume.toSystem(value, units),
    mass: (value) => haulMass.toSystem(value, units),
    volumeUnit: earthVolume.unitLabel(units),
    massUnit: haulMass.unitLabel(units),
    cutName: (id) => (id === NATIVE ? words.tables.earlierBackfill : (names.get(id) ?? id)),
    fillName: (id) => (id === NATIVE ? words.tables.ownEarth : (names.get(id) ?? id)),
  };
}

/** A name for each material; of two alike, the id behind it tells them apart. */
function materialNames(site: Site): ReadonlyMap<string, string> {
  const all = [...materialsOf(site).values()];
  const taken = new Map<string, number>();
  for (const { name } of all) {
    const key = name.toLowerCase();
    taken.set(key, (taken.get(key) ?? 0) + 1);
  }
  return new Map(
    all.map(({ id, name }) => [id, taken.get(name.toLowerCase()) === 1 ? name : `${name} (${id})`]),
  );
}
