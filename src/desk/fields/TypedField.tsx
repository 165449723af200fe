import { useId, useState } from "react";
import type { KeyboardEvent, ReactNode } from "react";

/** Text read to a value, or a plain sentence that says what was expected. */
export type Reading<T> = { ok: true; value: T } | { ok: false; text: string };

interface TypedFieldProps<T> {
  label: ReactNode;
  /** The value as a person reads it; shown whenever the field is not being typed in. */
  shown: string;
  read: (text: string) => Reading<T>;
  onCommit: (value: T) => void;
  note?: string | undefined;
  /** Name for tests, as `data-field`. */
  name?: string | undefined;
  inputMode?: "text" | "decimal";
}

/**
 * A text field that keeps what people type. Enter or leaving it commits; what cannot be read stays
 * as typed with the reason beneath, and changes nothing. Escape puts the old value back.
 */
export function TypedField<T>(props: TypedFieldProps<T>): ReactNode {
  const { label, shown, read, onCommit, note, name, inputMode = "text" } = props;
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);

  function commit(): void {
    if (typed === null || typed === shown) {
      setTyped(null);
      setWrong(null);
      return;
    }
    const reading = read(typed);
    if (!reading.ok) {
      setWrong(reading.text);
      return;
    }
    setTyped(null);
    setWrong(null);
    onCommit(reading.value);
  }

  function onKeyDown(event: KeyboardEvent<HTMLInputElement>): void {
    if (event.key === "Enter") {
      event.preventDefault();
      commit();
      event.currentTarget.select();
    }
    if (event.key === "Escape" && typed !== null) {
      event.stopPropagation();
      setTyped(null);
      setWrong(null);
    }
  }

  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        spellCheck={false}
        inputMode={inputMode}
        data-field={name}
        data-typing={typed !== null || undefined}
        aria-invalid={wrong !== null || undefined}
        aria-describedby={wrong !== null ? `${id}-wrong` : note ? `${id}-note` : undefined}
        value={typed ?? shown}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={commit}
        onKeyDown={onKeyDown}
      />
      {wrong !== null && (
        <p className="wrong" id={`${id}-wrong`} role="alert">
          {wrong}
        </p>
      )}
      {note !== undefined && (
        <p className="note" id={`${id}-note`}>
          {note}
        </p>
      )}
    </div>
  );
}
