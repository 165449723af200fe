/** A value with its SI unit, as a site's people read it: on the page, in the report, on a table. */
import {
  area,
  dailyFlow,
  days,
  density,
  digRate,
  earthVolume,
  elevation,
  flow,
  FOOT,
  haulMass,
  hours,
  length,
  liquidVolume,
  mass,
  minutes,
  money,
  plainNumber,
  pressure,
  size,
  velocity,
} from "../units/index.js";
import type { Measure, UnitSystem } from "../units/index.js";
import { words } from "../words/index.js";
import { loadingWords } from "../sheets/index.js";

const MEASURES: Readonly<Record<string, Measure>> = {
  m: length,
  "m²": area,
  h: hours,
  d: days,
  "m³/s": flow,
  "m³/s over the day": dailyFlow,
  "m/s": velocity,
  s: minutes,
  Pa: pressure,
};

const SECONDS_IN_HOUR = 3600;
/** m³: under it one decimal says too little to reckon on with. */
const SMALL = 10;
const SMALL_LIQUID = 0.02;
/** h, and m²: the like. */
const SHORT = 10;

/** A volume, or a volume moved in an hour, of earth or of a liquid. */
function volumePrint(value: number, units: UnitSystem, liquid: boolean): string {
  const size = Math.abs(value);
  if (liquid) return liquidVolume.print(value, units, { digits: size < SMALL_LIQUID ? 2 : 1 });
  return earthVolume.print(value, units, { digits: size < 1 ? 3 : size < SMALL ? 2 : 1 });
}

/** Digits that a plain number is shown with: enough to reckon on with, also when it is small. */
function digitsFor(value: number): number {
  if (Number.isInteger(value)) return 0;
  return Math.abs(value) < 1 ? Math.min(6, 2 - Math.floor(Math.log10(Math.abs(value)))) : 2;
}

/** m: lengths under this are bores and drops, read in inches or millimetres. */
const SMALL_LENGTH = 0.15;

/** A length or height in tenths, as flow is reckoned, not in feet and inches. */
function decimalLength(value: number, units: UnitSystem): string {
  if (Math.abs(value) >= SMALL_LENGTH) return elevation.print(value, units);
  return `${value < 0 ? "-" : ""}${size.print(Math.abs(value), units, { digits: units === "us" ? 2 : 1 })}`;
}

/** m/s²: standard gravity (NIST SP 811, exact), by which a weight is read as a force and back. */
const GRAVITY = 9.80665;
const NEWTONS_IN_KILONEWTON = 1000;

/** A force, N: on a US site the weight that pulls as hard. */
function force(value: number, units: UnitSystem): string {
  if (units === "us") return mass.print(value / GRAVITY, units);
  return `${plainNumber(value / NEWTONS_IN_KILONEWTON, 1)} kN`;
}

const HUNDREDTHS = { digits: 2 };

/** Units that say nothing beside their number. */
const UNSPOKEN: ReadonlySet<string> = new Set(["", "1", "each", "lump"]);

/** What a value is of, where its unit alone does not say. */
export interface AmountKind {
  /** Volumes are of a liquid, else of earth. */
  liquid?: boolean | undefined;
  /** Lengths in tenths, else in feet and inches. */
  decimal?: boolean | undefined;
  /** Weights on a hook, else of a haul. */
  hook?: boolean | undefined;
}

/** Prints a value with its SI unit in a site's units; a unit that is not known stays as it is. */
export function amountText(
  value: number,
  unit: string,
  { units, currency }: { units: UnitSystem; currency: string },
  { liquid = false, decimal = false, hook = false }: AmountKind = {},
): string {
  if (!Number.isFinite(value)) return "–";
  const measure = MEASURES[unit];
  if (decimal && unit === "m") return decimalLength(value, units);
  if (measure === length && value < 0) return `-${length.print(-value, units)}`;
  if (unit === "kg")
    return hook ? mass.print(value, units) : haulMass.print(value, units, HUNDREDTHS);
  if (unit === "h" && Math.abs(value) < SHORT) return hours.print(value, units, HUNDREDTHS);
  if (unit === "m²" && Math.abs(value) < SHORT) return area.print(value, units, HUNDREDTHS);
  if (unit === "m³/s on each m²") return loadingWords(value, units);
  if (unit === "m³") return volumePrint(value, units, liquid);
  if (unit === "m³/h" && liquid) return `${volumePrint(value, units, true)}/h`;
  if (unit === "m³/h") return digRate.print(value / SECONDS_IN_HOUR, units);
  if (unit === "N") return force(value, units);
  if (unit === "m/s²" && units === "us") return `${plainNumber(value / FOOT, 2)} ft/s²`;
  if (unit === "kg/m³")
    // Earth is reckoned by the cubic yard, so that a weight follows without 27 in between.
    return density.print(
      value,
      units,
      units === "us" && liquid ? { unit: "lb/ft³", digits: 1 } : {},
    );
  if (measure !== undefined) return measure.print(value, units);
  if (unit === currency) return money(currency).print(value, units, { digits: 2 });
  const number = plainNumber(value, digitsFor(value));
  if (UNSPOKEN.has(unit)) return number;
  if (unit === "load") return words.counts.loads(value, number);
  return `${number} ${unit}`;
}
