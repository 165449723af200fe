/** Round figures for axes. */
import { FOOT } from "./table.js";
import type { UnitSystem } from "./measure.js";

/** A figure on an axis: where it stands, m, and what it says in the site's unit. */
export interface Tick {
  at: number;
  text: string;
}

/** Round figures from `low` to `high` (m), at least `apart` m from one another. */
export function ticks(low: number, high: number, apart: number, units: UnitSystem): Tick[] {
  const unit = units === "us" ? FOOT : 1;
  const step = roundStep(apart / unit);
  const digits = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const out: Tick[] = [];
  for (let k = Math.ceil(low / unit / step - 1e-9); k * step * unit <= high + 1e-9; k++) {
    const shown = (k * step).toLocaleString("en-US", {
      minimumFractionDigits: digits,
      maximumFractionDigits: digits,
    });
    out.push({ at: k * step * unit, text: shown === "-0" ? "0" : shown });
  }
  return out;
}

/** The least of 1, 2, 5, 10 … that is not under a number. */
function roundStep(least: number): number {
  const decade = 10 ** Math.floor(Math.log10(least));
  return ([1, 2, 5, 10].find((each) => each * decade >= least * (1 - 1e-9)) ?? 10) * decade;
}
