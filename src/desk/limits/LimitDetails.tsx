import type { ReactNode } from "react";
import { isBuriedLine, without, type Limit } from "../../site/index.js";
import { length, type Measure } from "../../units/index.js";
import { words } from "../../words/index.js";
import { MeasureField } from "../fields/MeasureField.js";
import { volts } from "../fields/plain.js";
import { TypedField } from "../fields/TypedField.js";

const says = words.limits;

type NumberKey = "voltage" | "height" | "depth" | "radius" | "width";
interface Detail {
  key: NumberKey;
  measure: Measure;
  mayBeNothing: boolean;
  note?: string;
  fits: (limit: Limit) => boolean;
}

const isOverhead = (limit: Limit): boolean => /overhead|power/.test(limit.kind);
const isStrip = (limit: Limit): boolean =>
  /easement|drive/.test(limit.kind) && limit.path !== undefined && limit.closed !== true;

/** V: lines on poles carry no less. */
const HOUSE = 100;

/** What matters of each kind of limit; a field also shows where the file gives it. */
const DETAILS: readonly Detail[] = [
  {
    ...{ key: "voltage", measure: volts, mayBeNothing: false },
    note: says.voltageNote,
    fits: isOverhead,
  },
  { key: "height", measure: length, mayBeNothing: false, fits: isOverhead },
  {
    ...{ key: "depth", measure: length, mayBeNothing: true, note: says.depthNote },
    fits: ({ kind }) => isBuriedLine(kind),
  },
  { key: "radius", measure: length, mayBeNothing: false, fits: ({ kind }) => kind === "tree" },
  { key: "width", measure: length, mayBeNothing: false, note: says.widthNote, fits: isStrip },
];

/** The fields of one limit that its kind asks for, and its note. */
export function LimitDetails(props: {
  limit: Limit;
  change: (what: string, next: (one: Limit) => Limit) => void;
}): ReactNode {
  const { limit, change } = props;
  return (
    <>
      {DETAILS.filter(({ key, fits }) => fits(limit) || limit[key] !== undefined).map(
        ({ key, measure, mayBeNothing, note }) => (
          <MeasureField
            key={key}
            label={says[key]}
            name={`limit-${key}`}
            value={limit[key]}
            measure={measure}
            least={0}
            above={!mayBeNothing}
            note={key === "voltage" && (limit.voltage ?? HOUSE) < HOUSE ? says.fewVolts : note}
            onCommit={(value) => change(says.steps[key], (one) => ({ ...one, [key]: value }))}
            onClear={() => change(says.steps[key], (one) => without(one, key))}
          />
        ),
      )}
      {limit.kind === "drive" && (
        <>
          <label className="tick">
            <input
              type="checkbox"
              name="limit-built"
              checked={limit.built === true}
              onChange={(event) => {
                const { checked } = event.target;
                change(says.steps.built, (one) =>
                  checked ? { ...one, built: true } : without(one, "built"),
                );
              }}
            />
            {says.built}
          </label>
          {limit.built === true && <p className="soft">{says.builtNote}</p>}
        </>
      )}
      <TypedField
        label={says.note}
        name="limit-note"
        shown={limit.note ?? ""}
        read={(text) => ({ ok: true, value: text.trim() })}
        onCommit={(note) =>
          change(says.steps.note, (one) => (note === "" ? without(one, "note") : { ...one, note }))
        }
      />
    </>
  );
}
