import type { ReactNode } from "react";
import type { Quantity, Site } from "../site/index.js";
import {
  earthVolume,
  elevation,
  FOOT,
  haulMass,
  length,
  area,
  density,
  digRate,
  hours,
  days,
  dailyFlow,
  flow,
  liquidVolume,
  mass,
  minutes,
  money,
  plainNumber,
  pressure,
  size,
  velocity,
} from "../units/index.js";
import type { Measure } from "../units/index.js";
import { words } from "../words/index.js";
import { loadingWords } from "./flow/loading.js";
import { useSite } from "./useSite.js";

const MEASURES: Readonly<Record<string, Measure>> = {
  m: length,
  "m²": area,
  kg: haulMass,
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

/** A volume, or a volume moved in an hour, of earth or of a liquid. */
function volumePrint(value: number, units: Site["units"], liquid: boolean): string {
  if (liquid) return liquidVolume.print(value, units, { digits: 1 });
  return earthVolume.print(value, units, { digits: Math.abs(value) < SMALL ? 2 : 1 });
}

/** Digits that a plain number is shown with: enough to reckon on with, also when it is small. */
function digitsFor(value: number): number {
  if (Number.isInteger(value)) return 0;
  return Math.abs(value) < 1 ? Math.min(6, 2 - Math.floor(Math.log10(Math.abs(value)))) : 2;
}

/** m: lengths under this are bores and drops, read in inches or millimetres. */
const SMALL_LENGTH = 0.15;

/** A length or height in tenths, as flow is reckoned, not in feet and inches. */
function decimalLength(value: number, units: Site["units"]): string {
  if (Math.abs(value) >= SMALL_LENGTH) return elevation.print(value, units);
  return `${value < 0 ? "-" : ""}${size.print(Math.abs(value), units, { digits: units === "us" ? 2 : 1 })}`;
}

/** m/s²: standard gravity (NIST SP 811, exact), by which a weight is read as a force and back. */
const GRAVITY = 9.80665;
const NEWTONS_IN_KILONEWTON = 1000;

/** A force, N: on a US site the weight that pulls as hard. */
function force(value: number, units: Site["units"]): string {
  if (units === "us") return mass.print(value / GRAVITY, units);
  return `${plainNumber(value / NEWTONS_IN_KILONEWTON, 1)} kN`;
}

/** Units that say nothing beside their number. */
const UNSPOKEN: ReadonlySet<string> = new Set(["", "1", "each", "lump"]);

/**
 * A value with its SI unit, as this site's people read it; unknown units stay as they are. Volumes
 * are of earth, or of a `liquid`; lengths in feet and inches, or `decimal`; weights of a haul, or on
 * the `hook`.
 */
export function useAmount(
  liquid = false,
  decimal = false,
  hook = false,
): (value: number, unit: string) => string {
  const { units, currency } = useSite().site;
  return (value, unit) => {
    if (!Number.isFinite(value)) return "–";
    const measure = MEASURES[unit];
    if (decimal && unit === "m") return decimalLength(value, units);
    if (measure === length && value < 0) return `-${length.print(-value, units)}`;
    if (unit === "kg" && hook) return mass.print(value, units);
    if (unit === "m³/s on each m²") return loadingWords(value, units);
    if (unit === "m³") return volumePrint(value, units, liquid);
    if (unit === "m³/h" && liquid) return `${volumePrint(value, units, true)}/h`;
    if (unit === "m³/h") return digRate.print(value / SECONDS_IN_HOUR, units);
    if (unit === "N") return force(value, units);
    if (unit === "m/s²" && units === "us") return `${plainNumber(value / FOOT, 2)} ft/s²`;
    if (unit === "kg/m³")
      return density.print(value, units, units === "us" ? { unit: "lb/ft³" } : {});
    if (measure !== undefined) return measure.print(value, units);
    if (unit === currency) return money(currency).print(value, units, { digits: 2 });
    const number = plainNumber(value, digitsFor(value));
    if (UNSPOKEN.has(unit)) return number;
    if (unit === "load") return words.counts.loads(value, number);
    return `${number} ${unit}`;
  };
}

/** How a figure was reached: formula, what went in, and who says so. */
export function QuantityWorking(props: {
  quantity: Quantity;
  liquid?: boolean;
  decimal?: boolean;
  hook?: boolean;
}): ReactNode {
  const { quantity, liquid, decimal, hook } = props;
  const amount = useAmount(liquid, decimal, hook);
  return (
    <>
      <p>
        {quantity.formula}
        {quantity.unit !== "lump" && (
          <>
            {" "}
            = <strong>{amount(quantity.value, quantity.unit)}</strong>
          </>
        )}
      </p>
      <table className="table">
        <tbody>
          {quantity.inputs.map((input, index) => (
            <tr key={`${input.name} ${index}`}>
              <th scope="row">{input.name}</th>
              <td>{amount(input.value, input.unit)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="soft">{quantity.source}</p>
    </>
  );
}

interface WorkingProps {
  text: ReactNode;
  amount: ReactNode;
  children: ReactNode;
}

/** One line that opens down to what is inside it. */
export function Working({ text, amount, children }: WorkingProps): ReactNode {
  return (
    <details className="working">
      <summary>
        <span className="text">{text}</span>
        <span className="amount">{amount}</span>
      </summary>
      <div className="inside">{children}</div>
    </details>
  );
}
