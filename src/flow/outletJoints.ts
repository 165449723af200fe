import type { PipeRun } from "../dig/index.js";
import type { Building, PlanPoint, Scheme } from "../site/index.js";
import { FLOW_SETTINGS } from "./settings.js";
import { tankAt } from "./tankAt.js";
import type { OutletJoint } from "./types.js";

type Outlet = NonNullable<Building["outlets"]>[number];

/**
 * The building's outlet that is nearest in plan to a place, if it comes within
 * `FLOW_SETTINGS.joinsWithin` of it. Of two equally near, the earlier in the scheme.
 */
export function outletAt(
  place: PlanPoint,
  scheme: Pick<Scheme, "works">,
): { building: Building; outlet: Outlet } | undefined {
  let best: { building: Building; outlet: Outlet; away: number } | undefined;
  for (const building of scheme.works) {
    if (building.kind !== "building") continue;
    for (const outlet of building.outlets ?? []) {
      const away = Math.hypot(outlet.at[0] - place[0], outlet.at[1] - place[1]);
      if (away <= FLOW_SETTINGS.joinsWithin && away < (best?.away ?? Infinity)) {
        best = { building, outlet, away };
      }
    }
  }
  return best;
}

/**
 * Where the near ends of gravity pipes meet outlets of buildings. A pipe that starts at a tank is
 * that tank's; one that meets no outlet, or whose invert there is not known, has no joint.
 */
export function outletJoints(runs: readonly PipeRun[], scheme: Scheme): OutletJoint[] {
  return runs.flatMap((run): OutletJoint[] => {
    const first = run.stations[0];
    if (run.service !== "gravity" || first === undefined || !Number.isFinite(first.invert)) {
      return [];
    }
    const met = tankAt(first.at, scheme) === undefined ? outletAt(first.at, scheme) : undefined;
    if (met === undefined) return [];
    const { building, outlet } = met;
    return [
      {
        pipe: run.id,
        building: building.id,
        outlet: outlet.id,
        name: `${outlet.name} of ${building.name}`,
        side: "outlet",
        pipeInvert: first.invert,
        outletInvert: outlet.invert,
        off: first.invert - outlet.invert,
      },
    ];
  });
}
