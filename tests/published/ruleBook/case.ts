/** What a test knows of one rule of the book. */
import type { Rules } from "../../fixtures/job.js";

/** What the estimate says where the rule speaks; a place of the permit's list names no source. */
export interface Said {
  text: string;
  source?: string;
}

interface Numbered {
  id: string;
  /** The number as published, in the rule's own SI unit, written out from its own words. */
  value: number;
  /** Where it is published, as the catalogue has to cite it; "practice" where nothing is. */
  source: string;
  /** A local number to be put in its place. */
  local: number;
}

/** A rule at which something begins to be said. */
export interface Threshold extends Numbered {
  /** On which side of the number it speaks. */
  speaks: "above" | "below";
  /** How far from the number it is asked, in the rule's unit. */
  step: number;
  /** What is said of a job built to have this figure; null where nothing is. */
  asks: (figure: number, rules: Rules) => Said | null;
}

/** A rule that sets a figure and is compared with nothing. */
export interface Setting extends Numbered {
  /** Decimals to which the figure is met; 9 unless said. */
  digits?: number;
  /** The figure as the job's result has it. */
  sets: (rules: Rules) => number;
}

export type RuleCase = Threshold | Setting;
