import type { ReactNode } from "react";
import { TypedField } from "../fields/TypedField.js";
import type { Reading } from "../fields/TypedField.js";

interface WordsFieldProps {
  label: ReactNode;
  /** Undefined shows an empty field. */
  value: string | undefined;
  /** Called with what was typed, without blanks around it; undefined once it is emptied. */
  onCommit: (value: string | undefined) => void;
  /** Why what was typed cannot be used, in words; null when it can. */
  wrong?: (typed: string) => string | null;
  name: string;
  hint?: string;
}

/** A field for a few words, which may stay empty. */
export function WordsField(props: WordsFieldProps): ReactNode {
  const { label, value, onCommit, wrong, name, hint } = props;
  function read(text: string): Reading<string> {
    const typed = text.trim();
    const why = typed === "" ? null : (wrong?.(typed) ?? null);
    return why === null ? { ok: true, value: typed } : { ok: false, text: why };
  }
  return (
    <TypedField
      label={label}
      shown={value ?? ""}
      name={name}
      usual={hint}
      read={read}
      onCommit={(typed) => onCommit(typed === "" ? undefined : typed)}
    />
  );
}
