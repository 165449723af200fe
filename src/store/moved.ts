import {
  changePoint,
  changeProbe,
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

/** The site with what is picked moved by `by` metres in plan; elevations stay as they are. */
export function withMoved(site: Site, schemeId: string, picked: Picked, by: PlanPoint): Site {
  switch (picked.kind) {
    case "work":
      return moveWork(site, schemeId, picked.id, by);
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
