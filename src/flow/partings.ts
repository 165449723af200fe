import type { PlanPoint } from "../site/index.js";
import { FLOW_SETTINGS } from "./settings.js";
import type { PipeCheck } from "./types.js";

/** A place where a drain ends and two or more pipes of a field begin: a box, or tees, share the water. */
export interface Parting {
  /** Where the drain ends; of several the first. */
  at: PlanPoint;
  /** Ids of the pipes that come in, and of those that go out. */
  into: readonly string[];
  out: readonly string[];
}

/** What of a pipe says where it begins and ends, and whether it is the field's. */
type DrawnPipe = Pick<PipeCheck, "id" | "service" | "field" | "stations">;

/**
 * Where the water parts to a field: the end of a gravity pipe outside it, and two or more pipes of
 * the field that begin within `FLOW_SETTINGS.joinsWithin` of that in plan, in the pipes' order.
 */
export function partingsOf(pipes: readonly DrawnPipe[]): Parting[] {
  const drains = pipes.filter(({ service, field }) => service === "gravity" && !field);
  const found: { at: PlanPoint; into: string[]; out: readonly string[] }[] = [];
  for (const drain of drains) {
    const end = drain.stations.at(-1);
    if (end === undefined) continue;
    const out = pipes.filter((other) => other.field && startsBy(other, end.at)).map(({ id }) => id);
    if (out.length < 2) continue;
    const known = found.find((parting) => parting.out.join() === out.join());
    if (known === undefined) found.push({ at: [...end.at], into: [drain.id], out });
    else known.into.push(drain.id);
  }
  return found;
}

function startsBy({ stations }: DrawnPipe, at: readonly [number, number]): boolean {
  const first = stations[0];
  if (first === undefined) return false;
  return Math.hypot(first.at[0] - at[0], first.at[1] - at[1]) <= FLOW_SETTINGS.joinsWithin;
}
