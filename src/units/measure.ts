import type { UnitSymbol } from "./table.js";

/** What a person sees; the site file's `units`. The engine is SI whatever this says. */
export type UnitSystem = "us" | "metric";

/** A value read from text, or a plain message that says what is accepted. Never NaN. */
export type Parsed = { ok: true; value: number } | { ok: false; text: string };

/** How to read: `bareUnit` is the unit of a number written without one (default: the label's). */
export interface ParseOptions {
  bareUnit?: UnitSymbol;
}

/** How to print; every field has a default that suits the kind of quantity. */
export interface PrintOptions {
  /** Print in this unit rather than the system's own. */
  unit?: UnitSymbol;
  /** Decimals. On a length, asks for decimal feet instead of feet and inches. */
  digits?: number;
  /** Finest part of an inch: 8 rounds to ⅛ inch. Lengths and sizes in US units only. */
  inchParts?: 1 | 2 | 4 | 8 | 16;
  /** Leave the unit off, for a field or column that has it in its label. */
  bare?: boolean;
  /** Pipe slope: `per-foot` prints `¼ in per ft` (US) or `20 mm per m` (metric). */
  slope?: "percent" | "per-foot" | "ratio";
  /** Bearing: `quadrant` prints `N 45°30′ E`. */
  bearing?: "azimuth" | "quadrant";
}

/** One kind of quantity: how people write it, and how it is shown to them. */
export interface Measure {
  /** Name of the kind, such as "length" or "pipe slope". */
  readonly kind: string;
  /** Text to SI; accepts every unit of the kind in either system. */
  parse: (text: string, system: UnitSystem, options?: ParseOptions) => Parsed;
  /** SI to text with its unit. Throws on a number that is not finite: that is an engine fault. */
  print: (value: number, system: UnitSystem, options?: PrintOptions) => string;
  /** The unit of a bare number, for a field's label: "ft", "yd³", "%". */
  unitLabel: (system: UnitSystem) => string;
  /** SI to a number in the unit of `unitLabel`, unrounded. */
  toSystem: (value: number, system: UnitSystem) => number;
  /** A number in the unit of `unitLabel` to SI. */
  fromSystem: (value: number, system: UnitSystem) => number;
}

/** A number with thousands commas and fixed decimals, never "-0"; throws when not finite. */
export function plainNumber(value: number, digits: number): string {
  if (!Number.isFinite(value)) throw new Error(`cannot print ${value}: expected a finite number`);
  // Most of what is printed is a small whole number, which needs no format.
  if (digits === 0 && Number.isInteger(value) && Math.abs(value) < 1000) return String(value);
  const shown = decimals(digits).format(value);
  return /[1-9]/.test(shown) ? shown : shown.replace("-", "");
}

const formats = new Map<number, Intl.NumberFormat>();

/** Number formats are slow to make, so each is kept. */
function decimals(digits: number): Intl.NumberFormat {
  const kept = formats.get(digits);
  if (kept !== undefined) return kept;
  const made = new Intl.NumberFormat("en-US", {
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  });
  formats.set(digits, made);
  return made;
}
