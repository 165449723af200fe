/** Reads a pasted table of setbacks: part, to what, distance, source. */
import { limitKind, LIMIT_KINDS, type Setback } from "../site/index.js";
import { distance, type UnitSystem } from "../units/index.js";
import { splitTable } from "./delimited.js";
import { kindIn } from "./geoJsonIn.js";

export interface SetbackRows {
  rows: Setback[];
  problems: { line: number; text: string }[];
}

/**
 * A table with pasted rows in it: each takes the place of the row for the same part and kind, or
 * comes after them, and every other row stays.
 */
export function joinSetbacks(table: readonly Setback[], pasted: readonly Setback[]): Setback[] {
  return [
    ...table.map((row) => pasted.find((one) => isSamePair(one, row)) ?? row),
    ...pasted.filter((one) => !table.some((row) => isSamePair(one, row))),
  ];
}

/** Rows of a table that ask for a distance, and for which other rows ask nothing at all. */
export function leftOut(table: readonly Setback[], others: readonly Setback[]): Setback[] {
  return table.filter(
    (row) => row.distance > 0 && !others.some((one) => isSamePair(one, row) && one.distance > 0),
  );
}

function isSamePair(one: Setback, other: Setback): boolean {
  return one.from === other.from && one.to === other.to;
}

/** Words for the parts of a system that keep off. */
const PARTS: readonly (readonly [RegExp, Setback["from"]])[] = [
  [/\b(tank|septic|pump|chamber|vault)/, "tank"],
  [/\b(field|drain ?field|bed|mound|absorption|leach|dispersal|soil)/, "field"],
  [/\b(pipe|sewer|line)\b/, "pipe"],
  [/\bpad\b/, "pad"],
  [/\b(dig|hole|excavation|cut)/, "dig"],
];

/**
 * Rows of a table by commas, tabs or semicolons; a bare distance is in the system's unit (ft or m).
 * A first line without a figure is its head. `source` stands where a row gives none. A row that
 * repeats an earlier one is told and left out.
 */
export function readSetbacks(text: string, units: UnitSystem, source: string): SetbackRows {
  const found: SetbackRows = { rows: [], problems: [] };
  const table = splitTable(text, text.includes("\t") ? "\t" : text.includes(";") ? ";" : ",");
  table.rows.forEach(({ line, cells }, i) => {
    const [part = "", to = "", far = "", ...more] = cells;
    const isHead = i === 0 && !cells.some((cell) => /\d/.test(cell));
    if (isHead) return;
    if (to === "") {
      const text = `“${part}” has one column: put commas or tabs between part, what it keeps off and distance`;
      found.problems.push({ line, text });
      return;
    }
    const read = readRow(part, to, far, units);
    if (typeof read === "string") {
      found.problems.push({ line, text: read });
      return;
    }
    if (found.rows.some((one) => one.from === read.from && one.to === read.to)) {
      found.problems.push({ line, text: `${read.from} to ${read.to} stands there already` });
      return;
    }
    const written = more.filter((cell) => cell !== "").join(", ");
    found.rows.push({ ...read, source: written === "" ? source : written });
  });
  return found;
}

function readRow(
  part: string,
  to: string,
  far: string,
  units: UnitSystem,
): Omit<Setback, "source"> | string {
  const plain = part.toLowerCase();
  const from = PARTS.find(([words]) => words.test(plain))?.[1];
  if (from === undefined)
    return `“${part}” is no part: write tank, field (where the water soaks away), pipe, pad or hole`;
  const named = LIMIT_KINDS.find(({ name }) => name === to.toLowerCase().trim())?.id;
  const kind = named ?? (limitKind(to.trim()) === null ? kindIn(to) : to.trim());
  if (kind === null) return `“${to}” is no kind of limit: write well, lot line, building and so on`;
  const read = distance.parse(far, units);
  if (!read.ok || read.value < 0) return `“${far}” is no distance: write 50 ft or 15 m`;
  return { from, to: kind, distance: read.value };
}
