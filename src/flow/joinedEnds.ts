import type { PlanPoint, Scheme, Work } from "../site/index.js";
import { planDistance, rectangleInPlan, type PlanShape } from "./planDistance.js";
import { FLOW_SETTINGS } from "./settings.js";

/** An end of a trench's path that lies at a work. */
export interface JoinedEnd {
  /** Id of the trench. */
  trench: string;
  end: "first" | "last";
}

/**
 * The ends of trenches that meet a work in plan, by the reach within which pipes count as joined to
 * it: those that have to come with it when it is moved.
 */
export function joinedEnds(scheme: Pick<Scheme, "works">, work: Work): JoinedEnd[] {
  const shape = shapeOf(work);
  if (shape === null) return [];
  const reach = FLOW_SETTINGS[work.kind === "tank" ? "meetsTankWithin" : "joinsWithin"];
  const meets = (place: PlanPoint | undefined): boolean =>
    place !== undefined && planDistance(shape, { points: [place], closed: false }) <= reach;
  return scheme.works.flatMap((trench): JoinedEnd[] => {
    if (trench.kind !== "trench") return [];
    return [
      ...(meets(trench.path[0]) ? [{ trench: trench.id, end: "first" as const }] : []),
      ...(meets(trench.path.at(-1)) ? [{ trench: trench.id, end: "last" as const }] : []),
    ];
  });
}

function shapeOf(work: Work): PlanShape | null {
  switch (work.kind) {
    case "tank":
      return rectangleInPlan({ at: work.at, bearing: work.bearing, ...work.body });
    case "bed":
      return rectangleInPlan(work);
    case "building":
      return { points: work.outline, closed: true };
    default:
      return null;
  }
}
