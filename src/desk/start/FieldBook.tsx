import type { ClipboardEvent, ReactNode } from "react";
import { metresIn, readBookTable } from "../../survey/index.js";
import type { FieldRow, SurveyUnit } from "../../survey/index.js";
import { plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { TypedField } from "../fields/TypedField.js";
import { EMPTY_LINE, readingOf } from "./draft.js";
import type { BookLine } from "./draft.js";
import { SURVEY_UNITS } from "./PointTable.js";
import type { DraftProps } from "./newSite.js";

const COLUMNS: readonly { key: keyof BookLine; name: string }[] = [
  { key: "station", name: words.startPage.station },
  { key: "backsight", name: words.startPage.backsight },
  { key: "foresight", name: words.startPage.foresight },
  { key: "known", name: words.startPage.knownElev },
  { key: "x", name: words.startPage.east },
  { key: "y", name: words.startPage.north },
];

/** A row in m as the person's own lines show it. */
function lineOf(row: FieldRow, unit: SurveyUnit): BookLine {
  const shown = (value: number | undefined): string =>
    value === undefined ? "" : String(Number((value / metresIn(unit)).toFixed(4)));
  return {
    station: row.station,
    backsight: shown(row.backsight),
    foresight: shown(row.foresight ?? row.intermediate),
    known: shown(row.known),
    x: shown(row.x),
    y: shown(row.y),
  };
}

type Closure = NonNullable<NonNullable<DraftProps["read"]["book"]>["closure"]>;

/** How well the book closes, in a sentence with the number that is allowed. */
function Verdict(props: {
  closure: Closure;
  unit: SurveyUnit;
  print: (metres: number) => string;
}): ReactNode {
  const { closure, unit, print } = props;
  const off = print(Math.abs(closure.misclose));
  if (closure.allowed === undefined) {
    return (
      <p>
        <strong>
          {words.startPage.endsKnownElevation(
            off,
            closure.misclose < 0 ? words.startPage.below : words.startPage.above,
          )}
        </strong>{" "}
        {words.startPage.typeLengthRunBelow}
      </p>
    );
  }
  return (
    <p>
      <strong className={closure.ok === true ? "verdict runs" : "verdict wrong"}>
        {closure.ok === true ? words.startPage.itCloses : words.startPage.doesNotClose}
      </strong>
      {words.startPage.offWhereAllowed(off, print(closure.allowed))}
      {closure.length !== undefined &&
        words.startPage.overOfLevelling(
          plainNumber(closure.length / metresIn(unit), 0),
          unit === "m" ? "m" : "ft",
        )}
      .{" "}
      {closure.ok === true ? words.startPage.errorNotSharedOut : words.startPage.lookWrongReadingOr}
    </p>
  );
}

function Closing({ draft, read, set }: DraftProps): ReactNode {
  const { book } = read;
  const { unit } = draft;
  if (book === null) return null;
  const name = unit === "m" ? "m" : "ft";
  const print = (metres: number): string => `${plainNumber(metres / metresIn(unit), 3)} ${name}`;
  const { check, closure } = book;
  return (
    <>
      <h2>{words.startPage.doesBookClose}</h2>
      <table className="table">
        <tbody>
          <tr>
            <th scope="row">{words.startPage.backsightsLessForesights}</th>
            <td>{print(check.backsights - check.foresights)}</td>
          </tr>
          <tr>
            <th scope="row">{words.startPage.lastElevationLessFirst}</th>
            <td>
              {print(check.rise)} {check.ok ? "✓" : "✕"}
            </td>
          </tr>
          {closure !== undefined && (
            <tr>
              <th scope="row">{words.startPage.readLessKnown(closure.station)}</th>
              <td>
                {print(closure.misclose)} {closure.ok === undefined ? "" : closure.ok ? "✓" : "✕"}
              </td>
            </tr>
          )}
        </tbody>
      </table>
      {closure === undefined ? (
        <p className="soft">{words.startPage.endBookBenchMark}</p>
      ) : (
        <>
          <Verdict closure={closure} unit={unit} print={print} />
          <TypedField
            label={words.startPage.lengthRunFirstSight}
            name="run-length"
            shown={draft.runLength}
            read={(text) => {
              const length = readingOf(text, unit);
              if (length !== null && typeof length !== "number")
                return { ok: false, text: length.wrong };
              return { ok: true, value: text.trim() };
            }}
            onCommit={(runLength) => set({ runLength })}
            note={words.startPage.emptyTakesPlacesOwn}
          />
          <p className="soft">{closure.source}</p>
        </>
      )}
      {book.unplaced.length > 0 && (
        <p className="soft">{words.startPage.noPlacePlanYet(book.unplaced.join(", "))}</p>
      )}
    </>
  );
}

/** A builder's-level book, typed or pasted, with elevations and closure worked out beside it. */
export function FieldBook({ draft, read, set }: DraftProps): ReactNode {
  const { book: lines, unit } = draft;
  const setCell = (index: number, key: keyof BookLine, text: string): void => {
    const next = lines.map((line, other) => (other === index ? { ...line, [key]: text } : line));
    if (index === lines.length - 1 && text !== "") next.push(EMPTY_LINE);
    set({ book: next });
  };
  const onPaste = (event: ClipboardEvent): void => {
    const text = event.clipboardData.getData("text");
    if (!/[\t\n].*\S/s.test(text)) return;
    const table = readBookTable(text, { unit });
    if (!table.ok || table.value.rows.length === 0) return;
    event.preventDefault();
    set({ book: [...table.value.rows.map((row) => lineOf(row, unit)), EMPTY_LINE] });
  };
  const elevations = new Map(read.book?.stations.map((one) => [one.line, one.elevation]) ?? []);
  return (
    <>
      <p className="says">{words.startPage.beginBenchMarkKnown}</p>
      <ChoiceField
        label={words.startPage.rodReads}
        value={unit}
        choices={SURVEY_UNITS}
        onChoose={(next) =>
          set({ unit: next, unitKnown: true, units: next === "m" ? "metric" : "us" })
        }
      />
      <div className="preview-scroll book-scroll" onPaste={onPaste}>
        <table className="preview-table book-table">
          <thead>
            <tr>
              {COLUMNS.map((column) => (
                <th key={column.key} scope="col">
                  {column.name}
                </th>
              ))}
              <th scope="col">{words.startPage.elevation}</th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line, index) => {
              const elevation = elevations.get(index + 1);
              return (
                <tr key={index}>
                  {COLUMNS.map((column) => (
                    <td key={column.key}>
                      <input
                        type="text"
                        autoComplete="off"
                        inputMode={column.key === "station" ? "text" : "decimal"}
                        aria-label={words.startPage.cellOfLine(column.name, index + 1)}
                        value={line[column.key]}
                        onChange={(event) => setCell(index, column.key, event.target.value)}
                      />
                    </td>
                  ))}
                  <td className="reckoned">
                    {elevation === undefined ? "" : plainNumber(elevation / metresIn(unit), 2)}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      <ul className="row-problems">
        {read.wrongLines.map((wrong, index) => (
          <li key={index}>{words.startPage.lineSays(wrong.line, wrong.text)}</li>
        ))}
        {read.problems.map((problem, index) => (
          <li key={`${problem.code} ${index}`}>
            {problem.text}; {problem.mend}
          </li>
        ))}
      </ul>
      <Closing draft={draft} read={read} set={set} />
    </>
  );
}
