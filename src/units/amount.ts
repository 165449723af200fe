import { plainNumber } from "./measure.js";
import type { Measure, Parsed, PrintOptions, UnitSystem } from "./measure.js";
import { plainText, readAmount } from "./reading.js";
import { unitRow } from "./table.js";
import type { Dimension, UnitSymbol } from "./table.js";

/** What makes one kind of amount out of the table of units. */
export interface AmountKind {
  kind: string;
  dimension: Dimension;
  /** The unit of the value that the engine holds. */
  held: UnitSymbol;
  shown: Readonly<Record<UnitSystem, UnitSymbol>>;
  digits: Readonly<Record<UnitSystem, number>>;
  /** May be below zero when typed; anything may be printed below zero. */
  signed: boolean;
  /** Prints feet and inches in US units, to this part of an inch. */
  feetInches?: 2 | 4 | 8 | 16;
  /** Prints inches with a fraction in US units, to this part of an inch. */
  inches?: 2 | 4 | 8 | 16;
  /** Examples for the message, such as `6' 4 1/2", 76 in or 1.9 m`. */
  examples: Readonly<Record<UnitSystem, string>>;
}

/** "a" or "an", by the first letter. */
const article = (noun: string): string => (/^[aeiou]/i.test(noun) ? "an" : "a");

/** The message for text that was not understood: what was written, and what is accepted. */
export function notRead(text: string, kind: string, examples: string): Parsed {
  const written = text.trim();
  const start =
    written === "" ? "Nothing was written" : `“${written.slice(0, 40)}” was not understood`;
  return { ok: false, text: `${start}: write ${article(kind)} ${kind} such as ${examples}.` };
}

/** A measure read and printed by the table of units. */
export function amountMeasure(spec: AmountKind): Measure {
  const held = unitRow(spec.dimension, spec.held).size;
  const shown = (system: UnitSystem) => unitRow(spec.dimension, spec.shown[system]);
  return {
    kind: spec.kind,
    parse(text, system, options) {
      const bare = unitRow(spec.dimension, options?.bareUnit ?? spec.shown[system]);
      const amount = readAmount(plainText(text), spec.dimension, system, bare);
      if (amount === undefined) return notRead(text, spec.kind, spec.examples[system]);
      if (amount < 0 && !spec.signed) {
        return {
          ok: false,
          text: `${article(spec.kind) === "an" ? "An" : "A"} ${spec.kind} cannot be below zero.`,
        };
      }
      return { ok: true, value: amount / held };
    },
    print: (value, system, options = {}) => printAmount(spec, value, system, options),
    unitLabel: (system) => spec.shown[system],
    toSystem: (value, system) => (value * held) / shown(system).size,
    fromSystem: (value, system) => (value * shown(system).size) / held,
  };
}

function printAmount(
  spec: AmountKind,
  value: number,
  system: UnitSystem,
  options: PrintOptions,
): string {
  const symbol = options.unit ?? spec.shown[system];
  const inUnit =
    (value * unitRow(spec.dimension, spec.held).size) / unitRow(spec.dimension, symbol).size;
  const fraction =
    options.digits === undefined && options.bare !== true && options.unit === undefined;
  if (fraction && system === "us" && spec.feetInches !== undefined) {
    return feetAndInches(inUnit, options.inchParts ?? spec.feetInches);
  }
  if (fraction && system === "us" && spec.inches !== undefined) {
    return inchesAlone(inUnit, options.inchParts ?? spec.inches);
  }
  const number = plainNumber(inUnit, options.digits ?? spec.digits[system]);
  return options.bare === true ? number : `${number} ${symbol}`;
}

const EIGHTHS = ["", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"];

/**
 * A count of parts of a whole as whole and fraction: (37, 8) is `4⅝`, (73, 16) is `4 9⁄16`, with the
 * slash that fonts make a fraction of. `parts` is not negative.
 */
export function mixedNumber(parts: number, perWhole: number): string {
  const whole = Math.floor(parts / perWhole);
  const rest = parts - whole * perWhole;
  const eighths = (rest * 8) / perWhole;
  if (rest === 0) return plainNumber(whole, 0);
  if (Number.isInteger(eighths)) {
    return `${whole === 0 ? "" : plainNumber(whole, 0)}${EIGHTHS[eighths] ?? ""}`;
  }
  return `${whole === 0 ? "" : `${plainNumber(whole, 0)} `}${rest}⁄${perWhole}`;
}

/** Feet to `6′ 4½″`, rounded to a part of an inch; `4½″` under a foot; throws when not finite. */
export function feetAndInches(feet: number, inchParts: number): string {
  if (!Number.isFinite(feet)) throw new Error(`cannot print ${feet}: expected finite feet`);
  const parts = Math.round(Math.abs(feet) * 12 * inchParts);
  const sign = feet < 0 && parts > 0 ? "-" : "";
  const wholeFeet = Math.floor(parts / (12 * inchParts));
  const left = parts - wholeFeet * 12 * inchParts;
  const inches = mixedNumber(left, inchParts);
  if (wholeFeet === 0) return `${sign}${inches}″`;
  // "6′ ½″" may be read as six and a half feet.
  if (left > 0 && left < inchParts) {
    const gap = Number.isInteger((left * 8) / inchParts) ? "" : " ";
    return `${sign}${plainNumber(wholeFeet, 0)}′ 0${gap}${inches}″`;
  }
  return `${sign}${plainNumber(wholeFeet, 0)}′ ${inches}″`;
}

/** Inches to `4½ in`, rounded to a part of an inch; throws when not finite. */
function inchesAlone(inches: number, inchParts: number): string {
  if (!Number.isFinite(inches)) throw new Error(`cannot print ${inches}: expected finite inches`);
  const parts = Math.round(Math.abs(inches) * inchParts);
  return `${inches < 0 && parts > 0 ? "-" : ""}${mixedNumber(parts, inchParts)} in`;
}
