import type { SurveyPoint } from "../site/index.js";
import { FOOT, US_SURVEY_FOOT } from "../units/index.js";
import { cellNumber } from "./delimited.js";
import { headerSaysDegrees } from "./headerWords.js";
import { layoutProblems } from "./layout.js";
import type { PlacedPoint } from "./layout.js";
import type {
  BadRow,
  ColumnRole,
  Duplicate,
  OriginShift,
  PointsRead,
  SurveyProblem,
  SurveyUnit,
  TablePreview,
  TableRow,
} from "./types.js";

const METRES: Readonly<Record<SurveyUnit, number>> = {
  m: 1,
  ft: FOOT,
  "us-survey-ft": US_SURVEY_FOOT,
};

/** Coordinates beyond this are drawn less exactly than a millimetre in 32 bits; m. */
const FAR_FROM_ORIGIN = 10_000;
/** A suggested origin is a multiple of this in the table's own unit. */
const ORIGIN_STEP = 1000;
const COORDINATES = [
  { name: "easting", role: "east", axis: "x" },
  { name: "northing", role: "north", axis: "y" },
  { name: "elevation", role: "elevation", axis: "z" },
] as const;
const SAME_PLACE = 0.001;

/** Metres in 1 of the table's unit. US survey foot: 1200/3937 m (NIST and NOAA, recalled). */
export function metresIn(unit: SurveyUnit): number {
  return METRES[unit];
}

/**
 * Points in metres from a table whose columns the person has confirmed. Rows that cannot be used are
 * in `bad`, never dropped in silence; problems with `stops` mean that no ground can be made.
 * Elevation, east and north must each be the role of just one column. Points without a name are
 * numbered; a repeated name gets ` (2)` and is reported.
 */
export function pointsFromTable(
  preview: TablePreview,
  roles: readonly ColumnRole[],
  unit: SurveyUnit,
): PointsRead {
  const unclear = roleProblem(roles);
  if (unclear !== undefined) return { points: [], bad: [], duplicates: [], problems: [unclear] };
  const column = {
    id: roles.indexOf("id"),
    east: roles.indexOf("east"),
    north: roles.indexOf("north"),
    elevation: roles.indexOf("elevation"),
    notes: roles.flatMap((role, at) => (role === "note" ? [at] : [])),
  };
  const bad: BadRow[] = [];
  const placed: PlacedPoint[] = [];
  for (const row of preview.rows) {
    const read = readRow(row, column, preview.decimal, metresIn(unit), placed.length + 1);
    if (typeof read === "string")
      bad.push({ row: row.line, text: row.cells.join(" | "), reason: read });
    else placed.push({ point: read, line: row.line });
  }
  const { named, repeated } = distinctNames(placed);
  const names = preview.columns.map((guess) => guess.name ?? "");
  const offset = originShift(named, unit);
  return {
    points: named.map(({ point }) => point),
    bad,
    duplicates: [...repeated, ...samePlaces(named)],
    problems: layoutProblems(named, headerSaysDegrees(names), metresIn(unit)),
    ...(offset === undefined ? {} : { offset }),
  };
}

function roleProblem(roles: readonly ColumnRole[]): SurveyProblem | undefined {
  const wrong = (["east", "north", "elevation"] as const).filter(
    (role) => roles.filter((given) => given === role).length !== 1,
  );
  if (wrong.length === 0) return undefined;
  const text = `${wrong.join(" and ")} must each be one column`;
  return { code: "roles", stops: true, text, mend: "choose a column for each" };
}

interface Columns {
  id: number;
  east: number;
  north: number;
  elevation: number;
  notes: readonly number[];
}

/** A point in metres, or the reason why there is none. */
function readRow(
  row: TableRow,
  column: Columns,
  decimal: "." | ",",
  metres: number,
  count: number,
): SurveyPoint | string {
  const point = { id: "", x: 0, y: 0, z: 0 };
  for (const { name, role, axis } of COORDINATES) {
    const cell = row.cells[column[role]] ?? "";
    const value = cellNumber(cell, decimal);
    if (cell === "") return `the ${name} is missing`;
    if (value === undefined) return `the ${name} “${cell}” is not a plain number`;
    point[axis] = value * metres;
  }
  const name = column.id < 0 ? "" : (row.cells[column.id] ?? "");
  point.id = name === "" ? String(count) : name;
  const note = column.notes
    .map((at) => row.cells[at] ?? "")
    .join(" ")
    .trim();
  return note === "" ? point : { ...point, note };
}

/** Gives each point a name of its own, and says which names were used more than once. */
function distinctNames(placed: readonly PlacedPoint[]): {
  named: PlacedPoint[];
  repeated: Duplicate[];
} {
  const byName = repeats(placed, ({ point }) => point.id);
  if (byName.size === 0) return { named: [...placed], repeated: [] };
  const used = new Set(placed.map(({ point }) => point.id));
  const seen = new Set<string>();
  const named = placed.map(({ point, line }) => {
    let id = point.id;
    for (let turn = 2; seen.has(id); turn += 1) {
      const next = `${point.id} (${turn})`;
      if (!used.has(next)) id = next;
    }
    used.add(id);
    seen.add(id);
    return id === point.id ? { point, line } : { point: { ...point, id }, line };
  });
  const repeated = [...byName].map(([id, group]) => duplicateOf("id", id, group));
  return { named, repeated };
}

/** Groups of two or more with one key; most keys are met once, so an array is made only then. */
function repeats<Key>(
  placed: readonly PlacedPoint[],
  keyOf: (placed: PlacedPoint) => Key,
): Map<Key, PlacedPoint[]> {
  const firsts = new Map<Key, PlacedPoint>();
  const groups = new Map<Key, PlacedPoint[]>();
  for (const one of placed) {
    const key = keyOf(one);
    const first = firsts.get(key);
    if (first === undefined) {
      firsts.set(key, one);
      continue;
    }
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [first, one]);
    else group.push(one);
  }
  return groups;
}

function duplicateOf(
  kind: Duplicate["kind"],
  id: string,
  group: readonly PlacedPoint[],
): Duplicate {
  const levels = group.map(({ point }) => point.z);
  const apart = Math.max(...levels) - Math.min(...levels);
  return { kind, id, lines: group.map(({ line }) => line), apart };
}

/** Points within a millimetre square of each other in plan. */
function samePlaces(placed: readonly PlacedPoint[]): Duplicate[] {
  const cell = (value: number) => Math.round(value / SAME_PLACE);
  const key = ({ point }: PlacedPoint) => `${cell(point.x)} ${cell(point.y)}`;
  return [...repeats(placed, key).values()].map((group) =>
    duplicateOf("place", group[0]?.point.id ?? "", group),
  );
}

/** A round local origin when the coordinates are large, such as UTM or state plane. */
function originShift(placed: readonly PlacedPoint[], unit: SurveyUnit): OriginShift | undefined {
  const points = placed.map(({ point }) => point);
  const least = { x: Infinity, y: Infinity };
  let furthest = 0;
  for (const { x, y } of points) {
    least.x = Math.min(least.x, x);
    least.y = Math.min(least.y, y);
    furthest = Math.max(furthest, Math.abs(x), Math.abs(y));
  }
  if (furthest <= FAR_FROM_ORIGIN) return undefined;
  const metres = metresIn(unit);
  const round = (value: number) => Math.floor(value / metres / ORIGIN_STEP) * ORIGIN_STEP;
  const inUnit = { x: round(least.x), y: round(least.y) };
  const x = inUnit.x * metres;
  const y = inUnit.y * metres;
  const shifted = points.map((point) => ({ ...point, x: point.x - x, y: point.y - y }));
  return { x, y, inUnit, points: shifted };
}
