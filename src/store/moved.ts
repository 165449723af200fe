import { groundAt, joinedEnds } from "../estimate/index.js";
import {
  changePoint,
  changeProbe,
  changeWork,
  findWork,
  moveCorner,
  moveWork,
  removePoint,
  removeProbe,
  removeWork,
  turnWork,
} from "../site/index.js";
import type { PlanPoint, Site } from "../site/index.js";
import type { DragStep, Picked } from "./deskState.js";

/**
 * The site with what is picked moved by `by` metres in plan. Elevations stay as they are, but for a
 * bed that follows the ground; the ends of trenches that meet a work go with it.
 */
export function withMoved(site: Site, schemeId: string, picked: Picked, by: PlanPoint): Site {
  switch (picked.kind) {
    case "work":
      return withWorkMoved(site, schemeId, picked.id, by);
    case "probe":
      return changeProbe(site, picked.id, (probe) => ({
        ...probe,
        x: probe.x + by[0],
        y: probe.y + by[1],
      }));
    case "point":
      return changePoint(site, picked.id, (point) => ({
        ...point,
        x: point.x + by[0],
        y: point.y + by[1],
      }));
  }
}

function withWorkMoved(site: Site, schemeId: string, id: string, by: PlanPoint): Site {
  const scheme = site.schemes.find((one) => one.id === schemeId);
  const work = findWork(site, schemeId, id);
  if (scheme === undefined || work === null) return site;
  const moved = joinedEnds(scheme, work).reduce(
    (now, { trench, end }) => withEndMoved(now, schemeId, trench, end, by),
    moveWork(site, schemeId, id, by),
  );
  if (work.kind !== "bed" || work.follows !== "ground") return moved;
  const rise = groundRise(site, work.at, by);
  return changeWork(moved, schemeId, id, (bed) =>
    bed.kind === "bed" ? { ...bed, base: bed.base + rise } : bed,
  );
}

function withEndMoved(
  site: Site,
  schemeId: string,
  trench: string,
  end: "first" | "last",
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

/** The site as one step of a drag leaves it, reckoned from the site as the drag began. */
export function withDragged(begun: Site, schemeId: string, step: DragStep): Site {
  const { selection, by, corner, turnTo } = step;
  if (selection.kind === "work" && turnTo !== undefined) {
    return turnWork(begun, schemeId, selection.id, turnTo);
  }
  if (selection.kind === "work" && corner !== undefined) {
    return moveCorner(begun, schemeId, selection.id, corner, by);
  }
  return withMoved(begun, schemeId, selection, by);
}

/** The site without what is picked. */
export function withoutPicked(site: Site, schemeId: string, picked: Picked): Site {
  switch (picked.kind) {
    case "work":
      return removeWork(site, schemeId, picked.id);
    case "probe":
      return removeProbe(site, picked.id);
    case "point":
      return site.survey.points.length <= 3 ? site : removePoint(site, picked.id);
  }
}

/** What a person calls the thing that is picked; null when it is no longer there. */
export function nameOfPicked(site: Site, schemeId: string, picked: Picked): string | null {
  switch (picked.kind) {
    case "work":
      return findWork(site, schemeId, picked.id)?.name ?? null;
    case "probe":
      return site.ground.probes.some((one) => one.id === picked.id) ? `probe ${picked.id}` : null;
    case "point":
      return site.survey.points.some((one) => one.id === picked.id) ? `point ${picked.id}` : null;
  }
}
