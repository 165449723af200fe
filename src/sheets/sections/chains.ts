/** Runs of pipe that follow one another, so that water is seen on its whole way down. */
import { FLOW_SETTINGS, joinedEnds } from "../../estimate/index.js";
import type { PipeCheck } from "../../estimate/index.js";
import type { PlanPoint, Scheme, Trench } from "../../site/index.js";

/** One trench on the way, with all the pipes in it. */
export interface ChainRun {
  trench: Trench;
  /** The one that the profile is of comes first: gravity before pressure before conduit. */
  pipes: readonly PipeCheck[];
  /** m along the chain at which the trench begins. */
  start: number;
  length: number;
}

export interface Chain {
  runs: readonly ChainRun[];
  /** In plan, from the first trench's beginning to the last one's end. Site coordinates, m. */
  line: readonly PlanPoint[];
  /** m in plan. */
  length: number;
}

const RANK = { gravity: 0, pressure: 1, conduit: 2 } as const;

/**
 * The pipes of a scheme as chains, in building order of their first trench: a gravity run goes on
 * with the one that begins where it ends, or at the tank that it ends at. Where several do, the
 * longest way is taken and the others are chains of their own. Pressure mains go on likewise into
 * each other, never into a drain.
 */
export function pipeChains(scheme: Scheme, checks: readonly PipeCheck[]): Chain[] {
  const left = scheme.works.flatMap((work): Loose[] => {
    if (work.kind !== "trench") return [];
    const pipes = checks
      .filter((check) => check.trench === work.id && check.length > 0)
      .sort((a, b) => RANK[a.service] - RANK[b.service]);
    return pipes.length > 0 ? [{ trench: work, pipes, length: pipes[0]!.length }] : [];
  });
  const chains: Chain[] = [];
  while (left.length > 0) {
    const isEntered = (one: Loose): boolean => left.some((other) => follows(scheme, other, one));
    const first = left.find((one) => !isEntered(one)) ?? left[0]!;
    const way = longestFrom(scheme, first, left, []);
    for (const one of way) left.splice(left.indexOf(one), 1);
    chains.push(chainOf(way));
  }
  return chains;
}

interface Loose {
  trench: Trench;
  pipes: PipeCheck[];
  length: number;
}

function longestFrom(
  scheme: Scheme,
  from: Loose,
  all: readonly Loose[],
  before: readonly Loose[],
): Loose[] {
  const seen = [...before, from];
  const ways = all
    .filter((next) => !seen.includes(next) && follows(scheme, from, next))
    .map((next) => longestFrom(scheme, next, all, seen));
  const lengthOf = (way: readonly Loose[]): number => way.reduce((sum, one) => sum + one.length, 0);
  const best = ways.sort((a, b) => lengthOf(b) - lengthOf(a))[0] ?? [];
  return [from, ...best];
}

/** Whether the water of one trench's first pipe goes on in the other's. */
function follows(scheme: Scheme, one: Loose, next: Loose): boolean {
  const service = one.pipes[0]!.service;
  if (one === next || service !== next.pipes[0]!.service || service === "conduit") return false;
  const [end, start] = [one.trench.path.at(-1)!, next.trench.path[0]!];
  if (Math.hypot(end[0] - start[0], end[1] - start[1]) <= FLOW_SETTINGS.joinsWithin) return true;
  return scheme.works.some((work) => {
    if (work.kind !== "tank") return false;
    const ends = joinedEnds(scheme, work);
    const meets = (trench: string, which: "first" | "last"): boolean =>
      ends.some((each) => each.trench === trench && each.end === which);
    return meets(one.trench.id, "last") && meets(next.trench.id, "first");
  });
}

function chainOf(way: readonly Loose[]): Chain {
  const line: PlanPoint[] = [];
  const runs: ChainRun[] = [];
  let at = 0;
  for (const { trench, pipes, length } of way) {
    const last = line.at(-1);
    const [first] = trench.path;
    if (last && first) at += Math.hypot(first[0] - last[0], first[1] - last[1]);
    line.push(...trench.path);
    runs.push({ trench, pipes, start: at, length });
    at += length;
  }
  return { runs, line, length: at };
}

/** A line with both ends carried on straight by so many m, as far as it says which way. */
export function carriedOn(line: readonly PlanPoint[], by: number): PlanPoint[] {
  const beyond = (from: PlanPoint, to: PlanPoint): PlanPoint => {
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    return [to[0] + ((to[0] - from[0]) / length) * by, to[1] + ((to[1] - from[1]) / length) * by];
  };
  const [start, end] = [line[0]!, line.at(-1)!];
  const differs =
    (place: PlanPoint) =>
    (each: PlanPoint): boolean =>
      Math.hypot(each[0] - place[0], each[1] - place[1]) > 1e-9;
  const second = line.find(differs(start));
  const nextToLast = [...line].reverse().find(differs(end));
  if (second === undefined || nextToLast === undefined) return [...line];
  return [beyond(second, start), ...line, beyond(nextToLast, end)];
}
