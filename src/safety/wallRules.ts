import walls from "../../shared/catalogue/walls.json" with { type: "json" };
import { ruleOf, type Locality, type Rule } from "../site/index.js";

/** One soil class and the steepest temporary wall it is allowed, run per 1 of rise. */
export interface WallClass {
  id: string;
  name: string;
  run: number;
  note: string;
}

/** Soil classes of Table B-1, up to 20 ft deep. Source: `wallClassSource()`. */
export function wallClasses(): readonly WallClass[] {
  return walls.classes;
}

export function wallClassSource(): string {
  return walls.classesSource;
}

/** Where the rule on differing layers comes from. */
export function layersSource(): string {
  return walls.layersSource;
}

/** Depths and distances at which the rules of 29 CFR 1926 Subpart P begin on a site, m. */
export function depthTriggers(site: Locality = {}): Record<DepthTrigger, Rule> {
  return {
    protectFrom: ruleOf(site, "protect-from"),
    stricterStates: ruleOf(site, "stricter-states"),
    wayOutFrom: ruleOf(site, "way-out-from"),
    wayOutWithin: ruleOf(site, "way-out-within"),
    engineerOver: ruleOf(site, "engineer-over"),
    spoilBack: ruleOf(site, "spoil-back"),
  };
}

/** The sources of some rules, each once. */
export function sourcesOf(rules: readonly Pick<Rule, "source">[]): string {
  return [...new Set(rules.map(({ source }) => source))].join("; ");
}

type DepthTrigger =
  "protectFrom" | "stricterStates" | "wayOutFrom" | "wayOutWithin" | "engineerOver" | "spoilBack";

/**
 * Steepest run of each layer in one wall, top down, given each layer's own steepest run, top down:
 * no layer may be steeper than any below it, so each takes the largest of its own and of all below.
 * Source: 29 CFR 1926 Subpart P, App. A (c)(4); App. B Figure B-1, the rest derived.
 */
export function layeredRuns(ownRuns: readonly number[]): number[] {
  let flattest = 0;
  const fromBelow = [...ownRuns].reverse().map((run) => (flattest = Math.max(flattest, run)));
  return fromBelow.reverse();
}

/**
 * Width at the top of a hole in level ground, m: the floor and, on each of two sides, the sum of
 * each layer's thickness times its run. Layers top down. Throws when the two lists differ in length.
 */
export function topWidth(
  floor: number,
  thickness: readonly number[],
  runs: readonly number[],
): number {
  if (thickness.length !== runs.length) {
    throw new Error(
      `topWidth: got ${thickness.length} layers and ${runs.length} runs, expected as many`,
    );
  }
  return thickness.reduce((sum, depth, i) => sum + 2 * depth * (runs[i] ?? 0), floor);
}
