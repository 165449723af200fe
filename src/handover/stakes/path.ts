/** Places along a trench's path. m in plan. */
import type { PlanPoint, Trench } from "../../site/index.js";

/** Why a station is there. */
export type StationKind = "start" | "end" | "bend" | "cleanout" | "interval";

export interface Station {
  /** m along the path from its start. */
  at: number;
  kind: StationKind;
}

/** m: a cleanout nearer than this to an end or a bend stands at that one's stake. */
const SAME = 0.1;
/** m: a station of the interval nearer than this to another is left out. */
const NEAR = 0.3;

/** Both ends, every bend, every cleanout, and between them every `interval` from the start. */
export function stationsOf(trench: Trench, interval: number): Station[] {
  if (!(interval > 0)) throw new Error(`interval: got ${interval} m, expected more than 0`);
  const bends = distances(trench.path);
  const length = bends[bends.length - 1]!;
  const cleanouts = trench.pipes.flatMap((pipe) => pipe.cleanouts ?? []);
  const fixed: Station[] = [
    { at: 0, kind: "start" },
    ...bends.slice(1, -1).map((at): Station => ({ at, kind: "bend" })),
    ...cleanouts
      .filter((at) => bends.every((bend) => Math.abs(bend - at) >= SAME) && at < length)
      .map((at): Station => ({ at, kind: "cleanout" })),
    { at: length, kind: "end" },
  ];
  const between: Station[] = [];
  for (let i = 1; i * interval < length; i += 1) {
    const at = i * interval;
    if (fixed.every((station) => Math.abs(station.at - at) >= NEAR)) {
      between.push({ at, kind: "interval" });
    }
  }
  return [...fixed, ...between].sort((a, b) => a.at - b.at);
}

/** Distance of every corner of a path from its start. */
function distances(path: readonly PlanPoint[]): number[] {
  let sum = 0;
  return path.map(([x, y], i) => {
    const before = path[i - 1];
    if (before !== undefined) sum += Math.hypot(x - before[0], y - before[1]);
    return sum;
  });
}

/**
 * The place at a station, and the direction square to the path there, to its left; at a bend it is
 * along the line that halves the bend.
 */
export function alongPath(
  path: readonly PlanPoint[],
  station: number,
): { at: PlanPoint; across: PlanPoint } {
  const ends = distances(path);
  const leg = Math.max(
    1,
    ends.findIndex((end, i) => i > 0 && station <= end + 1e-9),
  );
  const [start, end] = [path[leg - 1]!, path[leg]!];
  const long = ends[leg]! - ends[leg - 1]!;
  const share = long === 0 ? 0 : (station - ends[leg - 1]!) / long;
  const at: PlanPoint = [
    start[0] + share * (end[0] - start[0]),
    start[1] + share * (end[1] - start[1]),
  ];
  const here = leftOf(start, end);
  const next = path[leg + 1];
  if (next === undefined || Math.abs(station - ends[leg]!) > 1e-9) return { at, across: here };
  const there = leftOf(end, next);
  const [x, y] = [here[0] + there[0], here[1] + there[1]];
  const size = Math.hypot(x, y);
  return { at, across: size < 1e-9 ? here : [x / size, y / size] };
}

function leftOf([ax, ay]: PlanPoint, [bx, by]: PlanPoint): PlanPoint {
  const size = Math.hypot(bx - ax, by - ay);
  return size === 0 ? [0, 0] : [-(by - ay) / size, (bx - ax) / size];
}

/** Station of the place on a path that is nearest to a place. */
export function stationNear(path: readonly PlanPoint[], [x, y]: PlanPoint): number {
  const ends = distances(path);
  let [best, near] = [0, Infinity];
  for (let i = 1; i < path.length; i += 1) {
    const [[ax, ay], [bx, by]] = [path[i - 1]!, path[i]!];
    const [dx, dy] = [bx - ax, by - ay];
    const square = dx * dx + dy * dy;
    const along = square === 0 ? 0 : ((x - ax) * dx + (y - ay) * dy) / square;
    const share = Math.min(1, Math.max(0, along));
    const off = Math.hypot(x - ax - share * dx, y - ay - share * dy);
    if (off < near) [near, best] = [off, ends[i - 1]! + share * Math.sqrt(square)];
  }
  return best;
}
