import { useMemo } from "react";
import type { ReactNode } from "react";
import { isKeptOffWater, setbacksOf, setbackTables } from "../../estimate/index.js";
import { limitKind, readSite, setSetbacks, type Setback } from "../../site/index.js";
import { useDesk } from "../../store/index.js";
import { distance, distanceAtLeast, distanceAtMost } from "../../units/index.js";
import { words } from "../../words/index.js";
import { Term } from "../book/Term.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { NameField } from "../fields/NameField.js";
import { askForFile } from "../files.js";
import { useEdit, useSite } from "../useSite.js";
import {
  kindsToKeepOff,
  ownStates,
  rowState,
  tableThatStands,
  type RowState,
} from "./rowStates.js";
import { AddRow, PasteRows } from "./SetbackRows.js";

const says = words.limits.table;

export const partName = (from: string): string => says.parts[from] ?? from;
export const toName = (to: string): string => limitKind(to)?.name ?? to;

/** The table of setbacks: what is asked, where it comes from, and how the site stands to it. */
export function Setbacks(): ReactNode {
  const { site, schemeId, estimate } = useSite();
  const rows = setbacksOf(site);
  const kept = useMemo(() => estimate?.setbacks ?? [], [estimate]);
  const kinds = useMemo(() => kindsToKeepOff(site, schemeId), [site, schemeId]);
  return (
    <>
      <h2>
        <Term id="setback">{says.title}</Term> <span className="aside">{says.aside}</span>
      </h2>
      <p className="says">{says.says}</p>
      <WhichTable />
      <table className="table setback-table">
        <thead>
          <tr>
            <th scope="col">
              {says.from} → {says.to}
            </th>
            <th scope="col">{says.keep}</th>
            <th scope="col">{says.now}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row, index) => (
            <Row
              key={`${row.from} ${row.to} ${index}`}
              {...{ row, index, rows }}
              state={rowState(row, kept, kinds)}
            />
          ))}
          {ownStates(kept).map(({ to, toName: name, wanted, state }) => (
            <tr key={to}>
              <th scope="row">{says.ownLimit(name)}</th>
              <td>{distance.print(wanted, site.units)}</td>
              <Now state={state} />
            </tr>
          ))}
        </tbody>
      </table>
      {isKeptOffWater(site, kept) && <p className="says">{says.waterLine}</p>}
      <AddRow rows={rows} />
      <TableTools />
      <PasteRows rows={rows} />
    </>
  );
}

function WhichTable(): ReactNode {
  const { site } = useSite();
  const edit = useEdit();
  const tables = setbackTables();
  const stands = tableThatStands(site.setbacks, tables);
  return (
    <ChoiceField
      label={says.which}
      name="setback-table"
      value={stands}
      choices={[
        ...tables.map(({ id, name }) => ({ id, name: says.publishedAs(name) })),
        ...(stands === "own" ? [{ id: "own", name: says.own }] : []),
      ]}
      onChoose={(id) => {
        const at = tables.findIndex((table) => table.id === id);
        const chosen = tables[at];
        if (chosen === undefined || id === stands) return;
        edit(says.steps.table, (now) => setSetbacks(now, at === 0 ? null : chosen.rows));
      }}
    />
  );
}

interface RowProps {
  row: Setback;
  index: number;
  rows: readonly Setback[];
  state: RowState;
}

function Row({ row, index, rows, state }: RowProps): ReactNode {
  const edit = useEdit();
  const [from, to] = [partName(row.from), toName(row.to)];
  const change = (next: Setback | null): void =>
    edit(says.steps.row(from, to), (site) =>
      setSetbacks(
        site,
        next === null
          ? rows.filter((_, other) => other !== index)
          : rows.map((one, other) => (other === index ? next : one)),
      ),
    );
  return (
    <>
      <tr className="setback-row">
        <th scope="row">
          {from} → {to}
        </th>
        <td>
          <MeasureField
            label={<span className="unseen">{says.keepOf(from, to)}</span>}
            name={`setback-${row.from}-${row.to}`}
            value={row.distance}
            measure={distance}
            least={0}
            onCommit={(far) => change({ ...row, distance: far, source: says.entered })}
          />
        </td>
        <Now state={state} />
      </tr>
      <tr className="setback-source">
        <td colSpan={3}>
          <details>
            <summary>
              <span className="unseen">{says.moreOf(from, to)}: </span>
              {row.source}
            </summary>
            <NameField
              label={says.source}
              value={row.source}
              onCommit={(source) => change({ ...row, source })}
            />
            <div className="tools">
              <button type="button" className="link" onClick={() => change(null)}>
                {says.remove}
              </button>
            </div>
          </details>
        </td>
      </tr>
    </>
  );
}

function Now({ state }: { state: RowState }): ReactNode {
  const { units } = useSite().site;
  if (state.least === null)
    return <td className="soft">{state.byOwn === true ? says.byOwn : says.none}</td>;
  const least = distanceAtMost(state.least, units);
  return state.short > 0 ? (
    <td className="setback-short">{says.short(least, distanceAtLeast(state.short, units))}</td>
  ) : (
    <td>{says.passes(least)}</td>
  );
}

function TableTools(): ReactNode {
  const { site } = useSite();
  const edit = useEdit();
  const { tell } = useDesk.getState();
  const copy = (file: File): void => {
    file.text().then(
      (text) => {
        const read = readSite(text);
        if (!read.ok) {
          tell(words.limits.earth.unread(file.name, read.problems[0]?.text ?? ""));
          return;
        }
        const { setbacks, name } = read.value;
        if (setbacks === undefined) {
          tell(says.noneToCopy(name));
          return;
        }
        edit(says.steps.table, (now) => setSetbacks(now, setbacks));
        tell(says.copied(name));
      },
      (why: unknown) => tell(words.limits.earth.unread(file.name, String(why))),
    );
  };
  return (
    <div className="tools">
      {site.setbacks !== undefined && (
        <button
          type="button"
          className="link"
          onClick={() => edit(says.steps.table, (now) => setSetbacks(now, null))}
        >
          {says.back}
        </button>
      )}
      <button
        type="button"
        className="link"
        onClick={() => askForFile(".json,application/json", copy)}
      >
        {says.copy}
      </button>
    </div>
  );
}
