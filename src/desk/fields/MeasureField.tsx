import type { ReactNode } from "react";
import type { Measure, PrintOptions } from "../../units/index.js";
import { useSite } from "../useSite.js";
import { changesWithUnits, otherWays } from "./otherWays.js";
import { inRange } from "./range.js";
import { stepped } from "./steps.js";
import { TypedField } from "./TypedField.js";
import type { FieldMenu, Reading } from "./TypedField.js";
import { Typical } from "./Typical.js";
import type { TypicalValue } from "./Typical.js";

interface MeasureFieldProps {
  label: ReactNode;
  /** SI; undefined shows an empty field. */
  value: number | undefined;
  measure: Measure;
  onCommit: (value: number) => void;
  /** Called when the field is emptied; without it an empty field is not understood. */
  onClear?: (() => void) | undefined;
  print?: PrintOptions;
  /** Least value allowed, SI; `above` makes it exclusive. */
  least?: number;
  above?: boolean;
  /** Most that is allowed, SI. */
  most?: number;
  /** Asks, in words, about a value that is hardly meant; null when there is nothing to ask. */
  doubt?: (value: number) => string | null;
  note?: string | undefined;
  name?: string;
  /** What holds while the field is empty: an SI value, or words. */
  usual?: number | string | undefined;
  /** What is typical here; where the field can be emptied, setting it back empties it. */
  typical?: TypicalValue | undefined;
}

/** Two values that print alike are one to a person; this is finer than any print. */
const SAME = 1e-6;
const same = (one: number, other: number): boolean =>
  Math.abs(one - other) <= SAME * Math.max(1e-3, Math.abs(one), Math.abs(other));

function unitMenu(props: MeasureFieldProps, units: "us" | "metric"): FieldMenu | undefined {
  const { value, measure, print } = props;
  const ways = value === undefined ? [] : otherWays(measure, value, units, print ?? {});
  if (ways.length === 0 && !changesWithUnits(measure)) return undefined;
  return { value, measure, print, unit: measure.unitLabel(units) };
}

function TypicalLine(props: MeasureFieldProps & { at: TypicalValue }): ReactNode {
  const { units } = useSite().site;
  const { at, value, measure, print, onClear, onCommit } = props;
  return (
    <Typical
      amount={measure.print(at.value, units, print)}
      source={at.source}
      holds={value === undefined || same(value, at.value)}
      onSetBack={() => (onClear === undefined ? onCommit(at.value) : onClear())}
    />
  );
}

/** A field for one quantity: shows it with its unit, reads whatever way a person writes it. */
export function MeasureField(props: MeasureFieldProps): ReactNode {
  const { label, value, measure, onCommit, onClear, print, least, above, most, doubt } = props;
  const { note, name, usual, typical } = props;
  const { units } = useSite().site;
  const shown = value === undefined ? "" : measure.print(value, units, print);
  const limits = { least, above, most };

  function read(text: string): Reading<number | null> {
    if (text.trim() === "" && onClear !== undefined) return { ok: true, value: null };
    const parsed = measure.parse(text, units);
    if (!parsed.ok) return parsed;
    const ranged = inRange({ text, value: parsed.value, measure, system: units, print }, limits);
    const question = ranged.ok ? (doubt?.(ranged.value) ?? null) : null;
    return ranged.ok && question !== null ? { ...ranged, doubt: question } : ranged;
  }

  function step(text: string, by: 1 | -1, large: boolean): string | null {
    const parsed = measure.parse(text, units);
    const from = parsed.ok ? parsed.value : text === "" && typeof usual === "number" ? usual : null;
    if (from === null) return null;
    const next = stepped({ measure, system: units, from, by, large, print });
    const ranged = inRange({ text: "", value: next, measure, system: units }, limits);
    return ranged.ok ? measure.print(next, units, print) : null;
  }

  function commit(value: number | null): void {
    if (value === null) onClear?.();
    else if (props.value === undefined || !same(value, props.value)) onCommit(value);
  }

  return (
    <TypedField
      label={label}
      shown={shown}
      read={read}
      onCommit={commit}
      note={note}
      name={name}
      usual={typeof usual === "number" ? measure.print(usual, units, print) : usual}
      step={step}
      menu={unitMenu(props, units)}
      typical={typical && <TypicalLine {...props} at={typical} />}
    />
  );
}
