import type { PipeRun } from "../dig/index.js";
import type { Scheme, Tank } from "../site/index.js";
import { leastFallFor } from "./fallRules.js";
import { tankAt } from "./tankAt.js";

/** A tank as high as its drains allow. */
export interface HighestTank {
  tank: string;
  /** Elevation of its underside, m, and how far that is above where it stands now. */
  base: number;
  rise: number;
  /** The drain that decides, and the new elevation of every drain's far end there, m. */
  drain: string;
  inlet: number;
}

/**
 * The highest that a tank can stand with every gravity drain that ends at it still falling the least
 * for its size from where it starts: its inlet is then at the lowest of start − least fall × length.
 * Null for a tank without an inlet height, or that no drain enters.
 */
export function highestTank(
  tank: Tank,
  runs: readonly PipeRun[],
  scheme: Scheme,
): HighestTank | null {
  if (tank.body.inlet === undefined) return null;
  let lowest: { run: PipeRun; inlet: number } | undefined;
  for (const run of runs) {
    const [first, last] = [run.stations[0], run.stations.at(-1)];
    if (run.service !== "gravity" || first === undefined || last === undefined) continue;
    if (tankAt(last.at, scheme)?.id !== tank.id || !Number.isFinite(first.invert)) continue;
    const inlet = first.invert - leastFallFor(run.inside, scheme).value * run.length;
    if (lowest === undefined || inlet < lowest.inlet) lowest = { run, inlet };
  }
  if (lowest === undefined) return null;
  const base = lowest.inlet - tank.body.inlet;
  const { run, inlet } = lowest;
  return { tank: tank.id, base, rise: base - tank.base, drain: run.id, inlet };
}
