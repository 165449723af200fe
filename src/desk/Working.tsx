import type { ReactNode } from "react";
import type { Quantity } from "../site/index.js";
import { amountText } from "../handover/index.js";
import { useSite } from "./useSite.js";

/** Prints a value with its SI unit as this site's people read it: see `amountText`. */
export function useAmount(
  liquid = false,
  decimal = false,
  hook = false,
): (value: number, unit: string) => string {
  const { site } = useSite();
  return (value, unit) => amountText(value, unit, site, { liquid, decimal, hook });
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
  /** The working of one of the strip's figures: it opens when the strip leads to that figure. */
  forFigure?: boolean;
  children: ReactNode;
}

/** One line that opens down to what is inside it. */
export function Working({ text, amount, forFigure, children }: WorkingProps): ReactNode {
  return (
    <details className="working" data-figure-working={forFigure}>
      <summary>
        <span className="text">{text}</span>
        <span className="amount">{amount}</span>
      </summary>
      <div className="inside">{children}</div>
    </details>
  );
}
