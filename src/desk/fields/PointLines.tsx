import { useState } from "react";
import type { ReactNode } from "react";

interface PointLinesProps {
  label: string;
  /** Of the field, for tests. */
  name: string;
  /** The points as they are kept, a line each. */
  kept: string;
  rows: number;
  readOnly?: boolean;
  useWords: string;
  /** Takes what was typed; says what is wrong with it, null where nothing is. */
  onTake: (text: string) => string | null;
  /** Beside the button that takes. */
  children?: ReactNode;
}

/** Points typed or pasted, one a line; taken when the field is left or its button is pressed. */
export function PointLines(props: PointLinesProps): ReactNode {
  const { label, name, kept, rows, readOnly = false, useWords, onTake, children } = props;
  const [typed, setTyped] = useState<string | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const take = (): void => {
    if (typed === null) return;
    const fault = onTake(typed);
    setWrong(fault);
    if (fault === null) setTyped(null);
  };
  return (
    <>
      <label className="stacked">
        {label}
        <textarea
          rows={rows}
          value={typed ?? kept}
          data-field={name}
          readOnly={readOnly}
          spellCheck={false}
          aria-invalid={wrong !== null || undefined}
          onChange={(event) => {
            setTyped(event.target.value);
            setWrong(null);
          }}
          onBlur={take}
        />
      </label>
      {wrong !== null && (
        <p className="wrong" role="alert">
          {wrong}
        </p>
      )}
      {!readOnly && (
        <div className="tools">
          <button type="button" className="link" onClick={take}>
            {useWords}
          </button>
          {children}
        </div>
      )}
    </>
  );
}
