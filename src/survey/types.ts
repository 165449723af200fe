import type { SurveyPoint } from "../site/index.js";

/** Unit of the numbers in a table; `us-survey-ft` is 1200/3937 m, for older US surveys. */
export type SurveyUnit = "m" | "ft" | "us-survey-ft";

/** What parts the cells of a line; `space` is any run of spaces. */
export type Delimiter = "," | ";" | "\t" | "space";

/** One line of a table: `line` counts from 1 in the text as given. */
export interface TableRow {
  line: number;
  cells: readonly string[];
}

/** What a column of a point table holds. */
export type ColumnRole = "id" | "east" | "north" | "elevation" | "note" | "ignore";

/** A guess at a column: `header` names it, `contents` show it, or only its `order` suggests it. */
export interface ColumnGuess {
  role: ColumnRole;
  from: "header" | "contents" | "order";
  /** `sure` needs no question; a `guess` should be confirmed with the terrain in sight. */
  sure: "sure" | "likely" | "guess";
  /** The header's own words, where there is one. */
  name?: string;
}

/** Something a person must confirm before the points are used. */
export interface TableQuestion {
  code: "axis-order" | "columns" | "decimal-comma";
  /** Columns concerned, from 0. */
  columns: readonly number[];
  text: string;
}

/** A point table, split and guessed at; nothing is dropped but blank and `#` lines. */
export interface TablePreview {
  delimiter: Delimiter;
  decimal: "." | ",";
  headerRow?: TableRow;
  columns: readonly ColumnGuess[];
  rows: readonly TableRow[];
  /** The unit that the header names, if it does. */
  unit?: SurveyUnit;
  ask: readonly TableQuestion[];
}

/** A row that cannot be used: the person decides whether to leave it out or mend it. */
export interface BadRow {
  /** Line in the text as given, from 1. */
  row: number;
  text: string;
  reason: string;
}

export type SurveyProblemCode =
  | "empty"
  | "one-column"
  | "too-few-columns"
  | "roles"
  | "too-few-points"
  | "one-line"
  | "degrees"
  | "tiny"
  | "far-point"
  | "odd-elevation"
  | "unclear-columns"
  | "no-bench"
  | "unknown-station"
  | "no-backsight"
  | "no-foresight"
  | "bad-setting";

/** Something wrong with what was brought. `stops`: no ground can be made of it as it stands. */
export interface SurveyProblem {
  code: SurveyProblemCode;
  stops: boolean;
  text: string;
  mend: string;
  /** Lines concerned, from 1. */
  lines?: readonly number[];
}

/** Two or more rows with one name, or at one place in plan (within 1 mm). */
export interface Duplicate {
  kind: "id" | "place";
  id: string;
  lines: readonly number[];
  /** Greatest difference of elevation among them, m. */
  apart: number;
}

/** A suggested local origin for coordinates that are too large to draw exactly. */
export interface OriginShift {
  /** What to take off, m. */
  x: number;
  y: number;
  /** The same in the table's own unit: a multiple of 1,000. */
  inUnit: { x: number; y: number };
  /** The points with it taken off, m. */
  points: readonly SurveyPoint[];
}

/** Points from a table, in metres as given (before any shift), with all there is to say of them. */
export interface PointsRead {
  points: readonly SurveyPoint[];
  bad: readonly BadRow[];
  duplicates: readonly Duplicate[];
  problems: readonly SurveyProblem[];
  offset?: OriginShift;
}
