import type { PipeRun } from "../dig/index.js";
import type { PlanPoint, Scheme, Tank } from "../site/index.js";
import { planDistance, rectangleInPlan, type PlanShape } from "./planDistance.js";
import { isFieldPipe } from "./fieldPipes.js";
import { coverAt } from "./settle.js";
import { FLOW_SETTINGS } from "./settings.js";
import { tankAt } from "./tankAt.js";

/** An end of a gravity pipe that lies in bare earth where it should join something. */
export interface LooseEnd {
  /** `both`: the pipe joins nothing at either end. */
  which: "end" | "start" | "both";
  /** The tank that it lies near, and how far in plan, m, from its body; the nearest of several. */
  near?: { tank: Tank; away: number };
}

/**
 * Whether a gravity pipe's end joins nothing. Asked only where a scheme has a tank, and no more
 * than is sure: a drain that starts at a building has to end at a tank, bed, other gravity pipe or
 * in daylight; a pipe that ends in the ground (a soakaway does) has to start at a building, tank,
 * bed or other pipe; a pipe from one tank may end in the ground, but not just short of another
 * tank that no gravity pipe enters; a field's pipe ends in the ground. Undefined when nothing is amiss.
 */
export function looseEnd(
  run: PipeRun,
  runs: readonly PipeRun[],
  scheme: Scheme,
): LooseEnd | undefined {
  const tanks = scheme.works.filter((work) => work.kind === "tank");
  const first = run.stations[0];
  const last = run.stations.at(-1);
  if (run.service !== "gravity" || tanks.length === 0) return undefined;
  if (first === undefined || last === undefined) return undefined;
  const others = runs.filter((each) => each.trench !== run.trench);
  if (isJoined(last.at, others.filter(isGravity), scheme) || coverAt(last, run) < 0) {
    return undefined;
  }
  if (atBuilding(first.at, scheme)) return { which: "end", ...near(last.at, tanks) };
  const isFed = isJoined(first.at, others.filter(isPipe), scheme);
  if (isFieldPipe(run, scheme)) {
    if (isFed) return undefined;
    return { which: "start", ...near(first.at, tanks) };
  }
  if (isFed) {
    const waiting = near(
      last.at,
      tanks.filter((tank) => !isEntered(tank, runs, scheme)),
    );
    const startsThere = waiting?.near.tank.id === tankAt(first.at, scheme)?.id;
    return waiting === undefined || startsThere ? undefined : { which: "end", ...waiting };
  }
  const atStart = near(first.at, tanks);
  const atEnd = near(last.at, tanks);
  const startNearer = (atStart?.near.away ?? Infinity) < (atEnd?.near.away ?? Infinity);
  if (startNearer) return { which: "start", ...atStart };
  return atEnd === undefined ? { which: "both" } : { which: "end", ...atEnd };
}

const isGravity = (run: PipeRun) => run.service === "gravity";
const isPipe = (run: PipeRun) => run.service !== "conduit";

/** Whether a place is at a tank, at a bed, or on the path of one of the other pipes. */
function isJoined(place: PlanPoint, others: readonly PipeRun[], scheme: Scheme): boolean {
  if (tankAt(place, scheme) !== undefined) return true;
  if (others.some((run) => isBy(place, pathOf(run)))) return true;
  return scheme.works.some((work) => work.kind === "bed" && isBy(place, rectangleInPlan(work)));
}

function atBuilding(place: PlanPoint, scheme: Scheme): boolean {
  return scheme.works.some(
    (work) => work.kind === "building" && isBy(place, { points: work.outline, closed: true }),
  );
}

function isBy(place: PlanPoint, shape: PlanShape): boolean {
  return planDistance(shape, { points: [place], closed: false }) <= FLOW_SETTINGS.joinsWithin;
}

function pathOf(run: PipeRun): PlanShape {
  return { points: run.stations.map((station) => station.at), closed: false };
}

function isEntered(tank: Tank, runs: readonly PipeRun[], scheme: Scheme): boolean {
  return runs.some((run) => {
    const last = run.stations.at(-1);
    return isGravity(run) && last !== undefined && tankAt(last.at, scheme)?.id === tank.id;
  });
}

function near(
  place: PlanPoint,
  tanks: readonly Tank[],
): { near: { tank: Tank; away: number } } | undefined {
  let best: { tank: Tank; away: number } | undefined;
  for (const tank of tanks) {
    const body = rectangleInPlan({ at: tank.at, bearing: tank.bearing, ...tank.body });
    const away = planDistance(body, { points: [place], closed: false });
    if (away <= FLOW_SETTINGS.nearTank && away < (best?.away ?? Infinity)) best = { tank, away };
  }
  return best === undefined ? undefined : { near: best };
}
