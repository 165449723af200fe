import { useId } from "react";
import type { ReactNode } from "react";

interface PasteBoxProps {
  /** Named for who does not see the page. */
  label: string;
  example: string;
  text: string;
  onChange: (text: string) => void;
  /** What could not be read, in the order of the lines. */
  problems: readonly string[];
}

/** Lines typed or pasted, and beneath them those that could not be read. */
export function PasteBox({ label, example, text, onChange, problems }: PasteBoxProps): ReactNode {
  const id = useId();
  return (
    <>
      <label className="unseen" htmlFor={id}>
        {label}
      </label>
      <textarea
        id={id}
        className="paste courses"
        spellCheck={false}
        placeholder={example}
        value={text}
        onChange={(event) => onChange(event.target.value)}
      />
      <ul className="row-problems" aria-live="polite">
        {problems.map((problem, i) => (
          <li key={i}>{problem}</li>
        ))}
      </ul>
    </>
  );
}
