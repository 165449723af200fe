/** Distances printed on the cautious side: what is short stays short, what is enough stays enough. */
import { distance } from "./kinds.js";
import type { UnitSystem } from "./measure.js";
import { FOOT } from "./table.js";

/** Part of a step that is taken as rounding noise rather than as an amount. */
const SLACK = 1e-6;

/** m as `distance` prints them, to the tenth of a foot or the centimetre, never rounded up. */
export function distanceAtMost(metres: number, units: UnitSystem): string {
  const step = stepOf(units);
  return distance.print(Math.floor(metres / step + SLACK) * step, units);
}

/** As `distanceAtMost`, never rounded down. */
export function distanceAtLeast(metres: number, units: UnitSystem): string {
  const step = stepOf(units);
  return distance.print(Math.ceil(metres / step - SLACK) * step, units);
}

/** m of the last digit that `distance` shows. */
function stepOf(units: UnitSystem): number {
  return units === "us" ? FOOT / 10 : 0.01;
}
