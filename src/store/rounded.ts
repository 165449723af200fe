/** How finely what is placed by hand is kept. */
import type { PlanPoint } from "../site/index.js";

const CENTIMETRES = 100;
const MILLIMETRES = 1000;

/** A level or height, m. */
export const toCentimetre = (metres: number): number =>
  Math.round(metres * CENTIMETRES) / CENTIMETRES;

/** A place in plan, m: feet that were typed come back as they were, to the hundredth. */
export const toMillimetre = ([x, y]: PlanPoint): PlanPoint => [
  Math.round(x * MILLIMETRES) / MILLIMETRES,
  Math.round(y * MILLIMETRES) / MILLIMETRES,
];
