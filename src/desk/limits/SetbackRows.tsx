import { useMemo, useState } from "react";
import type { ReactNode } from "react";
import { LIMIT_KINDS, setSetbacks, type Setback } from "../../site/index.js";
import { readSetbacks } from "../../survey/index.js";
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

/** A table pasted from elsewhere. */
export function PasteRows(): ReactNode {
  const { units } = useSite().site;
  const edit = useEdit();
  const text = useLimitDrafts((draft) => draft.rows);
  const { rows, problems } = useMemo(() => readSetbacks(text, units, says.entered), [text, units]);
  const use = (): void => {
    edit(says.steps.table, (site) => setSetbacks(site, rows));
    useLimitDrafts.setState({ rows: "" });
  };
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
        {rows.length > 0 && (
          <div className="tools">
            <button type="button" className="button" onClick={use}>
              {says.pasteUse(rows.length)}
            </button>
          </div>
        )}
      </div>
    </details>
  );
}
