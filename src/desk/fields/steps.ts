import type { Measure, PrintOptions, UnitSystem } from "../../units/index.js";

/**
 * What one press of an arrow key adds, in the unit of the field's label (`unitLabel`), by the kind
 * of measure. Chosen for this page: a part that people set out on the ground.
 */
const STEPS: Readonly<Record<string, Readonly<Record<UnitSystem, number>>>> = {
  length: { us: 1 / 12, metric: 0.05 },
  distance: { us: 0.5, metric: 0.1 },
  elevation: { us: 0.1, metric: 0.05 },
  size: { us: 0.25, metric: 5 },
  area: { us: 10, metric: 1 },
  volume: { us: 1, metric: 1 },
  "liquid volume": { us: 10, metric: 50 },
  flow: { us: 0.5, metric: 0.05 },
  "daily flow": { us: 10, metric: 50 },
  "digging rate": { us: 1, metric: 1 },
  head: { us: 0.5, metric: 0.1 },
  pressure: { us: 0.5, metric: 5 },
  weight: { us: 50, metric: 25 },
  "load weight": { us: 1, metric: 1 },
  density: { us: 10, metric: 10 },
  velocity: { us: 0.1, metric: 0.05 },
  time: { us: 0.5, metric: 0.5 },
  "number of days": { us: 0.5, metric: 0.5 },
  "pipe slope": { us: 0.1, metric: 0.1 },
  "wall slope": { us: 0.25, metric: 0.25 },
  bearing: { us: 1, metric: 1 },
  share: { us: 1, metric: 1 },
  count: { us: 1, metric: 1 },
};

/** With Shift, so many steps at once: a foot of inches, else ten. */
const LARGE = { inches: 12, other: 10 } as const;

/** Decimal feet and fine sizes go in decimals: their print would round other steps. */
function stepSize(
  measure: Measure,
  system: UnitSystem,
  value: number,
  print: PrintOptions | undefined,
): number {
  const known = STEPS[measure.kind]?.[system];
  if (known === undefined) {
    // Money and plain numbers: a step in the second figure of the number itself.
    const digit = value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value))) - 1;
    return Math.max(0.01, 10 ** Math.min(digit, 3));
  }
  if (measure.kind === "length" && print?.digits !== undefined) return 0.1;
  if (measure.kind === "size" && (print?.digits ?? 0) > 2) return system === "us" ? 1 / 32 : 0.5;
  return known;
}

interface Step {
  measure: Measure;
  system: UnitSystem;
  /** SI. */
  from: number;
  by: 1 | -1;
  large: boolean;
  print?: PrintOptions | undefined;
}

/** The next round value up or down, SI: a value between two steps goes to the nearer end first. */
export function stepped({ measure, system, from, by, large, print }: Step): number {
  const value = measure.toSystem(from, system);
  const one = stepSize(measure, system, value, print);
  const inches = measure.kind === "length" && system === "us" && one < 0.1;
  const step = one * (large ? (inches ? LARGE.inches : LARGE.other) : 1);
  const count = value / step;
  const near = Math.round(count);
  // What is within a thousandth of a step of a round value counts as that value.
  const at = Math.abs(count - near) < 1e-3 ? near : by > 0 ? Math.floor(count) : Math.ceil(count);
  return measure.fromSystem((at + by) * step, system);
}
