import { groundColumn, type BaseGround, type LayeredGround } from "../ground/index.js";
import type { PlanPoint } from "../site/index.js";

/** Elevation of the ground as a dig has left it, m; NaN beyond the survey. Before its release. */
export function heightAfter(ground: LayeredGround, base: BaseGround, place: PlanPoint): number {
  const [ox, oy, oz] = base.tin.origin;
  const top = groundColumn(ground, place[0] - ox, place[1] - oy)?.[0]?.top;
  return top === undefined ? NaN : top + oz;
}
