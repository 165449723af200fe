import { useState, type KeyboardEvent, type ReactElement } from "react";
import type { Site } from "../site/index.js";
import { bearing, distance, type Measure } from "../units/index.js";
import { words } from "../words/index.js";
import type { FixedLeg, PlacingEvent } from "./placing.js";
import { TypedRow } from "./TypedRow.js";

interface LegFieldsProps {
  units: Site["units"];
  fixed: FixedLeg;
  /** Corners set so far: a new one empties the fields. */
  count: number;
  onCancel: () => void;
  send: (event: PlacingEvent) => void;
}

/**
 * Length and bearing of the present leg, typed: the mark goes where they say at once, and Enter or
 * "Set" puts the corner there. A field that is emptied lets go again.
 */
export function LegFields({ units, fixed, count, onCancel, send }: LegFieldsProps): ReactElement {
  const [texts, setTexts] = useState(NO_TEXTS);
  const [seen, setSeen] = useState(count);
  if (seen !== count) {
    setSeen(count);
    setTexts(NO_TEXTS);
  }
  const faults = {
    length: faultOf(distance, texts.length, units),
    bearing: faultOf(bearing, texts.bearing, units),
  };
  const change = (part: Partial<typeof texts>): void => {
    const now = { ...texts, ...part };
    setTexts(now);
    send({ type: "fix", fixed: legOf(now, units) });
  };
  const typed = fixed.length !== undefined || fixed.bearing !== undefined;
  const set = (): void => {
    if (faults.length !== null || faults.bearing !== null) return;
    send({ type: typed ? "set" : "finish" });
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key !== "Enter" && event.key !== "Escape") return;
    event.preventDefault();
    event.stopPropagation();
    if (event.key === "Enter") set();
    else if (texts.length === "" && texts.bearing === "") onCancel();
    else change(NO_TEXTS);
  };
  const fault = faults.length ?? faults.bearing;
  return (
    <TypedRow
      name="scene-leg"
      keys={KEYS}
      labels={words.drawing}
      {...{ texts, fault, typed, onKeyDown }}
      placeholders={{ length: distance.unitLabel(units), bearing: "°" }}
      wrong={KEYS.filter((key) => faults[key] !== null)}
      onChange={(key, text) => change({ [key]: text })}
      onSet={set}
    />
  );
}

const KEYS = ["length", "bearing"] as const;
const NO_TEXTS = { length: "", bearing: "" };

function legOf(texts: { length: string; bearing: string }, units: Site["units"]): FixedLeg {
  const length = distance.parse(texts.length, units);
  const way = bearing.parse(texts.bearing, units);
  return {
    ...(length.ok && length.value > 0 ? { length: length.value } : {}),
    ...(way.ok ? { bearing: way.value } : {}),
  };
}

/** Why a typed text is no such figure; null for an empty field or one that can be read. */
function faultOf(measure: Measure, text: string, units: Site["units"]): string | null {
  if (text.trim() === "") return null;
  const read = measure.parse(text, units);
  if (!read.ok) return read.text;
  return measure === distance && read.value <= 0 ? words.drawing.lengthAboveZero : null;
}
