import type { PipeRun } from "./types.js";

/**
 * m along a pipe from end to end, up and down with it: what is bought, and what friction works on.
 * Where the height of a place between the ends is not known (beyond the survey), straight between them.
 */
export function pipeLength({
  stations,
  length,
  drop,
}: Pick<PipeRun, "stations" | "length" | "drop">): number {
  const along = stations.slice(1).reduce((sum, to, i) => {
    const from = stations[i]!;
    return sum + Math.hypot(to.station - from.station, to.invert - from.invert);
  }, 0);
  return Number.isFinite(along) ? along : Math.hypot(length, drop);
}
