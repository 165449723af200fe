import type { Outcome } from "../site/index.js";
import { bearing, distance } from "../units/index.js";
import { decimalMark, looksNumeric, splitTable } from "./delimited.js";
import type { FieldRow } from "./fieldBook.js";
import { headerWord } from "./headerWords.js";
import { metresIn } from "./points.js";
import type { BadRow, Delimiter, SurveyProblem, SurveyUnit, TableRow } from "./types.js";

/** What a column of a level book holds; `ignore` takes heights of instrument, rises and falls. */
export type BookRole =
  | "station"
  | "backsight"
  | "intermediate"
  | "foresight"
  | "elevation"
  | "east"
  | "north"
  | "distance"
  | "bearing"
  | "note"
  | "ignore";

/** Unit of the readings, and what the person has said of the columns, in order. */
export interface BookTableOptions {
  unit: SurveyUnit;
  delimiter?: Delimiter;
  roles?: readonly BookRole[];
}

/** A pasted book: its columns as read, its lines in metres, and the lines that cannot be used. */
export interface BookTable {
  roles: readonly BookRole[];
  headerRow?: TableRow;
  rows: readonly FieldRow[];
  bad: readonly BadRow[];
  /** True when only the order of the columns says what they hold: a person must confirm. */
  ask: boolean;
}

const WORDS: Readonly<Record<Exclude<BookRole, "ignore">, readonly string[]>> = {
  station: ["station", "sta", "stn", "point", "pt", "p", "id", "no", "name"],
  backsight: ["backsight", "bs", "back", "b", "backsightreading"],
  intermediate: ["intermediatesight", "intermediate", "intersight", "is", "ifs", "int"],
  foresight: ["foresight", "fs", "fore", "f", "foresightreading"],
  elevation: ["elevation", "elev", "el", "rl", "reducedlevel", "level", "z", "height"],
  east: ["easting", "east", "e", "x"],
  north: ["northing", "north", "n", "y"],
  distance: ["distance", "dist", "d"],
  bearing: ["bearing", "brg", "azimuth", "az"],
  note: ["note", "notes", "remark", "remarks", "description", "desc", "comment"],
};

const BY_COUNT: Readonly<Record<number, readonly BookRole[]>> = {
  3: ["station", "backsight", "foresight"],
  4: ["station", "backsight", "intermediate", "foresight"],
  5: ["station", "backsight", "ignore", "foresight", "elevation"],
  6: ["station", "backsight", "ignore", "foresight", "elevation", "note"],
};

/**
 * Reads a pasted level book: columns by their header, or without one by their number: station, BS,
 * FS; station, BS, IS, FS (or note, when the last is words); station, BS, HI, FS, elevation, note.
 * Readings may be feet and inches. `-` is an empty cell. The first station's elevation is its bench
 * mark; so is the last one's when the stations between have none, else they are the person's own
 * sums, to be compared.
 */
export function readBookTable(
  text: string,
  options: BookTableOptions,
): Outcome<BookTable, SurveyProblem> {
  const { rows: lines, delimiter } = splitTable(text, options.delimiter);
  const first = lines[0];
  if (first === undefined) {
    return stopped("empty", "there are no rows to read", "paste one station on each line");
  }
  const named = first.cells.map(bookRole);
  const isHeader = named.includes("backsight") || named.includes("foresight");
  const body = isHeader ? lines.slice(1) : lines;
  const uneven = body.some((row) => row.cells.length !== first.cells.length);
  if (delimiter === "space" && uneven && first.cells.length > 1) {
    const mend = "put commas or tabs between the columns, or a - in each empty place";
    return stopped("unclear-columns", "spaces alone do not show which columns are empty", mend);
  }
  const width = Math.max(...lines.slice(0, 400).map((row) => row.cells.length));
  const roles =
    options.roles ?? (isHeader ? named.map((role) => role ?? "ignore") : rolesByCount(body, width));
  const needed = ["station", "backsight", "foresight"] as const;
  const missing = needed.filter((role) => roles.filter((given) => given === role).length !== 1);
  if (missing.length > 0) {
    const text = `the book needs one column each for ${missing.join(" and ")}`;
    return stopped(width === 1 ? "one-column" : "roles", text, "name the columns in a first line");
  }
  const read = readLines(body, roles, options.unit);
  return {
    ok: true,
    value: {
      roles,
      ...(isHeader ? { headerRow: first } : {}),
      rows: withBenches(read.rows),
      bad: read.bad,
      ask: !isHeader && options.roles === undefined,
    },
  };
}

function stopped(
  code: SurveyProblem["code"],
  text: string,
  mend: string,
): { ok: false; problems: SurveyProblem[] } {
  return { ok: false, problems: [{ code, stops: true, text, mend }] };
}

function bookRole(cell: string): BookRole | undefined {
  const word = headerWord(cell.replace(/[+\-−]/g, ""));
  const roles = Object.keys(WORDS) as (keyof typeof WORDS)[];
  return roles.find((role) => WORDS[role].includes(word));
}

function rolesByCount(rows: readonly TableRow[], width: number): readonly BookRole[] {
  const lastIsWords = rows.some((row) => {
    const cell = row.cells[width - 1] ?? "";
    return cell !== "" && !looksNumeric(cell) && !/^\d/.test(cell) && !isEmpty(cell);
  });
  if (width === 4 && lastIsWords) return ["station", "backsight", "foresight", "note"];
  return BY_COUNT[width] ?? [];
}

function isEmpty(cell: string): boolean {
  return cell === "" || /^[-–—]$/.test(cell);
}

function readLines(
  lines: readonly TableRow[],
  roles: readonly BookRole[],
  unit: SurveyUnit,
): { rows: FieldRow[]; bad: BadRow[] } {
  const rows: FieldRow[] = [];
  const bad: BadRow[] = [];
  const comma = decimalMark(lines.flatMap((row) => row.cells)).decimal === ",";
  for (const line of lines) {
    const row = readLine(line, roles, unit, comma);
    if (typeof row === "string")
      bad.push({ row: line.line, text: line.cells.join(" | "), reason: row });
    else rows.push(row);
  }
  return { rows, bad };
}

/** A line in metres, or the reason why it cannot be used. */
function readLine(
  line: TableRow,
  roles: readonly BookRole[],
  unit: SurveyUnit,
  comma: boolean,
): FieldRow | string {
  const row: FieldRow = { station: "", line: line.line };
  for (const [column, role] of roles.entries()) {
    const cell = line.cells[column] ?? "";
    if (role === "ignore" || isEmpty(cell)) continue;
    if (role === "station") row.station = cell;
    else if (role === "note") row.note = cell;
    else if (role === "bearing") {
      const read = bearing.parse(cell, comma ? "metric" : "us");
      if (!read.ok) return `bearing: ${read.text}`;
      row.bearing = read.value;
    } else {
      const metres = readLength(cell, unit, comma);
      if (metres === undefined) return `the ${role} “${cell}” is not a reading`;
      row[FIELD[role]] = metres;
    }
  }
  if (row.station === "") return "the station has no name";
  const sighted = [row.backsight, row.intermediate, row.foresight].some(
    (sight) => sight !== undefined,
  );
  return sighted ? row : "the line has no sight";
}

const FIELD = {
  backsight: "backsight",
  intermediate: "intermediate",
  foresight: "foresight",
  elevation: "written",
  east: "x",
  north: "y",
  distance: "distance",
} as const;

function readLength(cell: string, unit: SurveyUnit, comma: boolean): number | undefined {
  const plain = comma ? cell.replace(/\./g, "") : cell;
  const bareUnit = unit === "m" ? "m" : "ft";
  const read = distance.parse(plain, comma ? "metric" : "us", { bareUnit });
  if (!read.ok) return undefined;
  // Feet are read as international; a survey foot is 2 parts in a million longer.
  return unit === "us-survey-ft"
    ? (read.value / metresIn("ft")) * metresIn("us-survey-ft")
    : read.value;
}

/** Tells bench marks from sums: see `readBookTable`. */
function withBenches(rows: readonly FieldRow[]): FieldRow[] {
  const between = rows.slice(1, -1).some((row) => row.written !== undefined);
  return rows.map((row, at) => {
    const isBench = at === 0 || (at === rows.length - 1 && !between) || row.foresight === undefined;
    if (row.written === undefined || !isBench || row.intermediate !== undefined) return row;
    const { written, ...rest } = row;
    return { ...rest, known: written };
  });
}
