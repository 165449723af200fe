import type { ColumnRole, FieldRow, SurveyUnit } from "../../survey/index.js";
import type { Site } from "../../site/index.js";
import { distance, length } from "../../units/index.js";
import { words } from "../../words/index.js";

/** One line of a field book as typed. */
export interface BookLine {
  station: string;
  backsight: string;
  foresight: string;
  /** Known elevation of a bench mark. */
  known: string;
  x: string;
  y: string;
}

/** All that is typed for a new site, before there is one. */
export interface Draft {
  way: "table" | "book";
  text: string;
  /** Roles as confirmed; null takes the guesses. */
  roles: readonly ColumnRole[] | null;
  /** Whether somebody said which column is east and which north, where no header says it. */
  axesKnown: boolean;
  unit: SurveyUnit;
  /** Whether the unit was chosen, or told by the table itself: metres taken for feet are a third. */
  unitKnown: boolean;
  leaveOut: boolean;
  book: readonly BookLine[];
  /** Length of the levelling from first to last sight, as typed; empty takes the places' own. */
  runLength: string;
  name: string;
  units: Site["units"];
  under: "unknown" | "probe";
  topsoil: string;
  soil: string;
  soilMaterial: string;
  /** Empty until somebody says how it digs. */
  rockMaterial: string;
  /** Where the probe was dug, in the points' own numbers; empty takes their middle. */
  probeEast: string;
  probeNorth: string;
}

/** A line of the book with nothing on it. */
export const EMPTY_LINE: BookLine = {
  station: "",
  backsight: "",
  foresight: "",
  known: "",
  x: "",
  y: "",
};

/** A draft with nothing typed. */
export const EMPTY_DRAFT: Draft = {
  way: "table",
  text: "",
  roles: null,
  axesKnown: false,
  unit: "ft",
  unitKnown: false,
  leaveOut: false,
  book: Array.from({ length: 6 }, () => EMPTY_LINE),
  runLength: "",
  name: words.startPage.mySite,
  units: "us",
  under: "unknown",
  topsoil: "",
  soil: "",
  soilMaterial: "common-earth",
  rockMaterial: "",
  probeEast: "",
  probeNorth: "",
};

const bareUnitOf = (unit: SurveyUnit): "m" | "ft" => (unit === "m" ? "m" : "ft");
/** A US survey foot differs from the foot by 2 in a million: 1200/3937 m against 0.3048 m. */
const SURVEY_FOOT = 1200 / 3937 / 0.3048;

/** A reading typed in the book's unit, to m; null when empty, or why it was not understood. */
export function readingOf(text: string, unit: SurveyUnit): number | null | { wrong: string } {
  if (text.trim() === "") return null;
  const parsed = distance.parse(text, unit === "m" ? "metric" : "us", {
    bareUnit: bareUnitOf(unit),
  });
  if (!parsed.ok) return { wrong: parsed.text };
  return unit === "us-survey-ft" ? parsed.value * SURVEY_FOOT : parsed.value;
}

/** The typed lines as field rows in m, with what could not be understood by line number. */
export function fieldRows(
  lines: readonly BookLine[],
  unit: SurveyUnit,
): { rows: FieldRow[]; wrong: { line: number; text: string }[] } {
  const wrong: { line: number; text: string }[] = [];
  const rows: FieldRow[] = [];
  lines.forEach((line, index) => {
    if (Object.values(line).every((cell: string) => cell.trim() === "")) return;
    const row: FieldRow = { station: line.station.trim(), line: index + 1 };
    if (row.station === "") wrong.push({ line: index + 1, text: words.startPage.stationHasNoName });
    for (const key of ["backsight", "foresight", "known", "x", "y"] as const) {
      const reading = readingOf(line[key], unit);
      if (reading === null) continue;
      if (typeof reading === "number") row[key] = reading;
      else wrong.push({ line: index + 1, text: reading.wrong });
    }
    rows.push(row);
  });
  return { rows, wrong };
}

/** A thickness as typed, in m. An empty one is asked for: only a 0 that is typed means none. */
export function thicknessOf(
  text: string,
  units: Site["units"],
): { ok: true; value: number } | { ok: false; text: string } {
  if (text.trim() !== "") return length.parse(text, units);
  return { ok: false, text: words.startPage.typeHowThickProbe };
}

/** Whether anything has been typed or pasted that would have to be typed again. */
export function hasTyping(draft: Draft): boolean {
  const texts = [
    ...[draft.text, draft.runLength, draft.topsoil, draft.soil, draft.probeEast, draft.probeNorth],
  ];
  const cells = draft.book.flatMap(({ station, backsight, foresight, known, x, y }) => [
    ...[station, backsight, foresight, known, x, y],
  ]);
  const isTyped = (text: string): boolean => text.trim() !== "";
  return draft.name !== EMPTY_DRAFT.name || texts.some(isTyped) || cells.some(isTyped);
}
