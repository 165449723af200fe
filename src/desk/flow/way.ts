import { words } from "../../words/index.js";
import type { OutletJoint, PipeCheck, PressureResult } from "../parts.js";
import type { Tank, Work } from "../../site/index.js";

type Line = readonly (readonly [along: number, z: number])[];

/** One thing to draw; `heights` are all elevations that it reaches, m. */
export type WayPart = { heights: readonly number[] } & (
  | { kind: "ground" | "drain" | "main" | "energy"; line: Line }
  | { kind: "box"; from: number; to: number; bottom: number; top: number; water: boolean }
);

/** A place worth a number and a row of the table. */
export interface WayMark {
  name: string;
  along: number;
  z: number;
}

/** The way of the water unrolled: m along it, elevations in m. */
export interface Way {
  length: number;
  parts: WayPart[];
  marks: WayMark[];
  /** What each pipe does, in words. */
  says: { text: string; good: boolean; fall?: number }[];
}

/** m: ends this near in plan belong together, as the flow checks take it. */
const NEAR = 1.5;

/** The way from the first drain through its tank and on; null when there is no pipe to draw. */
export function wayOf(
  works: readonly Work[],
  pipes: readonly PipeCheck[],
  pressure: readonly PressureResult[],
  outlets: readonly OutletJoint[] = [],
): Way | null {
  const drains = pipes.filter((pipe) => pipe.service === "gravity" && known(pipe));
  const way: Way = { length: 0, parts: [], marks: [], says: [] };
  let pipe = drains.find((one) => !drains.some((other) => meets(other, one))) ?? drains[0];
  const seen = new Set<string>();
  const from = outlets.find((joint) => joint.pipe === pipe?.id);
  if (from !== undefined) mark(way, from.name, 0, from.outletInvert);
  while (pipe !== undefined && !seen.has(pipe.id)) {
    seen.add(pipe.id);
    addDrain(way, pipe);
    const here = pipe;
    const tank = works.find((work): work is Tank => work.kind === "tank" && endsAt(here, work));
    if (tank !== undefined) {
      const system = pressure.find((one) => one.tank === tank.id);
      addTank(way, tank, system);
      if (system !== undefined) {
        addMain(way, system, works, pipes);
        break;
      }
      pipe = drains.find((one) => !seen.has(one.id) && startsAt(one, tank));
    } else pipe = drains.find((one) => !seen.has(one.id) && meets(here, one));
  }
  const alone = pressure[0];
  if (way.parts.length === 0 && alone !== undefined) {
    const tank = works.find((work): work is Tank => work.kind === "tank" && work.id === alone.tank);
    if (tank !== undefined) addTank(way, tank, alone);
    addMain(way, alone, works, pipes);
  }
  return way.parts.length === 0 ? null : way;
}

const known = (pipe: PipeCheck): boolean =>
  pipe.stations.length > 1 && pipe.stations.every((one) => Number.isFinite(one.invert));

function apart(a: readonly [number, number] | undefined, b: typeof a): number {
  return a === undefined || b === undefined ? Infinity : Math.hypot(a[0] - b[0], a[1] - b[1]);
}

const meets = (before: PipeCheck, after: PipeCheck): boolean =>
  before.id !== after.id && apart(before.stations.at(-1)?.at, after.stations[0]?.at) <= NEAR;

const reach = (tank: Tank): number => Math.hypot(tank.body.length, tank.body.width) / 2 + 0.5;
const endsAt = (pipe: PipeCheck, tank: Tank): boolean =>
  apart(pipe.stations.at(-1)?.at, tank.at) <= reach(tank);
const startsAt = (pipe: PipeCheck, tank: Tank): boolean =>
  apart(pipe.stations[0]?.at, tank.at) <= reach(tank);

function addDrain(way: Way, pipe: PipeCheck): void {
  const from = way.length;
  const line = pipe.stations.map(({ station, invert }) => [from + station, invert] as const);
  const ground = pipe.stations
    .filter((one) => Number.isFinite(one.ground))
    .map(({ station, ground: z }) => [from + station, z] as const);
  addLine(way, "ground", ground);
  addLine(way, "drain", line);
  const [first, last] = [line[0], line.at(-1)];
  if (first !== undefined) mark(way, words.flowLeaf.starts(pipe.name), first[0], first[1]);
  if (last !== undefined) mark(way, words.flowLeaf.ends(pipe.name), last[0], last[1]);
  const good = pipe.verdict === "runs";
  way.says.push({
    text: good
      ? words.flowLeaf.pipeFalls(pipe.name)
      : words.flowLeaf.pipeVerdictFalls(pipe.name, pipe.verdict),
    good,
    fall: pipe.fall,
  });
  way.length += pipe.length;
}

function addTank(way: Way, tank: Tank, system: PressureResult | undefined): void {
  const { base, body } = tank;
  const [from, to] = [way.length, way.length + body.length];
  const top = base + body.height;
  way.parts.push({ kind: "box", from, to, bottom: base, top, water: false, heights: [base, top] });
  const level = system === undefined ? body.outlet : system.water.low - base;
  if (level !== undefined) {
    const water = base + level;
    way.parts.push({ kind: "box", from, to, bottom: base, top: water, water: true, heights: [] });
    const name =
      system === undefined ? words.flowLeaf.outlet(tank.name) : words.flowLeaf.lowWater(tank.name);
    mark(way, name, (from + to) / 2, water);
  }
  way.length = to;
}

function addMain(
  way: Way,
  system: PressureResult,
  works: readonly Work[],
  pipes: readonly PipeCheck[],
): void {
  const from = way.length;
  const fork = system.line.findIndex((place) => place.name === "end of the main");
  const main = system.line.slice(0, fork + 1);
  addGroundOver(way, from, system, pipes);
  addLine(
    way,
    "main",
    main.map((place) => [from + place.along, place.elevation]),
  );
  const last = main.at(-1);
  const far = system.branches.reduce((a, b) => (b.elevation > a.elevation ? b : a));
  const bed = works.find((work) => work.id === far.bed);
  const [foot, tall] = bed?.kind === "bed" ? [bed.base, bed.height] : [far.elevation - 0.3, 0.6];
  const start = from + (last?.along ?? 0);
  const wide = bed?.kind === "bed" ? bed.width : 3;
  const end = start + wide;
  way.parts.push({
    kind: "box",
    from: start,
    to: end,
    bottom: foot,
    top: foot + tall,
    water: false,
    heights: [foot, foot + tall],
  });
  if (last !== undefined) {
    addLine(way, "main", [
      [start, last.elevation],
      [start, far.elevation],
      [end, far.elevation],
    ]);
    addLine(way, "energy", [
      ...main.map((place) => [from + place.along, place.energy] as const),
      [end, far.elevation + far.least],
    ]);
  }
  const pump = main[0];
  if (pump !== undefined) mark(way, words.flowLeaf.highPumpPushes, from, pump.energy);
  mark(way, words.flowLeaf.lateralsOf(bed?.name ?? far.name), (start + end) / 2, far.elevation);
  way.length = end;
  const used = system.pumps.find((one) => one.id === system.pump);
  const good = used?.outcome === "runs" && used.meets;
  const text = good ? words.flowLeaf.pumpStrongEnough : words.flowLeaf.pumpFallsShort;
  way.says.push({ text: `${system.name}: ${text}`, good });
}

/** The ground over the main: its stations in plan lie as far along as the pipe's own places. */
function addGroundOver(
  way: Way,
  from: number,
  system: PressureResult,
  pipes: readonly PipeCheck[],
): void {
  let along = from + (system.line[1]?.along ?? 0);
  for (const id of system.main) {
    const pipe = pipes.find((one) => one.id === id);
    if (pipe === undefined) continue;
    const start = along;
    const known = pipe.stations.filter((one) => Number.isFinite(one.ground));
    addLine(
      way,
      "ground",
      known.map(({ station, ground }) => [start + station, ground] as const),
    );
    along += pipe.length;
  }
}

function addLine(way: Way, kind: "ground" | "drain" | "main" | "energy", line: Line): void {
  if (line.length > 1) way.parts.push({ kind, line, heights: line.map(([, z]) => z) });
}

function mark(way: Way, name: string, along: number, z: number): void {
  way.marks.push({ name, along, z });
}
