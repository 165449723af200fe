import type { ReactNode } from "react";
import type { Range, SchemeChange } from "../../estimate/index.js";
import { days, earthVolume, money } from "../../units/index.js";
import { words } from "../../words/index.js";
import { useSite } from "../useSite.js";

const { change: said } = words.trench;

const signed = (value: number, print: (value: number) => string): string => {
  const text = print(Math.abs(value));
  if (text === print(0)) return text;
  return `${value < 0 ? "−" : "+"}${text}`;
};

function ranged({ low, high }: Range, print: (value: number) => string): string {
  const [from, to] = [signed(low, print), signed(high, print)];
  return from === to ? from : said.range(from, to);
}

interface ChangeTableProps {
  change: SchemeChange;
  costName: string;
  /** Further money, with what it is. */
  more?: readonly (readonly [name: string, amount: Range])[];
}

/** What an edit would change, as a table of differences; below it, when another digger would dig. */
export function ChangeTable({ change, costName, more = [] }: ChangeTableProps): ReactNode {
  const { site } = useSite();
  const volume = (value: number): string => earthVolume.print(value, site.units);
  const price = (value: number): string => money(site.currency).print(value, site.units);
  const time = (value: number): string => days.print(value, site.units, { digits: 0 });
  const rows = [
    [said.cut, signed(change.cut, volume)],
    [said.rock, signed(change.rock, volume)],
    [said.spoil, signed(change.spoil, volume)],
    [said.days, ranged(change.days, time)],
    [costName, ranged(change.cost, price)],
    ...more.map(([name, amount]) => [name, ranged(amount, price)] as const),
  ] as const;
  return (
    <>
      <table className="table scheme-change">
        <tbody>
          {rows.map(([name, amount]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{amount}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {change.digger !== null && (
        <p className="wrong-note">{said.digger(change.digger.before, change.digger.after)}</p>
      )}
    </>
  );
}
