import { useState, type KeyboardEvent, type ReactElement } from "react";
import type { Site } from "../site/index.js";
import { distance } from "../units/index.js";
import { words } from "../words/index.js";
import type { PlacingEvent } from "./placing.js";
import { TypedRow } from "./TypedRow.js";

interface PlaceFieldsProps {
  units: Site["units"];
  send: (event: PlacingEvent) => void;
}

const KEYS = ["east", "north"] as const;
const NO_TEXTS = { east: "", north: "" };

/** East and north of the first place, typed, for whoever has it measured. */
export function PlaceFields({ units, send }: PlaceFieldsProps): ReactElement {
  const [texts, setTexts] = useState(NO_TEXTS);
  const read = {
    east: distance.parse(texts.east, units),
    north: distance.parse(texts.north, units),
  };
  const { east, north } = read;
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
  const unit = distance.unitLabel(units);
  return (
    <TypedRow
      name="scene-place"
      keys={KEYS}
      labels={words.drawing}
      {...{ texts, fault, typed, onKeyDown }}
      placeholders={{ east: unit, north: unit }}
      inputMode="decimal"
      wrong={typed ? KEYS.filter((key) => !read[key].ok) : []}
      onChange={(key, text) => setTexts({ ...texts, [key]: text })}
      onSet={set}
    />
  );
}
