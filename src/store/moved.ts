import {
  addCorner,
  findWork,
  moveOneCorner,
  removeLimit,
  removePoint,
  removeProbe,
  removeWork,
  turnWork,
} from "../site/index.js";
import type { PlanPoint, Site } from "../site/index.js";
import type { DragStep, Picked } from "./deskState.js";
import { withAllMoved, withAllRaised } from "./movedTogether.js";

/** The site with one thing moved by `by` metres in plan, as `withAllMoved` moves several. */
export function withMoved(site: Site, schemeId: string, picked: Picked, by: PlanPoint): Site {
  return withAllMoved(site, schemeId, [picked], by);
}

/**
 * The site as one step of a drag leaves it, reckoned from the site as the drag began; what is picked
 * together moves and rises together.
 */
export function withDragged(
  begun: Site,
  schemeId: string,
  step: DragStep,
  together: readonly Picked[] = [step.selection],
): Site {
  const { selection, by, corner, onSide, turnTo, raise } = step;
  if (onSide !== undefined) {
    const at: PlanPoint = [onSide.at[0] + by[0], onSide.at[1] + by[1]];
    return addCorner(begun, schemeId, selection, onSide.side, at);
  }
  if (raise !== undefined) return withAllRaised(begun, schemeId, together, raise);
  if (selection.kind === "work" && turnTo !== undefined) {
    return turnWork(begun, schemeId, selection.id, turnTo);
  }
  if (corner !== undefined) return moveOneCorner(begun, schemeId, selection, corner, by);
  return withAllMoved(begun, schemeId, together, by);
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
    case "limit":
      return removeLimit(site, picked.id);
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
    case "limit": {
      const limit = site.limits?.find((one) => one.id === picked.id);
      return limit === undefined ? null : (limit.name ?? limit.kind);
    }
  }
}
