import type { ReactNode } from "react";
import { setbacksOf } from "../../estimate/index.js";
import { without, type Limit } from "../../site/index.js";
import { length } from "../../units/index.js";
import { words } from "../../words/index.js";
import { Term } from "../book/Term.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useSite } from "../useSite.js";

const { limit: says } = words.drawing;
const { parts } = words.limits.table;

interface OwnSetbackProps {
  limit: Limit;
  change: (what: string, next: (one: Limit) => Limit) => void;
}

/** A limit's own setback, and beside it what the table of setbacks asks of the same limit. */
export function OwnSetback({ limit, change }: OwnSetbackProps): ReactNode {
  return (
    <>
      <MeasureField
        label={<Term id="setback">{says.setback}</Term>}
        name="limit-setback"
        value={limit.setback}
        measure={length}
        least={0}
        note={says.setbackNote}
        onCommit={(setback) => change(says.steps.setback, (one) => ({ ...one, setback }))}
        onClear={() =>
          change(says.steps.setback, (one) => without(without(one, "setback"), "setbackReplaces"))
        }
      />
      <TableBeside {...{ limit, change }} />
    </>
  );
}

/** Rows of the table for this kind of limit, and whether its own setback stands in their place. */
function TableBeside({ limit, change }: OwnSetbackProps): ReactNode {
  const { site } = useSite();
  const rows = setbacksOf(site).filter(
    ({ from, to, distance }) => to === limit.kind && from !== "dig" && distance > 0,
  );
  if (rows.length === 0) return null;
  const asked = rows
    .map(({ from, distance }) =>
      says.setbackRow(length.print(distance, site.units), parts[from] ?? from),
    )
    .join(", ");
  const own = limit.setback ?? 0;
  const replaces = limit.setbackReplaces === true;
  const falls = own > 0 && rows.some(({ distance }) => distance > own);
  return (
    <>
      <p className={falls && replaces ? "wrong-note" : "soft"}>
        {says.setbackTable(asked)}{" "}
        {own > 0 &&
          (replaces ? says.setbackReplaced(length.print(own, site.units)) : says.setbackGreater)}
      </p>
      {own > 0 && (
        <label className="tick">
          <input
            type="checkbox"
            name="limit-setback-replaces"
            checked={replaces}
            onChange={(event) => {
              const { checked } = event.target;
              change(says.steps.replaces, (one) =>
                checked ? { ...one, setbackReplaces: true } : without(one, "setbackReplaces"),
              );
            }}
          />
          {says.setbackReplaces}
        </label>
      )}
    </>
  );
}
