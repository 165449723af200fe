/**
 * A trench as surfaces: a floor strip for each leg, with the sides' walls, vertical at the
 * path's ends; at each bend a level corner piece with mitred outsides. Legs overlap on the inside
 * of a bend and are cut one after the other, so the lower holds and nothing is counted twice. Local metres.
 */
import { higherOf, level, plane, type Box, type Place, type Surface } from "../ground/index.js";
import type { Trench } from "../site/index.js";
import { invertAt, wallOf, type InvertAt } from "./grade.js";
import type { PathLeg } from "./path.js";
import { sideWall, type PlaneOf } from "./sideWall.js";
import { grownBox, plannedWall, type WallPlan } from "./walls.js";

/** Heights that one part of a trench is built to: planes, or levels at a bend. */
export interface TrenchPart {
  floor: PlaneOf;
  bedding: Surface;
  zone: Surface;
}

/** One leg or corner of a trench: its surface, the box that it may cut in, and its part number. */
export interface TrenchPiece {
  surface: Surface;
  box: Box;
  part: number;
}

export interface TrenchShape {
  /** True when the depth asks for more benches than are dug. */
  tooMany: boolean;
  /** Cut one after the other; where two overlap the lower holds. */
  pieces: readonly TrenchPiece[];
  /** By part number. */
  parts: readonly TrenchPart[];
  /** Lowest and highest of the floor along the path. */
  lowest: number;
  highest: number;
}

/** One straight length on which every pipe's grade is uniform, and the bend at its start. */
interface Reach extends PathLeg {
  /** Turn at its start from the leg before, or null when it goes straight on. */
  bendFrom: PathLeg | null;
}

/** The two legs that meet at a bend. */
interface Bend {
  before: PathLeg;
  after: PathLeg;
}

interface Line {
  /** Height at the start and rise per m along. */
  start: number;
  rate: number;
}

/** The pipes' lines along a reach that decide its floor, and its pipe zone's top. */
function reachLines(
  trench: Trench,
  inverts: readonly (readonly InvertAt[])[],
  reach: Reach,
): { floors: Line[]; tops: Line[] } {
  const undersides = lines(trench, inverts, reach, "underside");
  const floors = deciding(undersides, reach.length, -1).map((line) => ({
    ...line,
    start: line.start - trench.bedding.depth,
  }));
  return { floors, tops: deciding(lines(trench, inverts, reach, "top"), reach.length, 1) };
}

/** Lowest and highest of the floor along the path, m local. */
export function floorRange(
  trench: Trench,
  legs: readonly PathLeg[],
  inverts: readonly (readonly InvertAt[])[],
): { lowest: number; highest: number } {
  let [lowest, highest] = [Infinity, -Infinity];
  for (const reach of reaches(legs, inverts)) {
    const { floors } = reachLines(trench, inverts, reach);
    for (const at of [0, reach.length]) {
      const least = Math.min(...floors.map((line) => line.start + at * line.rate));
      lowest = Math.min(lowest, least);
      highest = Math.max(highest, least);
    }
  }
  return { lowest, highest };
}

/** Builds the surface and the heights of the parts. `inverts` belong to `trench.pipes` in order. */
export function trenchShape(
  trench: Trench,
  legs: readonly PathLeg[],
  inverts: readonly (readonly InvertAt[])[],
  plan: WallPlan,
): TrenchShape {
  const off = trench.width / 2 + plan.reach;
  const pieces: TrenchPiece[] = [];
  const parts: TrenchPart[] = [];
  const all = reaches(legs, inverts);
  all.forEach((reach, i) => {
    const { floors, tops } = reachLines(trench, inverts, reach);
    const zone = higherOf(tops.map((line) => along(reach, line, trench.zone.above)));
    if (reach.bendFrom) {
      const bend = { before: reach.bendFrom, after: reach };
      const { part, shelves } = cornerPiece(trench, bend, floors, tops, plan, parts);
      const box = squareBox(reach.start, 2 * off * Math.min(MITRE_LIMIT, bendStretch(bend)));
      for (const surface of shelves) pieces.push({ surface, box, part });
    }
    const ends = {
      start: i === 0 ? (trench.ends?.start ?? 0) : 0,
      end: i === all.length - 1 ? (trench.ends?.end ?? 0) : 0,
    };
    for (const line of floors) {
      const floor = planeAlong(reach, line);
      const box = stripBox(reach, off, ends, plan.height);
      const part = parts.length;
      for (const surface of strip(trench, reach, floor, plan, ends)) {
        pieces.push({ surface, box, part });
      }
      parts.push({ floor, bedding: along(reach, line, trench.bedding.depth), zone });
    }
  });
  return { tooMany: plan.tooMany, pieces, parts, ...floorRange(trench, legs, inverts) };
}

/** Runs of the walls at a reach's two ends; 0 is vertical. */
interface Ends {
  start: number;
  end: number;
}

function stripBox(reach: Reach, off: number, ends: Ends, height: number): Box {
  const [back, on] = [ends.start * height, ends.end * height];
  const longer: PathLeg = {
    ...reach,
    start: [reach.start[0] - back * reach.u[0], reach.start[1] - back * reach.u[1]],
    length: reach.length + back + on,
  };
  return grownBox([...edge(longer, off), ...edge(longer, -off)], 0);
}

function squareBox([x, y]: Place, reach: number): Box {
  return [x - reach, y - reach, x + reach, y + reach];
}

/** A mitre is cut off at this many times its half width, where a path turns back on itself. */
const MITRE_LIMIT = 4;

/** How much farther than its width a mitred bend would reach. */
function bendStretch({ before, after }: Bend): number {
  const straight = before.u[0] * after.u[0] + before.u[1] * after.u[1];
  const cos = Math.max(-1, Math.min(1, straight));
  return 1 / Math.max(1e-3, Math.cos(Math.acos(cos) / 2));
}

/** Cuts the legs where a pipe's grade breaks. */
function reaches(legs: readonly PathLeg[], inverts: readonly (readonly InvertAt[])[]): Reach[] {
  const breaks = inverts.flatMap((line) => line.map((at) => at.station)).sort((a, b) => a - b);
  const out: Reach[] = [];
  legs.forEach((leg, i) => {
    const end = leg.station + leg.length;
    const inner = breaks.filter((s) => s > leg.station + 1e-6 && s < end - 1e-6);
    const stations = [leg.station, ...inner.filter((s, k) => k === 0 || s - inner[k - 1]! > 1e-6)];
    stations.forEach((station, k) => {
      const along = station - leg.station;
      const start: Place = [leg.start[0] + along * leg.u[0], leg.start[1] + along * leg.u[1]];
      const length = (stations[k + 1] ?? end) - station;
      const bendFrom = k === 0 && i > 0 ? legs[i - 1]! : null;
      out.push({ ...leg, start, station, length, bendFrom });
    });
  });
  return out;
}

/** Undersides or tops of the pipes along a reach. */
function lines(
  trench: Trench,
  inverts: readonly (readonly InvertAt[])[],
  reach: Reach,
  which: "underside" | "top",
): Line[] {
  return trench.pipes.map((pipe, i) => {
    const offset = which === "underside" ? -wallOf(pipe) : pipe.inside + wallOf(pipe);
    // Taken just inside the reach, so that a break at its end cannot give the next slope.
    const start = invertAt(inverts[i]!, reach.station + reach.length * 0.25);
    const end = invertAt(inverts[i]!, reach.station + reach.length * 0.75);
    const rate = (end - start) / (reach.length * 0.5);
    return { start: start - rate * reach.length * 0.25 + offset, rate };
  });
}

/** Leaves out lines that lie wholly on the idle side of another (`sign` 1 keeps the highest). */
function deciding(all: readonly Line[], length: number, sign: 1 | -1): Line[] {
  const end = (line: Line): number => line.start + length * line.rate;
  return all.filter((line, i) => {
    const outdone = (other: Line, j: number): boolean => {
      const [near, far] = [sign * (other.start - line.start), sign * (end(other) - end(line))];
      // Lines that differ by rounding are equal, and of equal lines the first is kept.
      const slack = 1e-12 * (Math.abs(line.start) + length);
      return j !== i && near >= -slack && far >= -slack && (near > slack || far > slack || j < i);
    };
    return !all.some(outdone);
  });
}

function planeAlong(leg: PathLeg, line: Line): PlaneOf {
  const [a, b] = [line.rate * leg.u[0], line.rate * leg.u[1]];
  return { a, b, c: line.start - a * leg.start[0] - b * leg.start[1] };
}

function along(leg: PathLeg, line: Line, above: number): Surface {
  const { a, b, c } = planeAlong(leg, line);
  return plane(a, b, c + above);
}

/** Vertical end: the side of a leg's line across at `at` that is open towards `sign`. */
function endWall(leg: PathLeg, at: number, sign: 1 | -1): Surface {
  const [nx, ny] = [sign * leg.u[0], sign * leg.u[1]];
  const d = nx * leg.start[0] + ny * leg.start[1] + sign * at;
  return { is: "wall", nx, ny, d, reversed: false };
}

/** The floor strip of a reach with its sides, and each bench above it. */
function strip(
  trench: Trench,
  reach: Reach,
  floor: PlaneOf,
  plan: WallPlan,
  ends: Ends,
): Surface[] {
  const half = trench.width / 2;
  const left = edge(reach, half);
  const right = edge(reach, -half);
  return plan.shelves.map(({ rise }, shelf) =>
    higherOf([
      plannedWall(left[1], left[0], floor, plan, shelf, LEFT),
      plannedWall(right[0], right[1], floor, plan, shelf, RIGHT),
      plane(floor.a, floor.b, floor.c + rise, shelf === 0),
      // The ends last: by then a cell is cut to the sides, and only that strip is parted.
      ends.start > 0 ? sideWall(left[0], right[0], floor, ends.start) : endWall(reach, 0, -1),
      ends.end > 0 ? sideWall(right[1], left[1], floor, ends.end) : endWall(reach, reach.length, 1),
    ]),
  );
}

/** A trench's sides in the walls' own order. */
const LEFT = 0;
const RIGHT = 1;

/** The floor edge of a leg, `off` to its left, from its start to its end. */
function edge(leg: PathLeg, off: number): [Place, Place] {
  const x = leg.start[0] + off * leg.n[0];
  const y = leg.start[1] + off * leg.n[1];
  return [
    [x, y],
    [x + leg.length * leg.u[0], y + leg.length * leg.u[1]],
  ];
}

/**
 * The outside of a bend: the wedge between the ends of the two legs, level at the bend's own
 * depth, with both legs' outer walls carried on until they meet.
 */
function cornerPiece(
  trench: Trench,
  { before, after }: Bend,
  floors: readonly Line[],
  tops: readonly Line[],
  plan: WallPlan,
  parts: TrenchPart[],
): { part: number; shelves: Surface[] } {
  const height = Math.min(...floors.map((line) => line.start));
  const floor = { a: 0, b: 0, c: height };
  const turned = before.u[0] * after.u[1] - before.u[1] * after.u[0];
  const outer = turned > 0 ? -trench.width / 2 : trench.width / 2;
  const ends: PathLeg[] = [
    { ...before, start: after.start, length: 1 },
    { ...after, length: 1 },
  ];
  const wedge = [endWall(ends[0]!, 0, -1), endWall(ends[1]!, 0, 1)];
  const bevel = bevelEdge({ before, after }, trench.width / 2);
  const side = turned > 0 ? RIGHT : LEFT;
  const shelves = plan.shelves.map(({ rise }, shelf) => {
    const walls = ends.map((leg) => {
      const [p, q] = edge(leg, outer);
      return turned > 0
        ? plannedWall(p, q, floor, plan, shelf, side)
        : plannedWall(q, p, floor, plan, shelf, side);
    });
    if (bevel) walls.push(plannedWall(bevel[0], bevel[1], floor, plan, shelf, side));
    return higherOf([...walls, level(height + rise, shelf === 0), ...wedge]);
  });
  const part = parts.length;
  const zoneTop = Math.max(...tops.map((line) => line.start)) + trench.zone.above;
  parts.push({ floor, bedding: level(height + trench.bedding.depth), zone: level(zoneTop) });
  return { part, shelves };
}

/** Floor edge that cuts off a mitre longer than the limit, outside on its right; else null. */
function bevelEdge(bend: Bend, half: number): [Place, Place] | null {
  if (bendStretch(bend) <= MITRE_LIMIT) return null;
  const { before, after } = bend;
  const [bx, by] = [before.u[0] - after.u[0], before.u[1] - after.u[1]];
  const size = Math.hypot(bx, by);
  const [ox, oy] = [bx / size, by / size];
  const reach = MITRE_LIMIT * half;
  const [x, y] = [after.start[0] + reach * ox, after.start[1] + reach * oy];
  return [
    [x, y],
    [x - oy, y + ox],
  ];
}
