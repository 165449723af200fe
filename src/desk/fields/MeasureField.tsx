import type { ReactNode } from "react";
import type { Measure, PrintOptions } from "../../units/index.js";
import { useSite } from "../useSite.js";
import { TypedField } from "./TypedField.js";
import type { Reading } from "./TypedField.js";

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
}

/** A field for one quantity: shows it with its unit, reads whatever way a person writes it. */
export function MeasureField(props: MeasureFieldProps): ReactNode {
  const { label, value, measure, onCommit, onClear, print, least, above, most, doubt } = props;
  const { note, name, usual } = props;
  const { units } = useSite().site;
  const shown = value === undefined ? "" : measure.print(value, units, print);

  function asked(value: number): Reading<number> {
    const question = doubt?.(value) ?? null;
    return question === null ? { ok: true, value } : { ok: true, value, doubt: question };
  }

  function read(text: string): Reading<number | null> {
    if (text.trim() === "" && onClear !== undefined) return { ok: true, value: null };
    const parsed = measure.parse(text, units);
    if (!parsed.ok) return parsed;
    if (most !== undefined && parsed.value > most) {
      return { ok: false, text: `At most ${measure.print(most, units, print)} can be used here.` };
    }
    if (least === undefined) return asked(parsed.value);
    const tooSmall = above === true ? parsed.value <= least : parsed.value < least;
    if (!tooSmall) return asked(parsed.value);
    const limit = measure.print(least, units, print);
    return { ok: false, text: `${above === true ? "More than" : "At least"} ${limit} is needed.` };
  }

  return (
    <TypedField
      label={label}
      shown={shown}
      read={read}
      onCommit={(read) => (read === null ? onClear?.() : onCommit(read))}
      note={note}
      name={name}
      usual={typeof usual === "number" ? measure.print(usual, units, print) : usual}
    />
  );
}
