import type { Limit, PlanPoint } from "../../site/index.js";

/** m: places nearer than this are one; a lot line is laid to the millimetre. */
const NEAR = 0.001;

/** The limit among some whose line runs through just these places, m; null for none. */
export function sameLine(
  limits: readonly Limit[],
  path: readonly PlanPoint[],
  closed: boolean,
): Limit | null {
  return (
    limits.find(
      (limit) =>
        (limit.closed === true) === closed &&
        limit.path?.length === path.length &&
        limit.path.every(([x, y], i) => Math.hypot(x - path[i]![0], y - path[i]![1]) < NEAR),
    ) ?? null
  );
}
