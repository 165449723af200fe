import { groundAt, joinedEnds } from "../estimate/index.js";
import {
  changePoint,
  changeProbe,
  changeWork,
  hasMark,
  heightOf,
  moveLimit,
  moveWork,
  raiseWork,
  workRaisedBy,
} from "../site/index.js";
import type { PlanPoint, Site, Work } from "../site/index.js";
import type { Picked } from "./deskState.js";

type End = "first" | "last";

/** The trench ends that have to come along when these works move, each once; locked trenches stay. */
function endsAlong(site: Site, schemeId: string, moving: readonly Work[]): [string, End][] {
  const scheme = site.schemes.find((one) => one.id === schemeId);
  if (scheme === undefined) return [];
  const ids = new Set(moving.map((work) => work.id));
  const ends = new Map<string, [string, End]>();
  for (const work of moving) {
    for (const { trench, end } of joinedEnds(scheme, work)) {
      const stays = ids.has(trench) || isLocked(site, schemeId, { kind: "work", id: trench });
      if (!stays) ends.set(`${end} ${trench}`, [trench, end]);
    }
  }
  return [...ends.values()];
}

function withEndMoved(
  site: Site,
  schemeId: string,
  [trench, end]: [string, End],
  by: PlanPoint,
): Site {
  return changeWork(site, schemeId, trench, (work) => {
    if (work.kind !== "trench") return work;
    const which = end === "first" ? 0 : work.path.length - 1;
    const path = work.path.map((place, i): PlanPoint =>
      i === which ? [place[0] + by[0], place[1] + by[1]] : place,
    );
    return { ...work, path };
  });
}

/** How much higher the ground as found is where something is moved to, m; 0 beyond the survey. */
function groundRise(site: Site, at: PlanPoint, by: PlanPoint): number {
  const from = groundAt(site, at);
  const to = groundAt(site, [at[0] + by[0], at[1] + by[1]]);
  return from === null || to === null ? 0 : to - from;
}

function withWorkMoved(site: Site, schemeId: string, work: Work, by: PlanPoint): Site {
  const moved = moveWork(site, schemeId, work.id, by);
  if (work.kind !== "bed" || work.follows !== "ground") return moved;
  return raiseWork(moved, schemeId, work.id, groundRise(site, work.at, by));
}

const isLocked = (site: Site, schemeId: string, thing: Picked): boolean =>
  hasMark(site, schemeId, thing, "locked");

/** The things that no lock keeps in place. */
export function freeOf(site: Site, schemeId: string, things: readonly Picked[]): Picked[] {
  return things.filter((thing) => !isLocked(site, schemeId, thing));
}

/** The works among the things, as the site has them. */
function worksAmong(site: Site, schemeId: string, things: readonly Picked[]): Work[] {
  const works = site.schemes.find((one) => one.id === schemeId)?.works ?? [];
  return works.filter((work) => things.some(({ kind, id }) => kind === "work" && id === work.id));
}

/**
 * The site with these things moved by `by` metres in plan. Elevations stay as they are, but for a bed
 * that follows the ground; the ends of trenches that meet a work go with it. Each thing moves once,
 * whatever else it is joined to; what is locked stays.
 */
export function withAllMoved(
  site: Site,
  schemeId: string,
  things: readonly Picked[],
  by: PlanPoint,
): Site {
  const free = freeOf(site, schemeId, things);
  const works = worksAmong(site, schemeId, free);
  const ends = endsAlong(site, schemeId, works);
  const moved = works.reduce((now, work) => withWorkMoved(now, schemeId, work, by), site);
  const along = ends.reduce((now, end) => withEndMoved(now, schemeId, end, by), moved);
  const shift = <T extends { x: number; y: number }>(one: T): T => ({
    ...one,
    x: one.x + by[0],
    y: one.y + by[1],
  });
  return free.reduce((now, { kind, id }) => {
    if (kind === "probe") return changeProbe(now, id, shift);
    if (kind === "limit") return moveLimit(now, id, by);
    return kind === "point" ? changePoint(now, id, shift) : now;
  }, along);
}

/** The site with the works among these things raised by `by` metres; what is locked stays. */
export function withAllRaised(
  site: Site,
  schemeId: string,
  things: readonly Picked[],
  by: number,
): Site {
  return freeOf(site, schemeId, things).reduce(
    (now, { kind, id }) => (kind === "work" ? raiseWork(now, schemeId, id, by) : now),
    site,
  );
}

/** Whether raising would change anything of these things. */
export function canRaise(site: Site, schemeId: string, things: readonly Picked[]): boolean {
  return worksAmong(site, schemeId, things).some(
    (work) => heightOf(work) !== null || workRaisedBy(work, 1) !== work,
  );
}
