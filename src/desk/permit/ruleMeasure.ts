import { area, earthVolume, length, pipeSlope, wallSlope } from "../../units/index.js";
import type { Measure } from "../../units/index.js";
import type { Rule } from "../../site/index.js";
import { plain } from "../fields/plain.js";

/** A volume of earth with digits for a barrowful. */
const SMALL_VOLUME: Measure = {
  ...earthVolume,
  print: (value, units, options) => earthVolume.print(value, units, { digits: 3, ...options }),
};

/** How a rule's number is printed and read in the units of the site. */
export function ruleMeasure({ unit }: Pick<Rule, "unit">): Measure {
  if (unit === "m") return length;
  if (unit === "m²") return area;
  if (unit === "m³") return SMALL_VOLUME;
  if (unit === "run per rise") return wallSlope;
  if (unit === "rise per run") return pipeSlope;
  return plain;
}
