/**
 * Readers of what people bring: a table of spot elevations, or a builder's-level field book.
 *
 *     const table = readPointTable(text);                 // split and guessed; ask the person
 *     const roles = table.value.columns.map((c) => c.role); // as confirmed or changed
 *     const read = pointsFromTable(table.value, roles, "ft");
 *     read.points, read.bad, read.duplicates, read.problems, read.offset?.points
 *
 *     const book = readBookTable(text, { unit: "ft" });   // or rows typed in a form
 *     const levels = readFieldBook(book.value.rows, { bench: 100 });
 *     levels.value.stations, .check, .closure, .points
 */
export { readPointTable } from "./pointTable.js";
export type { PointTableOptions } from "./pointTable.js";
export { metresIn, pointsFromTable } from "./points.js";
export { readFieldBook, THIRD_ORDER } from "./fieldBook.js";
export type {
  BookCheck,
  BookReading,
  Closure,
  FieldBookOptions,
  FieldRow,
  LevelStation,
} from "./fieldBook.js";
export { readBookTable } from "./bookTable.js";
export type { BookRole, BookTable, BookTableOptions } from "./bookTable.js";
export type {
  BadRow,
  ColumnGuess,
  ColumnRole,
  Delimiter,
  Duplicate,
  OriginShift,
  PointsRead,
  SurveyProblem,
  SurveyProblemCode,
  SurveyUnit,
  TablePreview,
  TableQuestion,
  TableRow,
} from "./types.js";
export { readCourses } from "./courses.js";
export type { Course, CourseProblem } from "./courses.js";
export {
  balanced,
  COMPASS_RULE,
  legOf,
  lotCorners,
  ringArea,
  runTraverse,
  sidesOf,
} from "./traverse.js";
export type { Traverse } from "./traverse.js";
export { kindIn, readGeoJson } from "./geoJsonIn.js";
export type { EarthOutline, GeoProblem } from "./geoJsonIn.js";
export { limitFrom, originFrom, writeGeoJson } from "./earthLimits.js";
export { toEarth, toPlane } from "./onEarth.js";
export type { EarthPlace } from "./onEarth.js";
export { joinSetbacks, leftOut, readSetbacks } from "./setbackTable.js";
export type { SetbackRows } from "./setbackTable.js";
