/** What clicks put down that is no work: limits, and outlets of a building. */
import {
  addLimit,
  changeWork,
  findWork,
  freshId,
  limitKind,
  type Limit,
  type PlanPoint,
  type Site,
} from "../site/index.js";
import { outletInvert } from "./newOutlet.js";
import { toMillimetre } from "./rounded.js";
import { words } from "../words/index.js";

/** "Well", then "Well 2": a name that no other limit has. */
export function nextLimitName(site: Site, kind: string): string {
  const word = limitKind(kind)?.name ?? kind;
  const plain = word.charAt(0).toUpperCase() + word.slice(1);
  const names = new Set((site.limits ?? []).map(({ name }) => name));
  let name = plain;
  for (let count = 2; names.has(name); count++) name = `${plain} ${count}`;
  return name;
}

/**
 * The site with a limit of this kind at these places (m, kept to the millimetre): the first of them
 * for a kind that is a place, all for a line, which is closed when it ends where it begins. No setback: that is the person's local rule. Null with
 * too few places.
 */
export function withPlacedLimit(
  site: Site,
  kind: string,
  places: readonly PlanPoint[],
): { site: Site; limit: Limit } | null {
  const at = places.map(toMillimetre);
  const [first] = at;
  if (first === undefined) return null;
  const limit = { id: freshId(site, kind), kind, name: nextLimitName(site, kind) };
  if (limitKind(kind)?.shape === "place") {
    const point = { ...limit, at: first };
    return { site: addLimit(site, point), limit: point };
  }
  if (at.length < 2) return null;
  const isAgain = at.length > 3 && first[0] === at.at(-1)?.[0] && first[1] === at.at(-1)?.[1];
  const isArea =
    limitKind(kind)?.shape === "area" && (isAgain || closes(kind) || isWholeLot(site, kind, at));
  const line = {
    ...limit,
    path: isAgain ? at.slice(0, -1) : at,
    ...(isArea ? { closed: true } : {}),
  };
  return { site: addLimit(site, line), limit: line };
}

/** A first lot line of four corners and more is taken as the whole lot; its leaf can open it again. */
function isWholeLot({ limits = [] }: Site, kind: string, at: readonly PlanPoint[]): boolean {
  return kind === "lot-line" && at.length > 3 && !limits.some((limit) => limit.kind === kind);
}

/** Whether a kind always has an area; a lot line or an easement may be one line of several. */
function closes(kind: string): boolean {
  return kind !== "lot-line" && kind !== "easement";
}

/** The site with a drain outlet of a building at a place; null when that building is not there. */
export function withPlacedOutlet(
  site: Site,
  schemeId: string,
  buildingId: string,
  place: PlanPoint,
): Site | null {
  const building = findWork(site, schemeId, buildingId);
  if (building?.kind !== "building") return null;
  const outlets = building.outlets ?? [];
  const outlet = {
    id: freshId(
      site,
      "outlet",
      outlets.map(({ id }) => id),
    ),
    name: words.drawing.outletName,
    at: toMillimetre(place),
    invert: outletInvert(site, building, toMillimetre(place)),
  };
  return changeWork(site, schemeId, buildingId, (work) =>
    work.kind === "building" ? { ...work, outlets: [...outlets, outlet] } : work,
  );
}
