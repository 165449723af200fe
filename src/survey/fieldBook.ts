import type { Outcome, SurveyPoint } from "../site/index.js";
import { FOOT } from "../units/index.js";
import type { SurveyProblem } from "./types.js";

/**
 * One line of a builder's-level book, in metres. A line with a backsight begins a set-up of the
 * level: on a turning point beside its foresight, or on a line of its own at a station of known
 * elevation. Foresights without a backsight read the ground from the set-up as it stands.
 */
export interface FieldRow {
  station: string;
  backsight?: number;
  /** A sight to ground that nothing is carried on from. */
  intermediate?: number;
  foresight?: number;
  /** Known elevation of the station (a bench mark), not one worked out from this book. */
  known?: number;
  /** Elevation that the person worked out by hand; compared, never used. */
  written?: number;
  x?: number;
  y?: number;
  /** From the level to the rod, m and degrees clockwise from north, at this line's last sight. */
  distance?: number;
  bearing?: number;
  /** The same for the backsight of a line that has both sights. */
  backDistance?: number;
  backBearing?: number;
  note?: string;
  /** Line in the text, from 1. */
  line?: number;
}

/**
 * Allowed misclosure of third-order levelling: 12 mm × √(length in km). Federal Geodetic Control
 * Committee, *Standards and Specifications for Geodetic Control Networks*, 1984 (second-hand).
 */
export const THIRD_ORDER = 0.012;

/** Settings of a book; lengths in metres. */
export interface FieldBookOptions {
  /** Elevation of the first station, when its line does not give it. */
  bench?: number;
  /** Allowed misclosure per √km, m; `THIRD_ORDER` unless set. */
  closurePerRootKm?: number;
  /** Length of the level run, m; else from the positions of the stations that carry it on. */
  runLength?: number;
  /** Place of the first set-up, for distances and bearings; [0, 0] unless set. */
  instrument?: readonly [number, number];
}

/** A station with its elevation, m. */
export interface LevelStation {
  station: string;
  kind: "bench" | "turning" | "ground";
  elevation: number;
  /** Height of instrument that it was read from; a bench has none. */
  readFrom?: number;
  /** Height of instrument that its backsight gives. */
  hi?: number;
  x?: number;
  y?: number;
  note?: string;
  line?: number;
}

/** The page check: ΣBS − ΣFS over the sights that carry the run on must be last − first. */
export interface BookCheck {
  backsights: number;
  foresights: number;
  /** Last elevation less first, over each unbroken run. */
  rise: number;
  ok: boolean;
}

/** The run ended on a known elevation. `allowed` and `ok` only where its length is known. */
export interface Closure {
  station: string;
  known: number;
  /** Found less known, m. */
  misclose: number;
  length?: number;
  allowed?: number;
  ok?: boolean;
  source: string;
}

/** A book worked out, elevations in metres. */
export interface BookReading {
  stations: readonly LevelStation[];
  check: BookCheck;
  closure?: Closure;
  /** Stations that have a place in plan, each once. */
  points: readonly SurveyPoint[];
  /** Stations that have an elevation but no place in plan. */
  unplaced: readonly string[];
  problems: readonly SurveyProblem[];
}

/** Elevations by hand are compared to this, m: half of the coarsest rod division in use, 0.01 ft. */
const WRITTEN_TOLERANCE = 0.002;

interface SetUp {
  hi: number;
  at?: readonly [number, number];
}

/** The book while it is being worked through. */
interface Work {
  options: FieldBookOptions;
  stations: LevelStation[];
  problems: SurveyProblem[];
  level?: SetUp;
  /** Last foresight of the run, not yet counted in the check. */
  pending?: { station: string; reading: number; elevation: number };
  /** Elevation where the unbroken run began. */
  start: number;
  sums: { backsights: number; foresights: number; rise: number };
  /** Stations that carry the run on, in order. */
  carried: LevelStation[];
}

/**
 * Works out a level book: height of instrument = elevation + backsight; elevation = height of
 * instrument − foresight; ΣBS − ΣFS = last − first (US Navy, *Engineering Aid Basic*, NAVEDTRA
 * 14071, ch. 7). Fails when a station that the run hangs on has no elevation or the level no
 * backsight. `closure` is there when the last station read is a known one.
 */
export function readFieldBook(
  rows: readonly FieldRow[],
  options: FieldBookOptions = {},
): Outcome<BookReading, SurveyProblem> {
  const work: Work = {
    options,
    stations: [],
    problems: [],
    start: NaN,
    sums: { backsights: 0, foresights: 0, rise: 0 },
    carried: [],
  };
  if (rows.length === 0)
    return {
      ok: false,
      problems: [problem("empty", rows[0], "the book is empty", "enter the first backsight")],
    };
  const settings = [options.closurePerRootKm ?? 0, options.runLength ?? 0, options.bench ?? 0];
  if (!settings.every(Number.isFinite) || settings.slice(0, 2).some((setting) => setting < 0)) {
    const text = "a setting of the book is not a usable number";
    return { ok: false, problems: [problem("bad-setting", undefined, text, "enter it again")] };
  }
  for (const [index, row] of rows.entries()) {
    const fault = takeRow(work, row, index === 0);
    if (fault !== undefined) return { ok: false, problems: [fault] };
  }
  endRun(work);
  return { ok: true, value: bookReading(work, rows) };
}

function problem(
  code: SurveyProblem["code"],
  row: FieldRow | undefined,
  text: string,
  mend: string,
  stops = true,
): SurveyProblem {
  const lines = row?.line === undefined ? {} : { lines: [row.line] };
  return { code, stops, text, mend, ...lines };
}

/** Takes one line: first the sight that gives its elevation, then its backsight. */
function takeRow(work: Work, row: FieldRow, first: boolean): SurveyProblem | undefined {
  const readings = [row.backsight, row.intermediate, row.foresight, row.known];
  if (readings.some((reading) => reading !== undefined && !Number.isFinite(reading))) {
    return problem(
      "bad-setting",
      row,
      `a reading at ${row.station} is not a number`,
      "enter it again",
    );
  }
  const sight = row.foresight ?? row.intermediate;
  if (sight !== undefined) {
    if (work.level === undefined) {
      const text = `${row.station} is read before any backsight`;
      return problem("no-backsight", row, text, "begin with a backsight on the bench mark");
    }
    readGround(work, row, sight, work.level);
  }
  if (row.backsight !== undefined) return setUp(work, row, row.backsight, first);
  return undefined;
}

function readGround(work: Work, row: FieldRow, sight: number, level: SetUp): void {
  const elevation = level.hi - sight;
  const turning = row.foresight !== undefined && row.backsight !== undefined;
  const place = placeOf(row, level.at);
  const station: LevelStation = {
    station: row.station,
    kind: turning ? "turning" : "ground",
    elevation,
    readFrom: level.hi,
    ...place,
    ...(row.note === undefined ? {} : { note: row.note }),
    ...(row.line === undefined ? {} : { line: row.line }),
  };
  work.stations.push(station);
  if (row.foresight !== undefined) {
    work.pending = { station: row.station, reading: row.foresight, elevation };
  }
  if (row.written !== undefined && Math.abs(row.written - elevation) > WRITTEN_TOLERANCE) {
    const text = `${row.station} was written as ${inBoth(row.written)} but works out at ${inBoth(elevation)}`;
    work.problems.push(problem("bad-setting", row, text, "check the readings and the sum", false));
  }
}

/** Place in plan: as given, or by distance and bearing from the level. */
function placeOf(
  row: FieldRow,
  level: readonly [number, number] | undefined,
): { x: number; y: number } | Record<string, never> {
  if (row.x !== undefined && row.y !== undefined) return { x: row.x, y: row.y };
  if (level === undefined || row.distance === undefined || row.bearing === undefined) return {};
  const [x, y] = offsetBy(level, row.distance, row.bearing);
  return { x, y };
}

function offsetBy(
  from: readonly [number, number],
  distance: number,
  bearing: number,
): readonly [number, number] {
  const angle = (bearing * Math.PI) / 180;
  return [from[0] + distance * Math.sin(angle), from[1] + distance * Math.cos(angle)];
}

/** Sets the level up by a backsight on a station whose elevation is known by now. */
function setUp(
  work: Work,
  row: FieldRow,
  backsight: number,
  first: boolean,
): SurveyProblem | undefined {
  const bench = row.known ?? (first ? work.options.bench : undefined) ?? benchOf(work, row);
  const earlier = work.stations.findLast((station) => station.station === row.station);
  const useBench = bench !== undefined && row.foresight === undefined;
  const station = useBench ? benchStation(work, row, bench) : earlier;
  if (station === undefined) {
    return first
      ? problem(
          "no-bench",
          row,
          `${row.station} has no elevation`,
          "enter the bench mark's elevation",
        )
      : problem(
          "unknown-station",
          row,
          `${row.station} is sighted back on, but nothing says its elevation`,
          "give its elevation, or read it from the set-up before",
        );
  }
  carryOn(work, station, row);
  const hi = station.elevation + backsight;
  station.hi = hi;
  work.sums.backsights += backsight;
  const at = levelPlace(work, row, station);
  work.level = at === undefined ? { hi } : { hi, at };
  return undefined;
}

/** Elevation of a bench mark sighted back on again: known, so better than one found by the run. */
function benchOf(work: Work, row: FieldRow): number | undefined {
  return work.stations.find(
    (station) => station.kind === "bench" && station.station === row.station,
  )?.elevation;
}

function benchStation(work: Work, row: FieldRow, elevation: number): LevelStation {
  const isFirst = work.stations.length === 0;
  const firstLevel =
    isFirst && row.x === undefined ? (work.options.instrument ?? [0, 0]) : undefined;
  const station: LevelStation = {
    station: row.station,
    kind: "bench",
    elevation,
    ...placeOf(row, firstLevel),
    ...(row.note === undefined ? {} : { note: row.note }),
    ...(row.line === undefined ? {} : { line: row.line }),
  };
  work.stations.push(station);
  return station;
}

/** Counts the foresight that the new set-up hangs on, or ends the run and begins another. */
function carryOn(work: Work, station: LevelStation, row: FieldRow): void {
  const readFrom = station.readFrom;
  const inThisSetUp = readFrom !== undefined && readFrom === work.level?.hi;
  if (inThisSetUp) {
    work.sums.foresights += readFrom - station.elevation;
    if (station.kind === "ground") station.kind = "turning";
  } else {
    endRun(work, row);
    work.start = station.elevation;
  }
  delete work.pending;
  work.carried.push(station);
  // The run's rise is added when it ends; until then it hangs on this station.
}

/** Counts the last foresight of an unbroken run, and the run's rise. */
function endRun(work: Work, row?: FieldRow): void {
  if (work.level === undefined) return;
  if (work.pending === undefined) {
    const last = work.carried.at(-1);
    const text = `nothing was read after the backsight on ${last?.station ?? "the bench"}`;
    work.problems.push(
      problem("no-foresight", row, text, "add the foresight, or take the line out", false),
    );
    work.sums.backsights -= (last?.hi ?? 0) - (last?.elevation ?? 0);
    work.sums.rise += (last?.elevation ?? 0) - work.start;
    return;
  }
  work.sums.foresights += work.pending.reading;
  work.sums.rise += work.pending.elevation - work.start;
}

/** Where the level stands: back along the backsight from its station, or the first place given. */
function levelPlace(
  work: Work,
  row: FieldRow,
  station: LevelStation,
): readonly [number, number] | undefined {
  const turning = row.foresight !== undefined;
  const distance = row.backDistance ?? (turning ? undefined : row.distance);
  const bearing = row.backBearing ?? (turning ? undefined : row.bearing);
  const hasPlace = station.x !== undefined && station.y !== undefined;
  if (hasPlace && distance !== undefined && bearing !== undefined) {
    return offsetBy([station.x ?? 0, station.y ?? 0], -distance, bearing);
  }
  return work.level === undefined ? (work.options.instrument ?? [0, 0]) : undefined;
}

function bookReading(work: Work, rows: readonly FieldRow[]): BookReading {
  const { backsights, foresights, rise } = work.sums;
  const scale = Math.max(1, Math.abs(backsights), Math.abs(foresights), Math.abs(work.start));
  const ok = Math.abs(backsights - foresights - rise) <= scale * 1e-9;
  const closure = closureOf(work, rows);
  const placed = new Map<string, SurveyPoint>();
  const unplaced = new Set<string>();
  for (const { station, elevation, x, y, note } of work.stations) {
    if (x === undefined || y === undefined) unplaced.add(station);
    // A station read again, such as the bench at the end, keeps its first elevation.
    else if (!placed.has(station)) {
      placed.set(station, {
        id: station,
        x,
        y,
        z: elevation,
        ...(note === undefined ? {} : { note }),
      });
    }
  }
  return {
    stations: work.stations,
    check: { backsights, foresights, rise, ok },
    ...(closure === undefined ? {} : { closure }),
    points: [...placed.values()],
    unplaced: [...unplaced].filter((station) => !placed.has(station)),
    problems: work.problems,
  };
}

/** The misclosure at the last foresight, when its station's elevation is known. */
function closureOf(work: Work, rows: readonly FieldRow[]): Closure | undefined {
  const last = rows.findLast((row) => row.foresight !== undefined && row.backsight === undefined);
  const found = work.stations.findLast((station) => station.station === last?.station);
  if (last === undefined || found?.readFrom === undefined) return undefined;
  const bench = work.stations.find(
    (station) => station.kind === "bench" && station.station === last.station,
  );
  const known = last.known ?? bench?.elevation;
  if (known === undefined) return undefined;
  const perRootKm = work.options.closurePerRootKm ?? THIRD_ORDER;
  const misclose = found.elevation - known;
  const length =
    work.options.runLength ??
    lengthOf([...work.carried, { ...found, ...closingPlace(found, bench) }]);
  const source =
    perRootKm === THIRD_ORDER
      ? "third order, 12 mm × √km: FGCC, Standards and Specifications for Geodetic Control Networks, 1984"
      : "the closure set for this book";
  const closing = { station: last.station, known, misclose, source };
  if (length === undefined) return closing;
  const allowed = perRootKm * Math.sqrt(length / 1000);
  return { ...closing, length, allowed, ok: Math.abs(misclose) <= allowed };
}

function closingPlace(
  found: LevelStation,
  bench: LevelStation | undefined,
): Pick<LevelStation, "x" | "y"> {
  if (found.x !== undefined || bench?.x === undefined || bench.y === undefined) return {};
  return { x: bench.x, y: bench.y };
}

/** Length in plan through stations in order, m; undefined when one has no place or it is zero. */
function lengthOf(stations: readonly LevelStation[]): number | undefined {
  let length = 0;
  let from: LevelStation | undefined;
  for (const station of stations) {
    if (station.x === undefined || station.y === undefined) return undefined;
    if (from !== undefined)
      length += Math.hypot(station.x - (from.x ?? 0), station.y - (from.y ?? 0));
    from = station;
  }
  return length > 0 ? length : undefined;
}

/** An elevation, m, in both systems: a book is read before its site's units are chosen. */
function inBoth(metres: number): string {
  return `${metres.toFixed(3)} m (${(metres / FOOT).toFixed(2)} ft)`;
}
