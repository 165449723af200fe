/** A limit's own places: finding it, and the corners of its line. */
import type { Limit, PlanPoint, Site } from "./schema.js";

/** The limit with this id, or null. */
export function findLimit(site: Pick<Site, "limits">, limitId: string): Limit | null {
  return site.limits?.find((limit) => limit.id === limitId) ?? null;
}

/** Corners of a limit's line, m, and whether it closes on itself; null for a place. */
export function limitCorners(limit: Limit): { places: PlanPoint[]; closed: boolean } | null {
  return limit.path === undefined
    ? null
    : { places: limit.path, closed: limit.closed === true && limit.path.length > 2 };
}
