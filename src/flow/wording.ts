import {
  distance,
  distanceAtLeast,
  distanceAtMost,
  flow,
  FOOT,
  head,
  length,
  liquidVolume,
  mass,
  minutes,
  pipeSlope,
  size,
  velocity,
} from "../units/index.js";
import type { UnitSystem } from "../units/index.js";

/** Prints amounts for the texts of findings, in one system of units. */
export interface Wording {
  /** m, not negative: a height or depth, to the nearest ⅛ in, 1 cm, or 1 mm under 10 cm. */
  readonly length: (metres: number) => string;
  /** As `length` but never rounded down: what is enough must stay enough as printed. */
  readonly atLeast: (metres: number) => string;
  /** m along the ground. */
  readonly distance: (metres: number) => string;
  /** As `distance` but never rounded up. */
  readonly atMost: (metres: number) => string;
  /** As `distance` but never rounded down. */
  readonly atLeastFar: (metres: number) => string;
  /** Rise per run as percent, two decimals where one would hide the difference from a whole. */
  readonly share: (fall: number) => string;
  /** Inside diameter, m, as the trade names it: `3-in`, or `78 mm`. */
  readonly pipeSize: (inside: number) => string;
  /** m/s, m³/s, m of water, m³ of water, kg, and s as minutes. */
  readonly velocity: (speed: number) => string;
  readonly flow: (flow: number) => string;
  readonly head: (head: number) => string;
  readonly volume: (volume: number) => string;
  readonly mass: (mass: number) => string;
  readonly minutes: (seconds: number) => string;
}

/** The wording for a system of units. Throws, as printing does, on a number that is not finite. */
export function wordingFor(units: UnitSystem): Wording {
  const plain = (metres: number) => printLength(metres, units);
  return {
    length: plain,
    atLeast: (metres) => plain(roundedUp(metres, lengthStep(metres, units))),
    distance: (metres) => distance.print(metres, units),
    atMost: (metres) => distanceAtMost(metres, units),
    atLeastFar: (metres) => distanceAtLeast(metres, units),
    share: (fall) => pipeSlope.print(fall, units, { digits: isTidy(fall) ? 1 : 2 }),
    pipeSize: (inside) => nominalSize(inside, units),
    velocity: (speed) => velocity.print(speed, units),
    flow: (amount) => flow.print(amount, units),
    head: (metres) => head.print(metres, units),
    volume: (amount) => liquidVolume.print(amount, units),
    mass: (kilograms) => mass.print(kilograms, units),
    minutes: (seconds) => minutes.print(seconds, units),
  };
}

/** Part of a step that is taken as rounding noise rather than as an amount. */
const SLACK = 1e-6;
const INCH = FOOT / 12;

function printLength(metres: number, units: UnitSystem): string {
  if (units === "metric" && Math.abs(metres) < 0.1) return size.print(metres, units);
  return length.print(metres, units);
}

function lengthStep(metres: number, units: UnitSystem): number {
  if (units === "us") return INCH / 8;
  return Math.abs(metres) < 0.1 ? 0.001 : 0.01;
}

function roundedUp(metres: number, step: number): number {
  return Math.ceil(metres / step - SLACK) * step;
}

function isTidy(fall: number): boolean {
  return Math.abs(fall * 1000 - Math.round(fall * 1000)) < 1e-6;
}

/** Inside diameters of Schedule 40 pipe, in, by nominal size: ASTM D1785 (2½, 6, 8 recalled). */
const SCHEDULE_40: readonly (readonly [name: string, inside: number])[] = [
  ["1", 1.049],
  ["1¼", 1.38],
  ["1½", 1.61],
  ["2", 2.067],
  ["2½", 2.469],
  ["3", 3.068],
  ["4", 4.026],
  ["6", 6.065],
  ["8", 7.981],
];

/** Nominal size, in, of US pipe whose bore is within 4% of a listed one; null for any other. */
function nominalInches(inside: number, units: UnitSystem): string | null {
  if (units !== "us") return null;
  const inches = inside / INCH;
  const match = SCHEDULE_40.find(([, bore]) => Math.abs(inches - bore) <= bore * 0.04);
  return match?.[0] ?? null;
}

function nominalSize(inside: number, units: UnitSystem): string {
  const inches = nominalInches(inside, units);
  return inches === null ? size.print(inside, units) : `${inches}-in`;
}

/**
 * The size that a pipe of a bore, m, is sold by: nominal in the US ("4 in"), else by its outside
 * ("110 mm"), or by its bore where the outside is not known.
 */
export function soldSize(inside: number, units: UnitSystem, outside?: number): string {
  const inches = nominalInches(inside, units);
  if (inches !== null) return `${inches} in`;
  if (units === "metric" && outside !== undefined) return size.print(outside, units);
  return `${size.print(inside, units)} inside`;
}

/** A bore, m, to the hundredth of an inch or the millimetre: what the water sees. */
export function boreSize(inside: number, units: UnitSystem): string {
  return size.print(inside, units, { digits: units === "us" ? 2 : 0 });
}
