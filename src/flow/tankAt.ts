import type { PlanPoint, Scheme, Tank } from "../site/index.js";
import { planDistance, rectangleInPlan } from "./planDistance.js";
import { FLOW_SETTINGS } from "./settings.js";

/**
 * The tank whose body is nearest in plan to a place, if its body comes within
 * `FLOW_SETTINGS.meetsTankWithin` of it (or, with `holeCounts`, within its hole's overdig and that
 * again); undefined when none does. Of two equally near, the earlier in the scheme.
 */
export function tankAt(
  place: PlanPoint,
  scheme: Pick<Scheme, "works">,
  holeCounts = false,
): Tank | undefined {
  let best: { tank: Tank; away: number } | undefined;
  for (const work of scheme.works) {
    if (work.kind !== "tank") continue;
    const body = rectangleInPlan({ at: work.at, bearing: work.bearing, ...work.body });
    const away = planDistance(body, { points: [place], closed: false });
    const reach = FLOW_SETTINGS.meetsTankWithin + (holeCounts ? work.overdig : 0);
    if (away <= reach && (best === undefined || away < best.away)) best = { tank: work, away };
  }
  return best?.tank;
}
