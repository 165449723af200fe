/** Pipes where a line in plan meets them. Site coordinates, m. */
import type { PipeRun } from "../dig/index.js";
import type { SectionPlace } from "../ground/index.js";
import type { PlanPoint, Scheme } from "../site/index.js";

/** A pipe that crosses a line. */
export interface PipeAcross {
  id: string;
  name: string;
  /** Id of the trench that it lies in. */
  work: string;
  service: PipeRun["service"];
  /** Its middle: m along the line, and elevation. */
  centre: SectionPlace;
  /** Outside and inside diameter, m. */
  outside: number;
  inside: number;
  /** Its breadth along the line, m: more than `outside` where the line crosses it aslant. */
  breadth: number;
  /** False at the stages before pipes are laid. */
  laid: boolean;
}

/** A stretch of a pipe that lies along a line, seen from its side. */
export interface PipeAlong {
  id: string;
  name: string;
  work: string;
  service: PipeRun["service"];
  /** Its middle line: [m along the line, elevation]. */
  centre: readonly SectionPlace[];
  outside: number;
  inside: number;
  laid: boolean;
}

/** A pipe at less than this to the line (sine of the angle) is seen along it, not across. */
const ASLANT = 0.1;

/**
 * Where the pipes of a scheme meet a line: crossed, or lying along it (within half their outside
 * diameter). `laid` says whether they are laid yet.
 */
export function pipesAcross(
  scheme: Scheme,
  runs: readonly PipeRun[],
  line: readonly PlanPoint[],
  laid: boolean,
): { pipes: PipeAcross[]; pipesAlong: PipeAlong[] } {
  const pipes: PipeAcross[] = [];
  const pipesAlong: PipeAlong[] = [];
  for (const run of runs) {
    const { id, name, trench: work, service, outside, inside } = run;
    if (!scheme.works.some((each) => each.id === work)) continue;
    const about = { id, name, work, service, outside, inside, laid };
    for (const leg of legsOf(line)) {
      const along: SectionPlace[] = [];
      run.stations.slice(1).forEach((end, i) => {
        const met = meet(leg, ends(run.stations[i]!, end, inside), outside / 2);
        if (met?.by === "across") {
          const known = pipes.some(
            (pipe) => pipe.id === id && Math.abs(pipe.centre[0] - met.centre[0]) < 1e-6,
          );
          // A line through a bend meets both of its legs at one place.
          if (!known) pipes.push({ ...about, centre: met.centre, breadth: outside / met.sine });
        } else if (met) along.push(...met.centre);
      });
      if (along.length > 1) pipesAlong.push({ ...about, centre: inOrder(along) });
    }
  }
  return { pipes, pipesAlong };
}

/** A straight piece of a line in plan. m. */
export interface Leg {
  from: PlanPoint;
  /** Unit direction. */
  u: readonly [number, number];
  length: number;
  /** Station of its beginning. */
  station: number;
}

/** The straight pieces of a line; those of no length are left out. */
export function legsOf(line: readonly PlanPoint[]): Leg[] {
  const legs: Leg[] = [];
  let station = 0;
  line.slice(1).forEach((to, i) => {
    const from = line[i]!;
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (length < 1e-9) return;
    legs.push({
      from,
      u: [(to[0] - from[0]) / length, (to[1] - from[1]) / length],
      length,
      station,
    });
    station += length;
  });
  return legs;
}

type Place3 = readonly [number, number, number];

function ends(
  a: PipeRun["stations"][number],
  b: PipeRun["stations"][number],
  inside: number,
): [Place3, Place3] {
  return [
    [...a.at, a.invert + inside / 2],
    [...b.at, b.invert + inside / 2],
  ];
}

type Met =
  | { by: "across"; centre: SectionPlace; sine: number }
  | { by: "along"; centre: [SectionPlace, SectionPlace] };

/** How a leg of the line meets a straight piece of pipe; null when it does not. */
function meet(leg: Leg, [a, b]: readonly [Place3, Place3], reach: number): Met | null {
  const seen = (p: Place3): { along: number; off: number } => {
    const [dx, dy] = [p[0] - leg.from[0], p[1] - leg.from[1]];
    return { along: dx * leg.u[0] + dy * leg.u[1], off: dy * leg.u[0] - dx * leg.u[1] };
  };
  const [p, q] = [seen(a), seen(b)];
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const sine = Math.abs(q.off - p.off) / length;
  const at = (share: number): SectionPlace => [
    leg.station + p.along + share * (q.along - p.along),
    a[2] + share * (b[2] - a[2]),
  ];
  if (!(sine >= ASLANT)) {
    const shares = within(p.off, q.off, -reach, reach);
    const on = within(p.along, q.along, 0, leg.length);
    const [from, to] = [Math.max(shares[0], on[0]), Math.min(shares[1], on[1])];
    return to - from > 1e-9 ? { by: "along", centre: [at(from), at(to)] } : null;
  }
  const share = p.off / (p.off - q.off);
  const along = p.along + share * (q.along - p.along);
  if (share < 0 || share > 1 || along < 0 || along > leg.length) return null;
  return { by: "across", centre: at(share), sine };
}

/** The shares, 0 to 1, between which a value that goes evenly from a to b is within bounds. */
function within(a: number, b: number, low: number, high: number): [number, number] {
  if (Math.abs(b - a) < 1e-12) return a >= low && a <= high ? [0, 1] : [1, 0];
  const marks = [(low - a) / (b - a), (high - a) / (b - a)].sort((s, t) => s - t);
  return [Math.max(0, marks[0]!), Math.min(1, marks[1]!)];
}

function inOrder(places: readonly SectionPlace[]): SectionPlace[] {
  return [...places]
    .sort((a, b) => a[0] - b[0])
    .filter(([station], i, all) => i === 0 || station - all[i - 1]![0] > 1e-9);
}
