import { groundColumn, type BaseGround, type LayeredGround } from "../ground/index.js";
import type { PlanPoint } from "../site/index.js";

/** Elevations of the ground as a dig has left it, m, to be read before its release; NaN beyond the survey. */
export function heightsAfter(
  ground: LayeredGround,
  { tin }: BaseGround,
): (place: PlanPoint) => number {
  const [ox, oy, oz] = tin.origin;
  return ([x, y]) => {
    const top = groundColumn(ground, x - ox, y - oy)?.[0]?.top;
    return top === undefined ? NaN : top + oz;
  };
}
