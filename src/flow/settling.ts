/** Pumps in tanks that take a building's drain with no tank before them. */
import type { PipeRun } from "../dig/index.js";
import type { Finding, Scheme } from "../site/index.js";
import { outletJoints } from "./outletJoints.js";
import { FLOW_SETTINGS } from "./settings.js";
import { tankAt } from "./tankAt.js";

const SOURCE =
  "US EPA 832-F-00-079 (2000), Septic Tank Systems for Large Flow Applications: a septic tank holds the wastewater so that solids settle and grease floats, at least 24 hours; that a pump tank stands after it: US EPA 625/R-00/008 (2002), chapter 4 (recalled)";

/**
 * One finding for every tank with a pump that a building's drain comes to, by itself or through other
 * gravity pipes, with no tank between. A tank's compartments are not in the site file, so that only
 * the person can say that it settles.
 */
export function settlingFindings(runs: readonly PipeRun[], scheme: Scheme): Finding[] {
  const drains = new Map(outletJoints(runs, scheme).map(({ pipe, name }) => [pipe, name]));
  const pumped = new Set((scheme.flow?.pressure ?? []).map(({ tank }) => tank));
  return scheme.works.flatMap((work): Finding[] => {
    if (work.kind !== "tank" || !pumped.has(work.id)) return [];
    const from = upstream(work.id, runs, scheme).flatMap((run) => drains.get(run.id) ?? []);
    if (from.length === 0) return [];
    return [
      {
        level: "caution",
        code: "chamber.no-settling",
        where: work.id,
        text: `${work.name} takes what comes from ${from.join(" and ")} with no settling tank before it, and a pump stands in it. Solids reach the pump, and through it the field, unless this tank has a settling compartment and a filter before the pump. Ask its maker, or place a septic tank before it; check your local code.`,
        source: SOURCE,
      },
    ];
  });
}

/** The gravity pipes through which water comes to a tank, up to the tanks and buildings before it. */
function upstream(tank: string, runs: readonly PipeRun[], scheme: Scheme): PipeRun[] {
  const gravity = runs.filter(({ service }) => service === "gravity");
  const found = gravity.filter((run) => {
    const end = run.stations.at(-1);
    return end !== undefined && tankAt(end.at, scheme)?.id === tank;
  });
  // Grows while it is gone through: each pipe brings those that end where it starts.
  for (const run of found) {
    const start = run.stations[0];
    if (start === undefined || tankAt(start.at, scheme) !== undefined) continue;
    for (const other of gravity) {
      const end = other.stations.at(-1);
      if (end === undefined || found.includes(other)) continue;
      const apart = Math.hypot(end.at[0] - start.at[0], end.at[1] - start.at[1]);
      if (apart <= FLOW_SETTINGS.joinsWithin) found.push(other);
    }
  }
  return found;
}
