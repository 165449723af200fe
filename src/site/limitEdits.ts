/** A limit's own places: finding it, the corners of its line, and the lot's line laid anew. */
import { without } from "./absent.js";
import { addLimit, changeLimit, freshId } from "./edits.js";
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

/** Lot lines of a site; a lot has one, but a file may hold a neighbour's or a part's too. */
export function lotLinesOf(site: Pick<Site, "limits">): Limit[] {
  return (site.limits ?? []).filter(({ kind }) => kind === "lot-line");
}

/**
 * Lays a line, m, as the lot's: in place of the lot line of that id, which keeps its name, setback and
 * all else, or beside those that there are when none is named. The line given is copied.
 */
export function layLotLine(
  site: Site,
  { path, closed, name }: { path: readonly PlanPoint[]; closed: boolean; name: string },
  replaced: string | null,
): Site {
  const laid = (limit: Limit): Limit => ({
    ...without(limit, "closed"),
    path: [...path],
    ...(closed && { closed: true }),
  });
  return replaced === null
    ? addLimit(site, laid({ id: freshId(site, "lot-line"), kind: "lot-line", name }))
    : changeLimit(site, replaced, laid);
}
