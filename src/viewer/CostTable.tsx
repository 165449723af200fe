import type { ReactNode } from "react";
import { ColumnHeads, UnpricedNote } from "../drawn/index.js";
import type { Estimate } from "../estimate/index.js";
import type { Site } from "../site/index.js";
import { money } from "../units/index.js";
import { words } from "../words/index.js";

/** Every line of the cost with its low, likely and high, and their sums. */
export function CostTable({ site, estimate }: { site: Site; estimate: Estimate }): ReactNode {
  const { lines, total } = estimate.cost;
  const said = words.handoverLeaf;
  const print = (value: number): string => money(site.currency).print(value, site.units);
  const cells = ({ low, likely, high }: typeof total): ReactNode => (
    <>
      <td>{print(low)}</td>
      <td>{print(likely)}</td>
      <td>{print(high)}</td>
    </>
  );
  return (
    <section aria-labelledby="cost">
      <h2 id="cost">{words.viewer.cost}</h2>
      <div className="wide-table" tabIndex={0} role="region" aria-label={words.viewer.cost}>
        <table className="table">
          <ColumnHeads names={[said.lineColumn, said.low, said.likely, said.high]} />
          <tbody>
            {lines.map((line) => (
              <tr key={line.id} data-cost-line={line.id} data-amount={line.amount.likely}>
                <th scope="row" title={said.priceFrom + ": " + line.source}>
                  {line.name}
                </th>
                {cells(line.amount)}
              </tr>
            ))}
            <tr className="sum">
              <th scope="row">{said.total}</th>
              {cells(total)}
            </tr>
          </tbody>
        </table>
      </div>
      <UnpricedNote site={site} estimate={estimate} />
      <p className="says">{words.viewer.costSays}</p>
    </section>
  );
}
