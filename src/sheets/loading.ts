import { liquidVolume, plainNumber } from "../units/index.js";
import type { UnitSystem } from "../units/index.js";
import { FOOT } from "../units/index.js";
import { words } from "../words/index.js";

const DAY = 86400;

/** Loading of a soil, m/s, as it is spoken of: gallons a day on each ft², or litres on each m². */
export function loadingWords(rate: number, units: UnitSystem): string {
  return `${plainNumber(onEach(rate, units), units === "us" ? 2 : 1)} ${loadingUnit(units)}`;
}

/** gal/d per ft², or L/d per m². */
export function loadingUnit(units: UnitSystem): string {
  return units === "us" ? words.flowLeaf.galDayEachFt : words.flowLeaf.lDayEachM;
}

/** A loading rate, m/s, in the unit that it is spoken of. */
export function onEach(rate: number, units: UnitSystem): number {
  const volume = liquidVolume.toSystem(rate * DAY, units);
  return units === "us" ? volume * FOOT * FOOT : volume;
}

/** The other way. */
export function fromEach(value: number, units: UnitSystem): number {
  const plain = units === "us" ? value / (FOOT * FOOT) : value;
  return liquidVolume.fromSystem(plain, units) / DAY;
}

/** s/m of a percolation test from minutes per inch, or minutes per cm on a metric site, and back. */
export function percolation(units: UnitSystem): { unit: string; size: number } {
  return units === "us"
    ? { unit: words.flowLeaf.minPerInch, size: 60 / (FOOT / 12) }
    : { unit: words.flowLeaf.minPerCm, size: 60 / 0.01 };
}
