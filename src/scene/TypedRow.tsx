import { useId, type KeyboardEvent, type ReactElement } from "react";
import { words } from "../words/index.js";

interface TypedRowProps<Key extends string> {
  /** Of the row, for tests: "scene-leg". */
  name: string;
  keys: readonly Key[];
  labels: Readonly<Record<Key, string>>;
  texts: Readonly<Record<Key, string>>;
  placeholders: Readonly<Record<Key, string>>;
  /** Fields that the fault is about. */
  wrong: readonly Key[];
  fault: string | null;
  inputMode?: "decimal";
  /** Whether there is something to set. */
  typed: boolean;
  onChange: (key: Key, text: string) => void;
  onSet: () => void;
  onKeyDown: (event: KeyboardEvent) => void;
}

/** Fields in a row over the scene, a button that sets what they say, and what is wrong with it. */
export function TypedRow<Key extends string>(props: TypedRowProps<Key>): ReactElement {
  const { name, keys, labels, texts, placeholders, wrong, fault, inputMode, typed } = props;
  const id = useId();
  return (
    <div className="scene-leg">
      {keys.map((key) => (
        <label key={key}>
          {labels[key]}
          <input
            type="text"
            inputMode={inputMode}
            autoComplete="off"
            spellCheck={false}
            data-testid={`${name}-${key}`}
            placeholder={placeholders[key]}
            aria-invalid={wrong.includes(key) || undefined}
            aria-describedby={wrong.includes(key) ? `${id}-fault` : undefined}
            value={texts[key]}
            onChange={(event) => props.onChange(key, event.target.value)}
            onKeyDown={props.onKeyDown}
          />
        </label>
      ))}
      {typed && (
        <button type="button" data-testid={`${name}-set`} onClick={props.onSet}>
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
