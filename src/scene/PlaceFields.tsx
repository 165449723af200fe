import { useId, useState, type KeyboardEvent, type ReactElement } from "react";
import type { Site } from "../site/index.js";
import { distance } from "../units/index.js";
import { words } from "../words/index.js";
import type { PlacingEvent } from "./placing.js";

interface PlaceFieldsProps {
  units: Site["units"];
  send: (event: PlacingEvent) => void;
}

const NO_TEXTS = { east: "", north: "" };

/** East and north of the first place, typed, for whoever has it measured. */
export function PlaceFields({ units, send }: PlaceFieldsProps): ReactElement {
  const [texts, setTexts] = useState(NO_TEXTS);
  const id = useId();
  const east = distance.parse(texts.east, units);
  const north = distance.parse(texts.north, units);
  const typed = texts.east.trim() !== "" && texts.north.trim() !== "";
  const fault = typed && !east.ok ? east.text : typed && !north.ok ? north.text : null;
  const set = (): void => {
    if (!typed || !east.ok || !north.ok) return;
    send({ type: "click", at: [east.value, north.value] });
    setTexts(NO_TEXTS);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key !== "Enter") return;
    event.preventDefault();
    event.stopPropagation();
    set();
  };
  return (
    <div className="scene-leg">
      {(["east", "north"] as const).map((key) => (
        <label key={key}>
          {words.drawing[key]}
          <input
            type="text"
            inputMode="decimal"
            autoComplete="off"
            spellCheck={false}
            data-testid={`scene-place-${key}`}
            placeholder={distance.unitLabel(units)}
            aria-describedby={fault === null ? undefined : `${id}-fault`}
            value={texts[key]}
            onChange={(event) => setTexts({ ...texts, [key]: event.target.value })}
            onKeyDown={onKeyDown}
          />
        </label>
      ))}
      {typed && (
        <button type="button" data-testid="scene-place-set" onClick={set}>
          {words.drawing.setCorner}
        </button>
      )}
      {fault !== null && (
        <p className="scene-fault-line" id={`${id}-fault`} role="alert">
          {fault}
        </p>
      )}
    </div>
  );
}
