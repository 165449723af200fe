import { useId, useState } from "react";
import type { KeyboardEvent, ReactNode } from "react";
import { useDesk } from "../../store/index.js";

/**
 * Text read to a value, or a plain sentence that says what was expected. A `doubt` asks about a
 * value that can be read but is hardly meant: it is kept only when the person says so.
 */
export type Reading<T> = { ok: true; value: T; doubt?: string } | { ok: false; text: string };

/** What stands beneath a field: why it was refused, or what is asked before it is taken. */
interface Objection<T> {
  text: string;
  /** The value as typed, when it may be kept all the same. */
  typed?: { value: T };
}

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
  /** What holds while the field is empty, shown faintly in it. */
  usual?: string | undefined;
}

/**
 * A text field that keeps what people type. Enter or leaving it commits; what cannot be read stays
 * as typed with the reason beneath, and changes nothing. Escape puts the old value back, and so does
 * undo or redo.
 */
export function TypedField<T>(props: TypedFieldProps<T>): ReactNode {
  const { label, shown, read, onCommit, note, name, usual, inputMode = "text" } = props;
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [wrong, setWrong] = useState<Objection<T> | null>(null);
  const steps = useDesk((desk) => desk.steps);
  const [seenSteps, setSeenSteps] = useState(steps);

  function clear(): void {
    setTyped(null);
    setWrong(null);
  }

  if (seenSteps !== steps) {
    setSeenSteps(steps);
    clear();
  }

  function take(value: T): void {
    clear();
    onCommit(value);
  }

  function commit(): void {
    if (typed === null || typed === shown) {
      clear();
      return;
    }
    const reading = read(typed);
    if (!reading.ok) setWrong({ text: reading.text });
    else if (reading.doubt === undefined) take(reading.value);
    else setWrong({ text: reading.doubt, typed: { value: reading.value } });
  }

  function onKeyDown(event: KeyboardEvent<HTMLInputElement>): void {
    if (event.key === "Enter") {
      event.preventDefault();
      commit();
      event.currentTarget.select();
    }
    if (event.key === "Escape" && typed !== null) {
      event.stopPropagation();
      clear();
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
        placeholder={usual}
        value={typed ?? shown}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={commit}
        onKeyDown={onKeyDown}
      />
      {wrong !== null && (
        <p className="wrong" id={`${id}-wrong`} role="alert">
          {wrong.text}
          {wrong.typed !== undefined && (
            <>
              {" "}
              <button
                type="button"
                className="link"
                onClick={() => wrong.typed && take(wrong.typed.value)}
              >
                Keep it as typed
              </button>{" "}
              or{" "}
              <button type="button" className="link" onClick={clear}>
                go back to {shown === "" ? (usual ?? "an empty field") : shown}
              </button>
            </>
          )}
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
