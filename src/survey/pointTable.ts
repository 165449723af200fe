import type { Outcome } from "../site/index.js";
import { cellNumber, decimalMark, looksNumeric, splitTable } from "./delimited.js";
import type { SplitTable } from "./delimited.js";
import { headerRole, headerUnit } from "./headerWords.js";
import type {
  ColumnGuess,
  ColumnRole,
  Delimiter,
  SurveyProblem,
  TablePreview,
  TableQuestion,
  TableRow,
} from "./types.js";

const SAMPLE_ROWS = 400;
const MOSTLY = 0.6;
const COORDINATES = ["east", "north", "elevation"] as const;

/** What a person has already said of the table, overriding the guesses. */
export interface PointTableOptions {
  delimiter?: Delimiter;
  decimal?: "." | ",";
  /** Whether the first row is a header. */
  header?: boolean;
}

/**
 * Splits a table of spot elevations and guesses its columns, for a person to confirm. Fails only
 * when no row has three numbers to make a point of; single bad rows are left to `pointsFromTable`.
 */
export function readPointTable(
  text: string,
  options: PointTableOptions = {},
): Outcome<TablePreview, SurveyProblem> {
  const split = splitTable(text, options.delimiter);
  if (split.rows.length === 0) {
    return failed("empty", "there are no rows to read", "paste one point on each line");
  }
  const sample = split.rows.slice(0, SAMPLE_ROWS);
  if (sample.every((row) => row.cells.length === 1)) {
    return failed(
      "one-column",
      "each line holds a single column",
      "part the columns with commas, tabs, semicolons or spaces",
    );
  }
  const { header, rows: untidy } = partHeader(split, options.header);
  const rows = split.delimiter === "space" ? joinNotes(untidy, header) : untidy;
  const sampled = rows.slice(0, SAMPLE_ROWS);
  const mark =
    split.delimiter === ","
      ? { decimal: "." as const, unclear: false }
      : decimalMark(sampled.flatMap((row) => row.cells));
  const decimal = options.decimal ?? mark.decimal;
  const numeric = numericColumns(sampled, decimal);
  const named = header === undefined ? [] : rolesByHeader(header, numeric.length);
  const complete = COORDINATES.every((role) => named.includes(role));
  if (!complete && numeric.filter(Boolean).length < 3) {
    return failed(
      "too-few-columns",
      `only ${numeric.filter(Boolean).length} of ${numeric.length} columns hold numbers`,
      "each row needs two coordinates and an elevation",
    );
  }
  const columns = complete
    ? named.map((role, column) => labelled({ role, from: "header", sure: "sure" }, header, column))
    : rolesByPlace(sampled, numeric, decimal).map((guess, column) =>
        labelled(guess, header, column),
      );
  const unit = header === undefined ? undefined : headerUnit(header.cells);
  const ask = questions(columns, mark.unclear && options.decimal === undefined);
  return {
    ok: true,
    value: {
      delimiter: split.delimiter,
      decimal,
      ...(header === undefined ? {} : { headerRow: header }),
      columns,
      rows,
      ...(unit === undefined ? {} : { unit }),
      ask,
    },
  };
}

function failed(
  code: SurveyProblem["code"],
  text: string,
  mend: string,
): { ok: false; problems: SurveyProblem[] } {
  return { ok: false, problems: [{ code, stops: true, text, mend }] };
}

/** Takes the header off: the first row when it lacks numbers, or a `#` line of known words. */
function partHeader(
  split: SplitTable,
  asked: boolean | undefined,
): { header?: TableRow; rows: readonly TableRow[] } {
  const [first, ...rest] = split.rows;
  if (first === undefined || asked === false) return { rows: split.rows };
  const known = (row: TableRow) =>
    row.cells.filter((cell) => headerRole(cell) !== undefined).length;
  const numbers = (row: TableRow) => row.cells.filter(looksNumeric).length;
  const second = rest[0];
  const wordy =
    numbers(first) < 2 && (known(first) >= 2 || (second !== undefined && numbers(second) >= 3));
  if (asked === true || wordy) return { header: first, rows: rest };
  const comment = split.comment;
  if (comment?.cells.length === first.cells.length && known(comment) >= 2) {
    return { header: comment, rows: split.rows };
  }
  return { rows: split.rows };
}

/** With spaces between columns, a note of several words falls apart: joins it again. */
function joinNotes(rows: readonly TableRow[], header: TableRow | undefined): readonly TableRow[] {
  const sample = rows.slice(0, SAMPLE_ROWS);
  const widest = Math.max(...sample.map((row) => row.cells.length), 0);
  let columns = 0;
  for (let column = 0; column < widest; column += 1) {
    const numbers = sample.filter((row) => looksNumeric(row.cells[column] ?? "")).length;
    if (numbers >= sample.length * MOSTLY) columns = column + 1;
  }
  if (header !== undefined) columns = Math.max(columns, header.cells.length - 1);
  return rows.map((row) => {
    const note = row.cells.slice(columns).join(" ");
    return {
      line: row.line,
      cells: [...row.cells.slice(0, columns), ...(note === "" ? [] : [note])],
    };
  });
}

/** Which columns are numbers in most of the rows that have them filled. */
function numericColumns(rows: readonly TableRow[], decimal: "." | ","): boolean[] {
  const width = Math.max(...rows.map((row) => row.cells.length), 0);
  return Array.from({ length: width }, (_, column) => {
    const filled = rows.map((row) => row.cells[column] ?? "").filter((cell) => cell !== "");
    const numbers = filled.filter((cell) => cellNumber(cell, decimal) !== undefined);
    // Half of the rows at least, so that a stray number in a column of notes does not count.
    return numbers.length >= filled.length * MOSTLY && numbers.length * 2 >= rows.length;
  });
}

function labelled(guess: ColumnGuess, header: TableRow | undefined, column: number): ColumnGuess {
  const name = header?.cells[column] ?? "";
  return name === "" ? guess : { ...guess, name };
}

/** Roles that the header names, each but once; `ignore` where it names none. */
function rolesByHeader(header: TableRow, width: number): ColumnRole[] {
  const taken = new Set<ColumnRole>();
  return Array.from({ length: width }, (_, column) => {
    const role = headerRole(header.cells[column] ?? "");
    if (role === undefined || taken.has(role)) return "ignore";
    taken.add(role);
    return role;
  });
}

/** Roles by what the columns hold and the orders in use: `id N E Z note`, `x y z`. */
function rolesByPlace(
  rows: readonly TableRow[],
  numeric: readonly boolean[],
  decimal: "." | ",",
): ColumnGuess[] {
  const guesses = numeric.map((): ColumnGuess => ({
    role: "ignore",
    from: "order",
    sure: "guess",
  }));
  const numbers = numeric.flatMap((isNumeric, column) => (isNumeric ? [column] : []));
  const before = numeric.indexOf(true);
  if (before > 0) guesses[before - 1] = { role: "id", from: "contents", sure: "likely" };
  const counted =
    numbers.length > 3 && before === 0 && countsPoints(rows, numbers[0] ?? 0, decimal);
  const id = counted ? numbers.shift() : undefined;
  if (id !== undefined) guesses[id] = { role: "id", from: "contents", sure: "likely" };
  const [first = 0, second = 0, third = 0] = numbers;
  const northFirst = northComesFirst(rows, [first, second], decimal, before > 0 || counted);
  guesses[first] = { role: northFirst ? "north" : "east", from: "order", sure: "guess" };
  guesses[second] = { role: northFirst ? "east" : "north", from: "order", sure: "guess" };
  guesses[third] = {
    role: "elevation",
    from: "order",
    sure: numbers.length === 3 ? "likely" : "guess",
  };
  const note = numeric.findIndex((isNumeric, column) => !isNumeric && column > third);
  if (note >= 0) guesses[note] = { role: "note", from: "contents", sure: "likely" };
  return guesses;
}

/** Whole numbers, each but once: a column of point numbers. */
function countsPoints(rows: readonly TableRow[], column: number, decimal: "." | ","): boolean {
  const found = rows.map((row) => cellNumber(row.cells[column] ?? "", decimal));
  const whole = found.filter((value) => value !== undefined && Number.isInteger(value));
  return whole.length >= rows.length * MOSTLY && new Set(whole).size >= whole.length * 0.95;
}

/**
 * Surveyors' files with a point number mostly give northing first, bare x y z tables easting first
 * (common practice, no source). Sizes that can only be a UTM pair (easting 100,000 to 900,000 m,
 * northing in millions) settle it.
 */
function northComesFirst(
  rows: readonly TableRow[],
  columns: readonly [number, number],
  decimal: "." | ",",
  numbered: boolean,
): boolean {
  const size = (column: number, least: number, most: number) =>
    rows.every((row) => {
      const value = cellNumber(row.cells[column] ?? "", decimal);
      return value === undefined || (value >= least && value <= most);
    });
  if (size(columns[0], 1e5, 9e5) && size(columns[1], 1e6, 1e7)) return false;
  if (size(columns[1], 1e5, 9e5) && size(columns[0], 1e6, 1e7)) return true;
  return numbered;
}

function questions(columns: readonly ColumnGuess[], unclearDecimal: boolean): TableQuestion[] {
  const ask: TableQuestion[] = [];
  const unsure = columns.flatMap((guess, column) => (guess.sure === "sure" ? [] : [column]));
  const axes = unsure.filter((column) => /^(east|north)$/.test(columns[column]?.role ?? ""));
  if (axes.length > 0) {
    const first = columns[axes[0] ?? 0]?.role === "north" ? "northing" : "easting";
    const text = `Is ${first} the first of the two coordinates? The wrong way round mirrors the ground.`;
    ask.push({ code: "axis-order", columns: axes, text });
  }
  const others = unsure.filter(
    (column) => columns[column]?.sure === "guess" && !axes.includes(column),
  );
  if (others.length > 0) {
    const text = "Say what these columns hold; only their order suggests it.";
    ask.push({ code: "columns", columns: others, text });
  }
  if (unclearDecimal) {
    const text = "Is the comma a decimal mark? 103,250 was read as 103.25.";
    ask.push({ code: "decimal-comma", columns: columns.map((_, column) => column), text });
  }
  return ask;
}
