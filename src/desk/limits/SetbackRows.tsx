import { useMemo, useState } from "react";
import type { ReactNode } from "react";
import { LIMIT_KINDS, limitKind, setSetbacks, type Setback } from "../../site/index.js";
import { joinSetbacks, leftOut, readSetbacks } from "../../survey/index.js";
import { distance } from "../../units/index.js";
import { words } from "../../words/index.js";
import { useEdit, useSite } from "../useSite.js";
import { useLimitDrafts } from "./drafts.js";
import { PasteBox } from "./PasteBox.js";

const says = words.limits.table;

const PARTS: readonly string[] = Object.keys(says.parts);

/** m: a new row asks for nothing until a figure is put in. */
const NOTHING_ASKED = 0;

/** Another pair of part and limit, to be given its distance in the table. */
export function AddRow({ rows }: { rows: readonly Setback[] }): ReactNode {
  const edit = useEdit();
  const [from, setFrom] = useState(PARTS[0] ?? "tank");
  const [to, setTo] = useState<string>("spring");
  const stands = rows.some((row) => row.from === from && row.to === to);
  const add = (): void => {
    const row = { from, to, distance: NOTHING_ASKED, source: says.entered };
    edit(says.steps.table, (site) => setSetbacks(site, [...rows, row]));
  };
  return (
    <div className="place-limit setback-add">
      <select
        aria-label={says.addFrom}
        value={from}
        onChange={(event) => setFrom(event.target.value)}
      >
        {PARTS.map((part) => (
          <option key={part} value={part}>
            {says.parts[part]}
          </option>
        ))}
      </select>
      <select aria-label={says.addTo} value={to} onChange={(event) => setTo(event.target.value)}>
        {LIMIT_KINDS.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
      <button type="button" className="link" disabled={stands} onClick={add}>
        {says.add}
      </button>
    </div>
  );
}

/** A table pasted from elsewhere: put into the one that stands, or used alone. */
export function PasteRows({ rows: stand }: { rows: readonly Setback[] }): ReactNode {
  const { units } = useSite().site;
  const text = useLimitDrafts((draft) => draft.rows);
  const { rows, problems } = useMemo(() => readSetbacks(text, units, says.entered), [text, units]);
  return (
    <details className="working">
      <summary>
        <span className="text">{says.paste}</span>
      </summary>
      <div className="inside">
        <p className="says">{says.pasteSays}</p>
        <PasteBox
          label={says.pasteText}
          example={says.pasteExample}
          text={text}
          onChange={(typed) => useLimitDrafts.setState({ rows: typed })}
          problems={problems.map((problem) => says.problem(problem.line, problem.text))}
        />
        {rows.length > 0 && <UseRows {...{ rows, stand }} />}
      </div>
    </details>
  );
}

interface UseRowsProps {
  /** As pasted. */
  rows: readonly Setback[];
  /** The table that stands. */
  stand: readonly Setback[];
}

/** The two ways to take pasted rows, and what is no longer asked where they stand alone. */
function UseRows({ rows, stand }: UseRowsProps): ReactNode {
  const { units } = useSite().site;
  const edit = useEdit();
  const out = leftOut(stand, rows);
  const use = (next: readonly Setback[]): void => {
    edit(says.steps.table, (site) => setSetbacks(site, next));
    useLimitDrafts.setState({ rows: "" });
  };
  const named = out.map(({ from, to, distance: far }) =>
    says.pasteRow(says.parts[from] ?? from, limitKind(to)?.name ?? to, distance.print(far, units)),
  );
  return (
    <>
      <div className="tools">
        <button type="button" className="button" onClick={() => use(joinSetbacks(stand, rows))}>
          {says.pasteJoin(rows.length)}
        </button>
        <button type="button" className="link" onClick={() => use(rows)}>
          {says.pasteAlone}
        </button>
      </div>
      {named.length > 0 && <p className="wrong-note">{says.pasteLeavesOut(named)}</p>}
    </>
  );
}
