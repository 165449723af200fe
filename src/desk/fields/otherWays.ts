import { plainNumber } from "../../units/index.js";
import type { Measure, PrintOptions, UnitSystem } from "../../units/index.js";
import { words } from "../../words/index.js";

/** Whether this kind of value reads otherwise on a site in the other units. */
export const changesWithUnits = (measure: Measure): boolean =>
  measure.unitLabel("us") !== measure.unitLabel("metric");

/** The same value as it may also be written; empty where there is one way only. */
export function otherWays(
  measure: Measure,
  value: number,
  system: UnitSystem,
  print?: PrintOptions,
): string[] {
  const ways: string[] = [];
  const shown = measure.print(value, system, print);
  if (measure.kind === "length" || measure.kind === "distance" || measure.kind === "elevation") {
    if (system === "us") ways.push(measure.print(value, "us", { digits: 2 }));
    if (system === "us" && Math.abs(value) < 3) {
      ways.push(measure.print(value, "us", { unit: "in", digits: 1 }));
    }
  }
  if (changesWithUnits(measure)) ways.push(measure.print(value, other(system), print));
  if (measure.kind === "pipe slope") {
    ways.push(measure.print(value, "us", { slope: "per-foot" }));
    ways.push(measure.print(value, "metric", { slope: "per-foot" }));
    if (value !== 0)
      ways.push(words.deskFields.riseToRun(measure.print(value, system, { slope: "ratio" })));
  }
  if (measure.kind === "wall slope") {
    ways.push(words.deskFields.upFromLevel(plainNumber((Math.atan2(1, value) * 180) / Math.PI, 0)));
  }
  if (measure.kind === "bearing") ways.push(measure.print(value, system, { bearing: "quadrant" }));
  return [...new Set(ways)].filter((way) => way !== shown);
}

const other = (system: UnitSystem): UnitSystem => (system === "us" ? "metric" : "us");
