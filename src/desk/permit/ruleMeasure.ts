import { area, length, pipeSlope, wallSlope } from "../../units/index.js";
import type { Measure } from "../../units/index.js";
import type { Rule } from "../../site/index.js";
import { plain } from "../fields/plain.js";

/** How a rule's number is printed and read in the units of the site. */
export function ruleMeasure({ unit }: Pick<Rule, "unit">): Measure {
  if (unit === "m") return length;
  if (unit === "m²") return area;
  if (unit === "run per rise") return wallSlope;
  if (unit === "rise per run") return pipeSlope;
  return plain;
}
