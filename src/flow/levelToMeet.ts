import type { Pipe, PlanPoint, Scheme, Trench } from "../site/index.js";
import { outletAt } from "./outletJoints.js";
import { FLOW_SETTINGS } from "./settings.js";
import { tankAt } from "./tankAt.js";

/**
 * The invert, elevation in m, that a new gravity pipe's near (`start`) or far (`end`) end takes from
 * what it meets in plan: a tank's outlet or inlet, a building's outlet (near end only), or an end of
 * another trench's gravity pipe. Null where it meets none of these, or none whose invert is known.
 */
export function levelToMeet(
  place: PlanPoint,
  end: "start" | "end",
  scheme: Pick<Scheme, "works">,
): number | null {
  const tank = tankAt(place, scheme);
  if (tank !== undefined) {
    const height = tank.body[end === "start" ? "outlet" : "inlet"];
    return height === undefined ? null : tank.base + height;
  }
  const met = end === "start" ? outletAt(place, scheme) : undefined;
  return met?.outlet.invert ?? atTrench(place, end, scheme);
}

/** The nearest end of a trench's pipe; of two as near, the one that water would come from or go to. */
function atTrench(
  place: PlanPoint,
  end: "start" | "end",
  { works }: Pick<Scheme, "works">,
): number | null {
  let best: { away: number; invert: number } | null = null;
  for (const work of works) {
    if (work.kind !== "trench") continue;
    for (const { at, invert } of endsOf(work, end)) {
      const away = Math.hypot(at[0] - place[0], at[1] - place[1]);
      if (away <= FLOW_SETTINGS.joinsWithin && away < (best?.away ?? Infinity)) {
        best = { away, invert };
      }
    }
  }
  return best?.invert ?? null;
}

interface PipeEnd {
  at: PlanPoint;
  invert: number;
}

/** Ends of a trench's first gravity pipe whose inverts its grade tells, the fitting end first. */
function endsOf(trench: Trench, end: "start" | "end"): PipeEnd[] {
  const [first, last] = [trench.path[0], trench.path.at(-1)];
  const pipe = trench.pipes.find((one) => one.service === "gravity");
  const inverts = pipe === undefined ? null : invertsOf(pipe, trench.path);
  if (first === undefined || last === undefined || inverts === null) return [];
  const ends = [
    { at: last, invert: inverts.end },
    { at: first, invert: inverts.start },
  ];
  return end === "start" ? ends : ends.reverse();
}

/** Null for a pipe that is laid by cover, whose inverts only the dig knows. */
function invertsOf(
  { grade }: Pipe,
  path: readonly PlanPoint[],
): { start: number; end: number } | null {
  if (grade.by === "cover") return null;
  if (grade.by === "inverts") return { start: grade.start, end: grade.end };
  const length = path.reduce((sum, [x, y], i) => {
    const before = path[i - 1];
    return before === undefined ? 0 : sum + Math.hypot(x - before[0], y - before[1]);
  }, 0);
  return { start: grade.start, end: grade.start - grade.fall * length };
}
