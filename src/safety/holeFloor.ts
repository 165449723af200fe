/** Where the floor of a hole lies, and how high the ground as found stands over its edge. */
import type { PipeRun } from "../dig/index.js";
import { rectangleInPlan } from "../flow/index.js";
import { centreOfArea, type Pad, type PlanPoint, type Trench, type Work } from "../site/index.js";

/** What is known of the ground as found, beside the dig. Site coordinates. */
export interface HoleGround {
  /** Elevation, m; NaN beyond the survey. */
  groundAt: (at: PlanPoint) => number;
  /** Thickness of every layer but the last, top down, m. */
  thicknessAt: (at: PlanPoint) => readonly number[];
  /** Depth of the water below the ground, m; null where no probe met any. */
  waterAt: ((at: PlanPoint) => number) | null;
}

/** A place on the edge of a hole's floor, or on a trench's path. */
export interface FloorPlace {
  at: PlanPoint;
  /** m along the edge or the path from its start. */
  station: number;
  /** Elevation of the floor, m. */
  floor: number;
  /** m from the floor up to the ground as found, the higher side of a trench; NaN beyond the survey. */
  face: number;
}

/** A hole's floor as places along its edge (which closes), or along its path. */
export interface FloorLine {
  closed: boolean;
  /** m along it. */
  length: number;
  places: readonly FloorPlace[];
}

/** m between the places that are looked at. */
const STEP = 0.25;

/** The floor lines of a tank's, trench's or pad's hole; none for a work that digs no hole. */
export function floorLines(
  work: Work,
  pipes: readonly PipeRun[],
  groundAt: HoleGround["groundAt"],
): FloorLine[] {
  switch (work.kind) {
    case "tank": {
      const grown = {
        length: work.body.length + 2 * work.overdig,
        width: work.body.width + 2 * work.overdig,
      };
      const { points } = rectangleInPlan({ at: work.at, bearing: work.bearing, ...grown });
      return [edgeLine(points, () => work.base - work.bedding.depth, groundAt)];
    }
    case "pad":
      return [{ outline: work.outline, top: work.top }, ...(work.levels ?? [])].map((level) =>
        edgeLine(level.outline, padFloor(work, level), groundAt),
      );
    case "trench":
      return trenchLine(work, pipes, groundAt);
    default:
      return [];
  }
}

function edgeLine(
  outline: readonly PlanPoint[],
  floorAt: (at: PlanPoint) => number,
  groundAt: HoleGround["groundAt"],
): FloorLine {
  const first = outline[0];
  if (first === undefined) return { closed: true, length: 0, places: [] };
  const { length, places } = along([...outline, first]);
  return {
    closed: true,
    length,
    places: places.map(({ at, station }) => {
      const floor = floorAt(at);
      return { at, station, floor, face: groundAt(at) - floor };
    }),
  };
}

/** The plane that a pad's ground is brought to, under its course. */
function padFloor(
  { fall, course }: Pad,
  level: { outline: readonly PlanPoint[]; top: number },
): (at: PlanPoint) => number {
  const bottom = level.top - (course?.depth ?? 0);
  if (fall === undefined) return () => bottom;
  const turn = (fall.bearing * Math.PI) / 180;
  const [cx, cy] = centreOfArea(level.outline.map(([x, y]): [number, number] => [x, y]));
  return ([x, y]) => bottom - fall.slope * ((x - cx) * Math.sin(turn) + (y - cy) * Math.cos(turn));
}

function trenchLine(
  trench: Trench,
  pipes: readonly PipeRun[],
  groundAt: HoleGround["groundAt"],
): FloorLine[] {
  const runs = pipes.filter((run) => run.trench === trench.id);
  if (runs.length === 0) return [];
  const { length, places } = along(trench.path);
  const line = places.map(({ at, station, across }): FloorPlace => {
    const floor = Math.min(...runs.map((run) => bottomAt(run, station))) - trench.bedding.depth;
    const half = trench.width / 2;
    const beside = [0, half, -half].map((off) =>
      groundAt([at[0] + off * across[0], at[1] + off * across[1]]),
    );
    const known = beside.filter((z) => Number.isFinite(z));
    return { at, station, floor, face: known.length > 0 ? Math.max(...known) - floor : NaN };
  });
  return [{ closed: false, length, places: line }];
}

/** Underside of a pipe at a station, m. */
function bottomAt({ stations, inside, outside }: PipeRun, station: number): number {
  const wall = (outside - inside) / 2;
  const next = stations.findIndex((each) => each.station >= station - 1e-9);
  const b = stations[next < 0 ? stations.length - 1 : next]!;
  const a = stations[Math.max(0, (next < 0 ? stations.length : next) - 1)]!;
  const width = b.station - a.station;
  const share = width > 0 ? Math.min(1, (station - a.station) / width) : 1;
  return a.invert + share * (b.invert - a.invert) - wall;
}

interface Along {
  at: PlanPoint;
  station: number;
  /** Unit normal to the line there. */
  across: PlanPoint;
}

/** Places every STEP along a line and at its corners. */
function along(line: readonly PlanPoint[]): { length: number; places: Along[] } {
  const places: Along[] = [];
  let station = 0;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (size < 1e-9) continue;
    const steps = Math.max(1, Math.ceil(size / STEP));
    const across: PlanPoint = [-(b[1] - a[1]) / size, (b[0] - a[0]) / size];
    for (let k = 0; k <= steps; k++) {
      if (k === 0 && places.length > 0) continue;
      const share = k / steps;
      const at: PlanPoint = [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
      places.push({ at, station: station + share * size, across });
    }
    station += size;
  }
  return { length: station, places };
}

/** The place of the tallest face of all lines; null where the ground is not known. */
export function tallestPlace(lines: readonly FloorLine[]): FloorPlace | null {
  let best: FloorPlace | null = null;
  for (const place of lines.flatMap((line) => line.places)) {
    if (Number.isFinite(place.face) && place.face > (best?.face ?? 0)) best = place;
  }
  return best;
}

/**
 * m of the tallest face as the dig counts it, in the ground as found: from the floor's level up to the
 * ground where a sloped wall comes out, which on a slope is more than over the floor's edge. 0 where
 * nothing is known.
 */
export function faceAtOpening(
  lines: readonly FloorLine[],
  opening: readonly (readonly (readonly [number, number])[])[],
  groundAt: HoleGround["groundAt"],
): number {
  const places = lines.flatMap((line) => line.places);
  return opening.flat().reduce(
    (most, at) => {
      const below = nearestTo(at, places);
      const face = below === null ? NaN : groundAt([at[0], at[1]]) - below.floor;
      return Number.isFinite(face) ? Math.max(most, face) : most;
    },
    tallestPlace(lines)?.face ?? 0,
  );
}

function nearestTo(
  [x, y]: readonly [number, number],
  places: readonly FloorPlace[],
): FloorPlace | null {
  let [best, least]: [FloorPlace | null, number] = [null, Infinity];
  for (const place of places) {
    const away = Math.hypot(place.at[0] - x, place.at[1] - y);
    if (away < least) [best, least] = [place, away];
  }
  return best;
}
