/** Scales of profiles and sections, and how they are said. */
import type { Site } from "../../site/index.js";
import { words } from "../../words/index.js";
import { scaleInWords, scaleRatio } from "../scale.js";

type Units = Site["units"];

/** Those of an engineer's scale, 1 in to 1 … 6, 10 … ft; metric: ISO 5455:1979 and 1 : 25, 1 : 250 (recalled). */
export const SECTION_SCALES: Readonly<Record<Units, readonly number[]>> = {
  us: [1, 2, 3, 4, 5, 6, 10, 20, 30, 40, 50, 60, 100, 200, 300, 400].map((feet) => 12 * feet),
  metric: [10, 20, 25, 50, 100, 200, 250, 500, 1000, 2000, 5000],
};

/** As those of sections, and larger. */
export const DETAIL_SCALES: Readonly<Record<Units, readonly number[]>> = {
  us: [0.5, 1, 2, 3, 4, 5, 6, 10, 20, 30].map((feet) => 12 * feet),
  metric: [5, 10, 20, 25, 50, 100, 200, 500],
};

/**
 * n of the largest usual scale (the smallest n) at which `metres` take no more than `mm` of paper;
 * past the list the smallest thousand that does.
 */
export function scaleFor(metres: number, mm: number, units: Units, from = 0): number {
  const least = Math.max((metres * 1000) / mm, from) * (1 - 1e-9);
  const usual = SECTION_SCALES[units].find((scale) => scale >= least);
  return usual ?? Math.ceil(least / 1000) * 1000;
}

/** "1 in = 10 ft (1 : 120)" or "1 cm = 1 m (1 : 100)". */
export function sayScale(scale: number, units: Units): string {
  return words.sheetsSections.bothScales(scaleInWords(scale, units), scaleRatio(scale));
}
