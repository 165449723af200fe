/**
 * `--section`, `--at`, `--contours` and `--mesh`: one look at the ground at one stage, as one JSON
 * object. The objects are the engine's own: `Section`, `Column`, `StageContours` and `PrintedMesh`.
 */
import {
  columnAt,
  sectionAlong,
  stageContours,
  stageMesh,
  STAGES,
  type GroundMesh,
  type Stage,
} from "../estimate/index.js";
import type { PlanPoint, Site } from "../site/index.js";

/** The flags as typed; undefined where a flag is absent. */
export interface ReadingFlags {
  section?: string | undefined;
  at?: string | undefined;
  contours?: string | undefined;
  mesh?: boolean | undefined;
  stage?: string | undefined;
}

/** A look at the ground that can be printed. */
export type Reading =
  | { by: "section"; line: readonly PlanPoint[]; stage: Stage }
  | { by: "at"; place: PlanPoint; stage: Stage }
  | { by: "contours"; step: number; stage: Stage }
  | { by: "mesh"; stage: Stage };

/** What was typed cannot be used: one line that names the flag and the mend. */
export class UnusableFlag extends Error {}

/** A `GroundMesh` in plain arrays, as `--mesh` prints it. */
export interface PrintedMesh {
  format: "bankyard-mesh";
  version: 1;
  site: string;
  scheme: string;
  stage: Stage;
  /** Site coordinates of the local origin, m: site = origin + position. */
  origin: readonly number[];
  /** x, y, z per corner, m from `origin`; every three corners are a triangle. Nine digits. */
  positions: readonly number[];
  /** Unit normal per corner. */
  normals: readonly number[];
  /** Material ids that `materialOf` points into, one number per corner. */
  materials: readonly string[];
  materialOf: readonly number[];
  /** Per corner: 0 as found, 1 dug, 2 put in, 3 the side of the block at the survey's edge. */
  faceOf: readonly number[];
  /** Crisp edges: x, y, z of both ends of each. */
  edges: readonly number[];
}

/** More contour levels than this over the relief are a slip of the pen. */
const MOST_LEVELS = 2000;

/**
 * What the flags ask for; null when they ask for no reading. Without `--stage` it is the last
 * stage, the whole job done. Throws `UnusableFlag`.
 */
export function readingOf(flags: ReadingFlags): Reading | null {
  const { section, at, contours, mesh } = flags;
  const asked = [
    section !== undefined && "--section",
    at !== undefined && "--at",
    contours !== undefined && "--contours",
    mesh === true && "--mesh",
  ].filter((flag) => flag !== false);
  if (asked.length > 1) {
    throw new UnusableFlag(`${asked.join(" and ")}: each prints its own object; give one of them`);
  }
  if (asked.length === 0) {
    if (flags.stage === undefined) return null;
    throw new UnusableFlag("--stage: goes with --section, --at, --contours or --mesh; add one");
  }
  const stage = stageOf(flags.stage);
  if (section !== undefined) return { by: "section", line: lineOf(section), stage };
  if (at !== undefined) return { by: "at", place: placeOf(at), stage };
  if (contours !== undefined) return { by: "contours", step: stepOf(contours), stage };
  return { by: "mesh", stage };
}

/** The object that a reading prints. Throws `UnusableFlag` where it meets no ground. */
export function readGround(site: Site, scheme: string, reading: Reading): object {
  const { stage } = reading;
  switch (reading.by) {
    case "section": {
      const section = sectionAlong(site, scheme, stage, reading.line);
      if (section.areas.length === 0) throw beyond("--section", "a line over it", site);
      return section;
    }
    case "at": {
      const column = columnAt(site, scheme, stage, reading.place);
      if (!column) throw beyond("--at", "a place on it", site);
      return column;
    }
    case "contours":
      checkStep(site, reading.step);
      return stageContours(site, scheme, stage, reading.step);
    case "mesh":
      return printedMesh(site, scheme, stage, stageMesh(site, scheme, stage));
  }
}

/**
 * The same arguments with a value that starts with a minus sign tied to its flag: `--at -3,4` would
 * otherwise be read as two flags.
 */
export function tiedArguments(argv: readonly string[]): string[] {
  const out: string[] = [];
  for (const word of argv) {
    const flag = out[out.length - 1];
    const takesNumbers = flag === "--section" || flag === "--at" || flag === "--contours";
    if (takesNumbers && /^-[\d.]/.test(word)) out[out.length - 1] = `${flag}=${word}`;
    else out.push(word);
  }
  return out;
}

function stageOf(typed: string | undefined): Stage {
  if (typed === undefined) return "backfilled";
  const stage = STAGES.find((each) => each === typed);
  if (stage) return stage;
  throw new UnusableFlag(
    `--stage: no stage is called "${typed}"; use one of: ${STAGES.join(", ")}`,
  );
}

function lineOf(typed: string): PlanPoint[] {
  const numbers = numbersOf(typed);
  if (!numbers || numbers.length < 4 || numbers.length % 2 === 1) {
    throw new UnusableFlag(
      `--section: "${typed}" is no line; give x and y in metres of two or more places, as in 0,0,10,5;20,5`,
    );
  }
  const line = Array.from({ length: numbers.length / 2 }, (_, i): PlanPoint => [
    numbers[2 * i]!,
    numbers[2 * i + 1]!,
  ]);
  const first = line[0]!;
  if (line.every(([x, y]) => Math.hypot(x - first[0], y - first[1]) < 1e-6)) {
    throw new UnusableFlag(`--section: all places of "${typed}" are one; give two different ones`);
  }
  return line;
}

function placeOf(typed: string): PlanPoint {
  const numbers = numbersOf(typed);
  if (numbers?.length === 2) return [numbers[0]!, numbers[1]!];
  throw new UnusableFlag(`--at: "${typed}" is no place; give x and y in metres, as in 12.5,-3`);
}

function stepOf(typed: string): number {
  const [step, ...more] = numbersOf(typed) ?? [];
  if (step !== undefined && more.length === 0 && step > 0) return step;
  throw new UnusableFlag(
    `--contours: "${typed}" is no step; give metres between levels, more than 0, as in 0.5`,
  );
}

function checkStep(site: Site, step: number): void {
  const heights = site.survey.points.map((point) => point.z);
  const relief = heights.reduce((most, z) => Math.max(most, z), -Infinity);
  const least = heights.reduce((low, z) => Math.min(low, z), Infinity);
  if ((relief - least) / step <= MOST_LEVELS) return;
  const enough = Number(((relief - least) / MOST_LEVELS).toPrecision(2));
  throw new UnusableFlag(
    `--contours: ${step} m gives more than ${MOST_LEVELS} levels on this ground; use ${enough} or more`,
  );
}

/** Numbers parted by commas, semicolons or blanks; null when one of them is none. */
function numbersOf(typed: string): number[] | null {
  const words = typed.trim().split(/\s*[,;]\s*|\s+/);
  const numbers = words.map((word) => (word === "" ? NaN : Number(word)));
  return numbers.every(Number.isFinite) ? numbers : null;
}

function beyond(flag: string, wanted: string, site: Site): UnusableFlag {
  const { points } = site.survey;
  const range = (axis: "x" | "y"): string => {
    const low = points.reduce((least, point) => Math.min(least, point[axis]), Infinity);
    const high = points.reduce((most, point) => Math.max(most, point[axis]), -Infinity);
    return `${axis} ${Number(low.toFixed(3))} to ${Number(high.toFixed(3))}`;
  };
  return new UnusableFlag(
    `${flag}: lies beyond the survey; give ${wanted} (its points span ${range("x")}, ${range("y")} m)`,
  );
}

function printedMesh(site: Site, scheme: string, stage: Stage, mesh: GroundMesh): PrintedMesh {
  return {
    format: "bankyard-mesh",
    version: 1,
    site: site.name,
    scheme,
    stage,
    origin: mesh.origin,
    positions: printed(mesh.positions),
    normals: printed(mesh.normals),
    materials: mesh.materials,
    materialOf: Array.from(mesh.materialOf),
    faceOf: Array.from(mesh.faceOf),
    edges: printed(mesh.edges),
  };
}

/** 32-bit numbers in the nine digits that they hold. */
function printed(numbers: Float32Array): number[] {
  return Array.from(numbers, (each) => Number(each.toPrecision(9)));
}
