import { useCallback, useState, type ReactNode } from "react";
import { shieldChange } from "../../estimate/index.js";
import type { Estimate } from "../../estimate/index.js";
import { setPriceOfAll } from "../../site/index.js";
import type { Site, Work } from "../../site/index.js";
import { money } from "../../units/index.js";
import { words } from "../../words/index.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useEdit, useSite } from "../useSite.js";
import { ChangeTable } from "./ChangeTable.js";
import { useWorkedOut } from "./useWorkedOut.js";

const { shield: said, change: news } = words.trench;

/** On demand: what upright walls behind a shield would save, for what its hire costs. */
export function ShieldSection({ work }: { work: Work }): ReactNode {
  const { site } = useSite();
  const edit = useEdit();
  const [asked, setAsked] = useState(false);
  const worked = useCallback(
    (now: Site, schemeId: string, as: Estimate) => shieldChange(now, schemeId, work.id, as),
    [work.id],
  );
  const change = useWorkedOut(asked, worked);
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
          {change === null ? (
            <p>{news.working}</p>
          ) : (
            <ChangeTable
              change={change}
              costName={said.cost}
              more={[
                [said.hire, change.hire.amount],
                [said.total, change.total],
              ]}
            />
          )}
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
