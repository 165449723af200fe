import type { ReactNode } from "react";
import type { Quantity } from "../site/index.js";
import {
  earthVolume,
  haulMass,
  length,
  area,
  hours,
  days,
  money,
  plainNumber,
} from "../units/index.js";
import type { Measure } from "../units/index.js";
import { useSite } from "./useSite.js";

const MEASURES: Readonly<Record<string, Measure>> = {
  m: length,
  "m²": area,
  "m³": earthVolume,
  kg: haulMass,
  h: hours,
  d: days,
};

/** Units that say nothing beside their number. */
const UNSPOKEN: ReadonlySet<string> = new Set(["", "1", "each", "lump"]);

/** A value with its SI unit, as this site's people read it; unknown units stay as they are. */
export function useAmount(): (value: number, unit: string) => string {
  const { units, currency } = useSite().site;
  return (value, unit) => {
    if (!Number.isFinite(value)) return "–";
    const measure = MEASURES[unit];
    if (measure === length && value < 0) return `-${length.print(-value, units)}`;
    if (measure !== undefined) return measure.print(value, units);
    if (unit === currency) return money(currency).print(value, units, { digits: 2 });
    const number = plainNumber(value, Number.isInteger(value) ? 0 : 2);
    if (UNSPOKEN.has(unit)) return number;
    if (unit === "load") return `${number} ${value === 1 ? "load" : "loads"}`;
    return `${number} ${unit}`;
  };
}

/** How a figure was reached: formula, what went in, and who says so. */
export function QuantityWorking({ quantity }: { quantity: Quantity }): ReactNode {
  const amount = useAmount();
  return (
    <>
      <p>
        {quantity.formula} = <strong>{amount(quantity.value, quantity.unit)}</strong>
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
