import type { UnitSystem } from "./measure.js";
import { UNITS } from "./table.js";
import type { Dimension, UnitRow } from "./table.js";

const LONGEST_TEXT = 80;

const VULGAR: Readonly<Record<string, string>> = {
  "½": "1/2",
  "⅓": "1/3",
  "⅔": "2/3",
  "¼": "1/4",
  "¾": "3/4",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/**
 * Text as people and phones write it, in one plain lower-case form: primes and curly quotes become
 * ' and ", fraction characters become `n/d` with a space before, every dash a hyphen, every space a
 * single plain one. Raised ² and ³ stay, so that `6 ft²` cannot be read as 6 ft 2 in.
 */
export function plainText(text: string): string {
  return text
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/g, (mark) => ` ${VULGAR[mark] ?? mark}`)
    .replace(/⁄/g, "/")
    .replace(/′′|’’|''|″|”|“|〃|ʺ/g, '"')
    .replace(/′|’|‘|ʹ|`|´/g, "'")
    .replace(/[−–—‒‐‑]/g, "-")
    .replace(/[º˚]/g, "°")
    .replace(/∶/g, ":")
    .replace(/\s+/g, " ")
    .trim()
    .toLowerCase();
}

/** A number at the front of plain text and what is left after it; undefined when there is none. */
export interface NumberRead {
  value: number;
  rest: string;
  /** False for `1.5` or `1 1/2`. */
  whole: boolean;
}

/**
 * Reads a number without sign from the front of plain text: `1,900`, `1 900`, `1.9`, `.5`, `1/4`,
 * `4 1/2`, `4-1/2`. A comma between groups of three digits marks thousands in both systems. Any
 * other single comma is a decimal comma on a metric site (`1,9`, `0,900`, `1.900,5`); on a US one
 * only where one or two digits follow or a nought stands before it (`1,9`, `0,900`): `1,9000` may
 * be a slip in the thousands. So `1,900 mm` is 1900 everywhere.
 */
export function readNumber(text: string, system: UnitSystem): NumberRead | undefined {
  const fraction =
    /^(?:([1-9]\d{0,2}(?:[, ]\d{3})+|\d+)(?: |-| - ))?(\d+) ?\/ ?(\d+)(?![\d.,])/.exec(text);
  if (fraction !== null) return readFraction(fraction, text);
  const spaced = /^\d{1,3}(?: \d{3})+(?:[.,]\d+)?(?![\d.,/])/.exec(text);
  const digits = spaced ?? /^(?:\d[\d.,]*|[.,]\d+)/.exec(text);
  if (digits === null) return undefined;
  const written = digits[0].replace(/ /g, "");
  const value = decimalValue(written, system);
  if (value === undefined || !Number.isFinite(value)) return undefined;
  return { value, rest: text.slice(digits[0].length), whole: Number.isInteger(value) };
}

function readFraction(match: RegExpExecArray, text: string): NumberRead | undefined {
  const whole = Number((match[1] ?? "0").replace(/[, ]/g, ""));
  const top = Number(match[2]);
  const bottom = Number(match[3]);
  const improper = match[1] !== undefined && top >= bottom;
  const value = whole + top / bottom;
  if (bottom === 0 || improper || !Number.isFinite(value)) return undefined;
  return { value, rest: text.slice(match[0].length), whole: false };
}

function decimalValue(written: string, system: UnitSystem): number | undefined {
  if (/^[1-9]\d{0,2}(,\d{3})+(\.\d*)?$/.test(written)) return Number(written.replace(/,/g, ""));
  if (/^(\d+\.?\d*|\.\d+)$/.test(written)) return Number(written);
  if (system === "us" && !/^(\d*,\d{1,2}|0?,\d+)$/.test(written)) return undefined;
  if (/^[1-9]\d{0,2}(\.\d{3})+,\d+$/.test(written)) {
    return Number(written.replace(/\./g, "").replace(",", "."));
  }
  if (/^\d*,\d+$/.test(written)) return Number(written.replace(",", "."));
  return undefined;
}

interface UnitName {
  name: string;
  unit: UnitRow;
}

const namesByDimension = new Map<string, readonly UnitName[]>();

/** Every way to write a unit of the dimension, longest first so that `mm` is tried before `m`. */
function unitNames(dimension: Dimension, system: UnitSystem): readonly UnitName[] {
  const key = `${dimension} ${system}`;
  const kept = namesByDimension.get(key);
  if (kept !== undefined) return kept;
  const rows: readonly UnitRow[] = UNITS[dimension];
  const names = rows
    .flatMap((unit) => writtenNames(unit, system).map((name) => ({ name, unit })))
    .sort((a, b) => b.name.length - a.name.length);
  namesByDimension.set(key, names);
  return names;
}

function writtenNames(unit: UnitRow, system: UnitSystem): readonly string[] {
  const local = unit.usNames ?? [];
  const symbol = unit.symbol.toLowerCase();
  const own = local.includes(symbol) ? [] : [symbol];
  return [...own, ...unit.names, ...(system === "us" ? local : [])];
}

/** A unit at the front of plain text and what is left; undefined when there is none. */
export function readUnit(
  text: string,
  dimension: Dimension,
  system: UnitSystem,
): { unit: UnitRow; rest: string } | undefined {
  for (const { name, unit } of unitNames(dimension, system)) {
    if (!text.startsWith(name)) continue;
    const rest = text.slice(name.length);
    const runsOn = /[a-z]$/.test(name) && /^[a-z]/.test(rest);
    if (!runsOn && !/^[²³^]/.test(rest)) return { unit, rest };
  }
  return undefined;
}

/**
 * Reads a whole text as a sum of amounts, largest unit first (`6' 4 1/2"`, `1 m 90 cm`, `2 h 30
 * min`), each but the last a whole number. A last number without a unit after feet is inches; a
 * single number without a unit is in `bare`. Gives the value in the SI unit of the dimension, or
 * undefined when any of the text is not understood.
 */
export function readAmount(
  text: string,
  dimension: Dimension,
  system: UnitSystem,
  bare: UnitRow,
): number | undefined {
  if (text.length > LONGEST_TEXT) return undefined;
  const negative = /^-/.test(text);
  let left = text.replace(/^[+-] ?/, "");
  let sum = 0;
  let last: UnitRow | undefined;
  let lastWhole = true;
  while (left !== "") {
    const number = readNumber(left, system);
    if (number === undefined || !lastWhole) return undefined;
    const afterNumber = number.rest.replace(/^ /, "");
    const named = readUnit(afterNumber, dimension, system);
    const unit = named?.unit ?? unitWithoutName(afterNumber, last, bare, dimension);
    if (unit === undefined || (last !== undefined && unit.size >= last.size)) return undefined;
    sum += number.value * unit.size;
    last = unit;
    lastWhole = number.whole;
    left = (named?.rest ?? afterNumber).replace(/^(?: ?- ?| )(?=[\d.])|^ /, "");
  }
  if (last === undefined || !Number.isFinite(sum)) return undefined;
  return negative && sum !== 0 ? -sum : sum;
}

function unitWithoutName(
  rest: string,
  last: UnitRow | undefined,
  bare: UnitRow,
  dimension: Dimension,
): UnitRow | undefined {
  if (rest !== "") return undefined;
  if (last === undefined) return bare;
  if (dimension !== "length" || last.symbol !== "ft") return undefined;
  return UNITS.length.find((unit) => unit.symbol === "in");
}
