import type { Finding, Scheme, Site } from "../site/index.js";
import { area, distance, length, liquidVolume } from "../units/index.js";
import { pathLength, type Sizing } from "./design.js";

/** Part of a tank's volume that is rounding of gallons: 1,000 gal is entered as 3.785 m³. */
const ROUNDED = 1e-3;

/** Tanks and field that are smaller than the design flow and the soil ask for. */
export function sizingFindings(sizing: Sizing, scheme: Scheme, units: Site["units"]): Finding[] {
  const findings: Finding[] = [];
  const say = (level: Finding["level"], code: string, text: string, source: string): void => {
    findings.push({ level, code, where: "site", text, source });
  };
  const { leastTank, tanks, loading, areaWanted, field } = sizing;
  if (leastTank !== undefined && tanks.value < leastTank.value * (1 - ROUNDED)) {
    const text = `The tanks hold ${liquidVolume.print(tanks.value, units)}; ${liquidVolume.print(leastTank.value, units)} is wanted. Check your local code.`;
    say("caution", "sizing.tank-small", text, leastTank.source);
  }
  if (loading !== undefined && loading.value === 0) {
    const text =
      "This class of soil is called unsuitable for taking effluent. Another place, a raised bed or imported soil may be an answer: ask your health department.";
    say("caution", "sizing.soil-unsuitable", text, loading.source);
  }
  if (scheme.flow?.soil?.by === "percolation" && loading === undefined) {
    const text =
      "The percolation rate lies outside its table: soil too fast or too slow for it wants a designer.";
    say("caution", "sizing.percolation-outside", text, "the table chosen under Flow");
  }
  // Without a field named there is nothing to measure.
  const named = (scheme.flow?.field ?? []).length > 0;
  if (named && areaWanted !== undefined && field.value < areaWanted.value * (1 - 1e-9)) {
    const text = `The field has ${area.print(field.value, units)} of bottom; ${area.print(areaWanted.value, units)} is wanted for the design flow in this soil.${trenchThatWouldDo(scheme, areaWanted.value - field.value, units)}`;
    say("caution", "sizing.field-small", text, areaWanted.source);
  }
  return findings;
}

/** The trench that is missing, where trenches of one width take the water; else nothing. */
function trenchThatWouldDo(scheme: Scheme, missing: number, units: Site["units"]): string {
  const ids = new Set(scheme.flow?.field ?? []);
  const trenches = scheme.works.flatMap((work) =>
    ids.has(work.id) && work.kind === "trench" ? [work] : [],
  );
  const [first] = trenches;
  if (first === undefined || trenches.some(({ width }) => width !== first.width)) return "";
  const there = trenches.reduce((sum, { path }) => sum + pathLength(path), 0);
  const more = missing / first.width;
  const wide = length.print(first.width, units);
  const [all, rest] = [enough(there + more, units), enough(more, units)];
  return ` At ${wide} wide that is ${all} of trench, ${rest} more than is drawn, or a wider one.`;
}

/** A distance that is not rounded down: what is enough stays enough as printed. */
function enough(metres: number, units: Site["units"]): string {
  const step = units === "us" ? 0.03048 : 0.01;
  return distance.print(Math.ceil(metres / step - 1e-6) * step, units);
}
