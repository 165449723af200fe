import type { ReactNode } from "react";
import { words } from "../../words/index.js";

/** What a field is set to until the person says otherwise, SI, and who says so. */
export interface TypicalValue {
  value: number;
  source: string;
}

interface TypicalProps {
  /** What is typical, printed. */
  amount: string;
  source: string;
  /** What holds now is what is typical. */
  holds: boolean;
  onSetBack: () => void;
}

/** Tells what is typical and its source; once changed, one press sets it back. */
export function Typical({ amount, source: given, holds, onSetBack }: TypicalProps): ReactNode {
  // Rows of the catalogue that have no source begin with the word that stands here anyway.
  const source = given.replace(/^typical, /, "");
  if (holds) return <p className="typical">{words.forms.isTypical(source)}</p>;
  return (
    <p className="typical">
      <button type="button" className="chip" title={words.forms.setBack} onClick={onSetBack}>
        <span aria-hidden="true">↺ </span>
        {words.forms.typicalChip(amount)}
        <span className="unseen">, {words.forms.setBack}</span>
      </button>{" "}
      {source}
    </p>
  );
}
