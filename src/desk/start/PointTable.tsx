import type { ReactNode } from "react";
import { readPointTable } from "../../survey/index.js";
import type { ColumnRole, PointsRead, SurveyUnit, TablePreview } from "../../survey/index.js";
import { useDesk } from "../../store/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { words } from "../../words/index.js";
import { askForFile } from "../files.js";
import { MOST_TABLE_BYTES, sizeFault } from "../tooLarge.js";
import type { DraftProps } from "./newSite.js";

const MOST_ROWS = 40;
const MOST_BAD = 12;

const ROLES: readonly { id: ColumnRole; name: string }[] = [
  { id: "id", name: "Name" },
  { id: "east", name: "East (x)" },
  { id: "north", name: "North (y)" },
  { id: "elevation", name: "Elevation" },
  { id: "note", name: "Note" },
  { id: "ignore", name: "Leave out" },
];

/** Units that the numbers of a survey may be in. */
export const SURVEY_UNITS: readonly { id: SurveyUnit; name: string }[] = [
  { id: "ft", name: "Feet" },
  { id: "m", name: "Metres" },
  { id: "us-survey-ft", name: "US survey feet" },
];

function PreviewTable(props: {
  preview: TablePreview;
  roles: readonly ColumnRole[];
  bad: ReadonlySet<number>;
  onRoles: (roles: readonly ColumnRole[]) => void;
}): ReactNode {
  const { preview, roles, bad, onRoles } = props;
  const setRole = (column: number, role: ColumnRole): void =>
    onRoles(
      roles.map((one, other) => {
        if (other === column) return role;
        // A place has one east, one north, one elevation and one name.
        return one === role && role !== "note" && role !== "ignore" ? "ignore" : one;
      }),
    );
  return (
    <div className="preview-scroll" tabIndex={0} role="region" aria-label="The table as read">
      <table className="preview-table">
        <thead>
          <tr>
            <th scope="col">Line</th>
            {roles.map((role, column) => (
              <th key={column} scope="col">
                <select
                  aria-label={`Column ${column + 1}${preview.columns[column]?.name === undefined ? "" : `, ${preview.columns[column].name}`}`}
                  value={role}
                  onChange={(event) => {
                    const chosen = ROLES.find((one) => one.id === event.target.value);
                    if (chosen !== undefined) setRole(column, chosen.id);
                  }}
                >
                  {ROLES.map((one) => (
                    <option key={one.id} value={one.id}>
                      {one.name}
                    </option>
                  ))}
                </select>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {preview.rows.slice(0, MOST_ROWS).map((row) => (
            <tr key={row.line} className={bad.has(row.line) ? "bad" : undefined}>
              <th scope="row">{row.line}</th>
              {roles.map((_, column) => (
                <td key={column}>{row.cells[column] ?? ""}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function BadRows(props: {
  table: PointsRead;
  leaveOut: boolean;
  onLeaveOut: (leaveOut: boolean) => void;
}): ReactNode {
  const { table, leaveOut, onLeaveOut } = props;
  if (table.bad.length === 0) return null;
  return (
    <>
      <h2>Rows that cannot be used</h2>
      <ul className="row-problems">
        {table.bad.slice(0, MOST_BAD).map((row) => (
          <li key={row.row}>
            Line {row.row}: {row.reason} <span className="soft">({row.text})</span>
          </li>
        ))}
      </ul>
      {table.bad.length > MOST_BAD && (
        <p className="soft">and {table.bad.length - MOST_BAD} more</p>
      )}
      <label className="tick">
        <input
          type="checkbox"
          checked={leaveOut}
          onChange={(event) => onLeaveOut(event.target.checked)}
        />
        Leave these out
      </label>
    </>
  );
}

/** The roles with east and north the other way round. */
const swapped = (roles: readonly ColumnRole[]): ColumnRole[] =>
  roles.map((role) => (role === "east" ? "north" : role === "north" ? "east" : role));

/** What the reading could not be sure of, each with the way to answer it. */
function Questions({ draft, read, set }: DraftProps): ReactNode {
  const { preview } = read;
  if (preview === null) return null;
  // Roles that the person has set or agreed to are no longer asked about.
  const open = preview.ask.filter(
    (question) => draft.roles === null || question.code === "decimal-comma",
  );
  const roles = draft.roles ?? preview.columns.map((column) => column.role);
  return open.map((question) => (
    <li key={question.code}>
      {question.text}
      {question.code !== "decimal-comma" && (
        <span className="tools">
          <button type="button" className="link" onClick={() => set({ roles })}>
            Yes, the columns are right
          </button>
          {question.code === "axis-order" && (
            <button type="button" className="link" onClick={() => set({ roles: swapped(roles) })}>
              Swap north and east
            </button>
          )}
        </span>
      )}
    </li>
  ));
}

function Warnings(props: DraftProps): ReactNode {
  const { read } = props;
  const offset = read.table?.offset;
  return (
    <ul className="row-problems">
      <Questions {...props} />
      {read.problems.map((problem, index) => (
        <li key={`${problem.code} ${index}`}>
          {problem.text}; {problem.mend}
          {problem.lines !== undefined && problem.lines.length > 0 && (
            <span className="soft"> (line {problem.lines.slice(0, 8).join(", ")})</span>
          )}
        </li>
      ))}
      {(read.table?.duplicates ?? []).slice(0, MOST_BAD).map((twin) => (
        <li key={`${twin.kind} ${twin.id} ${twin.lines.join(" ")}`}>
          Lines {twin.lines.join(", ")}:{" "}
          {twin.kind === "id" ? `the name ${twin.id} is used again` : "the same place"}
        </li>
      ))}
      {offset !== undefined && (
        <li>
          The coordinates are large: {offset.inUnit.x.toLocaleString("en-US")} is taken off east and{" "}
          {offset.inUnit.y.toLocaleString("en-US")} off north to draw exactly.
        </li>
      )}
    </ul>
  );
}

/** A pasted or opened table of points, its columns to confirm. */
export function PointTable({ draft, read, set }: DraftProps): ReactNode {
  const tell = useDesk((desk) => desk.tell);
  const setText = (text: string): void => {
    const preview = readPointTable(text);
    const unit = preview.ok ? preview.value.unit : undefined;
    set({
      text,
      roles: null,
      leaveOut: false,
      ...(unit === undefined ? {} : { unit, units: unit === "m" ? "metric" : "us" }),
    });
  };
  const openFile = (file: File): void => {
    const fault = sizeFault(file.size, MOST_TABLE_BYTES);
    if (fault !== null) {
      tell(words.book.tooLarge.tell(file.name, fault.size, fault.most));
      return;
    }
    file
      .text()
      .then(setText, (fault: unknown) => tell(`${file.name} could not be read: ${String(fault)}`));
  };
  const { preview, table } = read;
  const roles = draft.roles ?? preview?.columns.map((column) => column.role) ?? [];
  return (
    <>
      <p className="says">
        One point on each line: a name if it has one, east, north, elevation. Paste straight from a
        spreadsheet.
      </p>
      <label className="unseen" htmlFor="points-text">
        Points
      </label>
      <textarea
        id="points-text"
        className="paste"
        spellCheck={false}
        placeholder={"Point, East, North, Elevation\n1, 0.0, 0.0, 512.40\n2, 25.0, 0.0, 511.15"}
        value={draft.text}
        onChange={(event) => setText(event.target.value)}
      />
      <div className="tools">
        <button
          type="button"
          className="button"
          onClick={() => askForFile(".csv,.txt,.tsv,.pnt,.xyz,text/plain,text/csv", openFile)}
        >
          Open a table…
        </button>
      </div>
      <ChoiceField
        label="The numbers are in"
        name="survey-unit"
        value={draft.unit}
        choices={SURVEY_UNITS}
        onChoose={(unit) => set({ unit, units: unit === "m" ? "metric" : "us" })}
      />
      {preview !== null && (
        <>
          <h2>Is this what the columns hold?</h2>
          <PreviewTable
            preview={preview}
            roles={roles}
            bad={new Set(table?.bad.map((row) => row.row) ?? [])}
            onRoles={(next) => set({ roles: next })}
          />
          {preview.rows.length > MOST_ROWS && (
            <p className="soft">
              The first {MOST_ROWS} of {preview.rows.length} rows.
            </p>
          )}
        </>
      )}
      {table !== null && (
        <BadRows
          table={table}
          leaveOut={draft.leaveOut}
          onLeaveOut={(leaveOut) => set({ leaveOut })}
        />
      )}
      <Warnings draft={draft} read={read} set={set} />
    </>
  );
}
