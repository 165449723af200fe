import type { ReactNode } from "react";
import { readPointTable } from "../../survey/index.js";
import type { ColumnRole, PointsRead, SurveyUnit, TablePreview } from "../../survey/index.js";
import { useDesk } from "../../store/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { words } from "../../words/index.js";
import { askForFile } from "../files.js";
import { MOST_TABLE_BYTES, sizeFault } from "../tooLarge.js";
import { axesHang } from "./newSite.js";
import type { DraftProps } from "./newSite.js";

const MOST_ROWS = 40;
const MOST_BAD = 12;

const ROLES: readonly { id: ColumnRole; name: string }[] = [
  { id: "id", name: words.startPage.name },
  { id: "east", name: words.startPage.eastX },
  { id: "north", name: words.startPage.northY },
  { id: "elevation", name: words.startPage.elevation },
  { id: "note", name: words.startPage.note },
  { id: "ignore", name: words.startPage.leaveOut },
];

/** Units that the numbers of a survey may be in. */
export const SURVEY_UNITS: readonly { id: SurveyUnit; name: string }[] = [
  { id: "ft", name: words.startPage.feet },
  { id: "m", name: words.startPage.metres },
  { id: "us-survey-ft", name: words.startPage.usSurveyFeet },
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
    <div
      className="preview-scroll"
      tabIndex={0}
      role="region"
      aria-label={words.startPage.tableRead}
    >
      <table className="preview-table">
        <thead>
          <tr>
            <th scope="col">{words.startPage.lineColumn}</th>
            {roles.map((role, column) => (
              <th key={column} scope="col">
                <select
                  aria-label={words.startPage.column(
                    column + 1,
                    preview.columns[column]?.name === undefined
                      ? ""
                      : `, ${preview.columns[column].name}`,
                  )}
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
      <h2>{words.startPage.rowsCannotUsed}</h2>
      <ul className="row-problems">
        {table.bad.slice(0, MOST_BAD).map((row) => (
          <li key={row.row}>
            {words.startPage.lineSays(row.row, row.reason)}{" "}
            <span className="soft">({row.text})</span>
          </li>
        ))}
      </ul>
      {table.bad.length > MOST_BAD && (
        <p className="soft">{words.startPage.andMore(table.bad.length - MOST_BAD)}</p>
      )}
      <label className="tick">
        <input
          type="checkbox"
          checked={leaveOut}
          onChange={(event) => onLeaveOut(event.target.checked)}
        />
        {words.startPage.leaveTheseOut}
      </label>
    </>
  );
}

/** The roles with east and north the other way round. */
const swapped = (roles: readonly ColumnRole[]): ColumnRole[] =>
  roles.map((role) => (role === "east" ? "north" : role === "north" ? "east" : role));

/** True when another column became east or north: whoever set it has looked which is which. */
const axesDiffer = (before: readonly ColumnRole[], after: readonly ColumnRole[]): boolean =>
  (["east", "north"] as const).some((axis) => before.indexOf(axis) !== after.indexOf(axis));

/** What the reading could not be sure of, each with the way to answer it. */
function Questions({ draft, read, set }: DraftProps): ReactNode {
  const { preview } = read;
  if (preview === null) return null;
  // Roles that the person has set or agreed to are no longer asked about.
  const open = preview.ask.filter(({ code }) => {
    if (code === "axis-order") return axesHang(draft, preview);
    return draft.roles === null || code === "decimal-comma";
  });
  const roles = draft.roles ?? preview.columns.map((column) => column.role);
  return open.map((question) => (
    <li key={question.code}>
      {question.text}
      {question.code !== "decimal-comma" && (
        <span className="tools">
          <button type="button" className="link" onClick={() => set({ roles, axesKnown: true })}>
            {words.startPage.yesColumnsRight}
          </button>
          {question.code === "axis-order" && (
            <button
              type="button"
              className="link"
              onClick={() => set({ roles: swapped(roles), axesKnown: true })}
            >
              {words.startPage.swapNorthEast}
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
            <span className="soft">
              {" "}
              {words.startPage.atLine(problem.lines.slice(0, 8).join(", "))}
            </span>
          )}
        </li>
      ))}
      {(read.table?.duplicates ?? []).slice(0, MOST_BAD).map((twin) => (
        <li key={`${twin.kind} ${twin.id} ${twin.lines.join(" ")}`}>
          {words.startPage.linesSay(
            twin.lines.join(", "),
            twin.kind === "id"
              ? words.startPage.nameUsedAgain(twin.id)
              : words.startPage.theSamePlace,
          )}
        </li>
      ))}
      {offset !== undefined && (
        <li>
          {words.startPage.coordinatesLargeTakenOff(
            offset.inUnit.x.toLocaleString("en-US"),
            offset.inUnit.y.toLocaleString("en-US"),
          )}
        </li>
      )}
    </ul>
  );
}

const CHOOSE_UNIT = { id: "", name: words.startPage.choose } as const;

/** A pasted or opened table of points, its columns to confirm. */
export function PointTable({ draft, read, set }: DraftProps): ReactNode {
  const tell = useDesk((desk) => desk.tell);
  const setText = (text: string): void => {
    const preview = readPointTable(text);
    const unit = preview.ok ? preview.value.unit : undefined;
    set({
      text,
      roles: null,
      axesKnown: false,
      leaveOut: false,
      ...(unit === undefined
        ? {}
        : { unit, unitKnown: true, units: unit === "m" ? "metric" : "us" }),
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
      .then(setText, (fault: unknown) =>
        tell(words.startPage.couldNotRead(file.name, String(fault))),
      );
  };
  const { preview, table } = read;
  const roles = draft.roles ?? preview?.columns.map((column) => column.role) ?? [];
  return (
    <>
      <p className="says">{words.startPage.onePointEachLine}</p>
      <label className="unseen" htmlFor="points-text">
        {words.startPage.points}
      </label>
      <textarea
        id="points-text"
        className="paste"
        spellCheck={false}
        placeholder={words.startPage.pointEastNorthElevation}
        value={draft.text}
        onChange={(event) => setText(event.target.value)}
      />
      <div className="tools">
        <button
          type="button"
          className="button"
          onClick={() => askForFile(".csv,.txt,.tsv,.pnt,.xyz,text/plain,text/csv", openFile)}
        >
          {words.startPage.openATable}
        </button>
      </div>
      <ChoiceField
        label={words.startPage.theNumbersAreIn}
        name="survey-unit"
        value={draft.unitKnown ? draft.unit : ""}
        choices={draft.unitKnown ? SURVEY_UNITS : [CHOOSE_UNIT, ...SURVEY_UNITS]}
        onChoose={(unit) =>
          unit !== "" && set({ unit, unitKnown: true, units: unit === "m" ? "metric" : "us" })
        }
      />
      {preview !== null && (
        <>
          <h2>{words.startPage.whatColumnsHold}</h2>
          <PreviewTable
            preview={preview}
            roles={roles}
            bad={new Set(table?.bad.map((row) => row.row) ?? [])}
            onRoles={(next) =>
              set({ roles: next, axesKnown: draft.axesKnown || axesDiffer(roles, next) })
            }
          />
          {preview.rows.length > MOST_ROWS && (
            <p className="soft">{words.startPage.firstRows(MOST_ROWS, preview.rows.length)}</p>
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
