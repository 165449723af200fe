import { useEffect, useState } from "react";
import type { ReactNode } from "react";
import { shieldChange } from "../../estimate/index.js";
import type { Estimate, Range, ShieldChange } from "../../estimate/index.js";
import { setPriceOfAll } from "../../site/index.js";
import type { Site, Work } from "../../site/index.js";
import { days, earthVolume, money } from "../../units/index.js";
import { words } from "../../words/index.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useEdit, useSite } from "../useSite.js";

const { shield: said } = words.trench;

interface Worked {
  site: Site;
  estimate: Estimate;
  change: ShieldChange;
}

/** The change for what is open now, worked out after the page has drawn that it is being done. */
function useShieldChange(work: string, asked: boolean): ShieldChange | null {
  const { site, schemeId, estimate } = useSite();
  const [worked, setWorked] = useState<Worked | null>(null);
  const current = worked?.site === site && worked.estimate === estimate ? worked.change : null;
  useEffect(() => {
    if (!asked || estimate === null || current !== null) return undefined;
    const later = setTimeout(
      () => setWorked({ site, estimate, change: shieldChange(site, schemeId, work, estimate) }),
      60,
    );
    return () => clearTimeout(later);
  }, [asked, current, estimate, schemeId, site, work]);
  return current;
}

const signed = (value: number, print: (value: number) => string): string => {
  const text = print(Math.abs(value));
  if (text === print(0)) return text;
  return `${value < 0 ? "−" : "+"}${text}`;
};

function ranged({ low, high }: Range, print: (value: number) => string): string {
  const [from, to] = [signed(low, print), signed(high, print)];
  return from === to ? from : said.range(from, to);
}

function ShieldTable({ change }: { change: ShieldChange }): ReactNode {
  const { site } = useSite();
  const volume = (value: number): string => earthVolume.print(value, site.units);
  const price = (value: number): string => money(site.currency).print(value, site.units);
  const time = (value: number): string => days.print(value, site.units, { digits: 0 });
  const rows = [
    [said.cut, signed(change.cut, volume)],
    [said.rock, signed(change.rock, volume)],
    [said.spoil, signed(change.spoil, volume)],
    [said.days, ranged(change.days, time)],
    [said.cost, ranged(change.cost, price)],
    [said.hire, ranged(change.hire.amount, price)],
    [said.total, ranged(change.total, price)],
  ] as const;
  return (
    <table className="table shield-change">
      <tbody>
        {rows.map(([name, amount]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{amount}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** On demand: what upright walls behind a shield would save, for what its hire costs. */
export function ShieldSection({ work }: { work: Work }): ReactNode {
  const { site } = useSite();
  const edit = useEdit();
  const [asked, setAsked] = useState(false);
  const change = useShieldChange(work.id, asked);
  const setPrice = (price: number | null): void =>
    edit(said.priceStep, (now) =>
      setPriceOfAll(now, "shield-hire", price === null ? null : { price }),
    );
  return (
    <details className="working" onToggle={(event) => setAsked(event.currentTarget.open)}>
      <summary>
        <span className="text">{said.title}</span>
      </summary>
      <div className="inside">
        <p className="says">{said.says}</p>
        <div aria-live="polite">
          {change === null ? <p>{said.working}</p> : <ShieldTable change={change} />}
        </div>
        {change !== null && (
          <MeasureField
            label={said.price}
            name="shield-price"
            value={change.hire.own ? change.hire.price.likely : undefined}
            measure={money(site.currency)}
            least={0}
            usual={change.hire.price.likely}
            note={change.hire.own ? undefined : change.hire.source}
            onCommit={setPrice}
            onClear={() => setPrice(null)}
          />
        )}
        <p className="says fine">{said.note}</p>
      </div>
    </details>
  );
}
