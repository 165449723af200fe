import { distance, length, size } from "./kinds.js";
import type { UnitSystem } from "./measure.js";

/**
 * Lengths in a text that is written before it is known in whose units it will be read: the ground is
 * worked out once for a survey, whatever units the site is shown in.
 */

/** Begin and end of a mark: code points of private use, which no name that people type holds. */
const [BEGIN, END] = ["\uE000", "\uE001"];

/** How a marked length prints: as lengths do, as a signed distance in tenths, or as a small size. */
export type MarkedKind = "length" | "distance" | "size";

const MEASURES = { length, distance, size } as const;

/** A length, m, to stand in such a text. */
export function markLength(metres: number, kind: MarkedKind = "length"): string {
  return `${BEGIN}${kind} ${metres}${END}`;
}

const MARK = new RegExp(`${BEGIN}(length|distance|size) ([^${END}]+)${END}`, "g");

/** The text with every marked length in a site's units. */
export function printMarked(text: string, units: UnitSystem): string {
  if (!text.includes(BEGIN)) return text;
  return text.replace(MARK, (_mark, kind: MarkedKind, metres: string) =>
    MEASURES[kind].print(Number(metres), units),
  );
}
