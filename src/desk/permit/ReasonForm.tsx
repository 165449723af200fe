import { useEffect, useId, useRef, useState } from "react";
import type { KeyboardEvent, ReactNode } from "react";

interface ReasonFormProps {
  /** What the form is for, read out with it. */
  title: string;
  label: string;
  /** What is said when there are fewer than three letters. */
  tooShort: string;
  /** Fields besides the reason, above and beneath it. */
  before?: ReactNode;
  children?: ReactNode;
  keep: string;
  leave: string;
  onKeep: (reason: string) => void;
  onLeave: () => void;
}

/** Letters that a reason needs at least, as the file's schema has it. */
const LEAST_LETTERS = 3;

/** A few words that are wanted before something is done. Escape leaves it undone. */
export function ReasonForm(props: ReasonFormProps): ReactNode {
  const { title, label, tooShort, before, children, keep, leave, onKeep, onLeave } = props;
  const id = useId();
  const field = useRef<HTMLTextAreaElement>(null);
  const [reason, setReason] = useState("");
  const [wrong, setWrong] = useState(false);
  const tools = useRef<HTMLDivElement>(null);
  useEffect(() => {
    field.current?.focus({ preventScroll: true });
    // The buttons too, as far as the page has room for them: on a phone they lie under its edge.
    tools.current?.scrollIntoView({ block: "nearest" });
  }, []);

  function onKeyDown(event: KeyboardEvent): void {
    if (event.key !== "Escape") return;
    event.preventDefault();
    event.stopPropagation();
    onLeave();
  }

  return (
    <form
      className="reason-form"
      aria-label={title}
      onKeyDown={onKeyDown}
      onSubmit={(event) => {
        event.preventDefault();
        const given = reason.trim();
        setWrong(given.length < LEAST_LETTERS);
        if (given.length < LEAST_LETTERS) field.current?.focus();
        else onKeep(given);
      }}
    >
      {before}
      <label htmlFor={id}>{label}</label>
      <textarea
        ref={field}
        id={id}
        rows={2}
        value={reason}
        data-field="reason"
        aria-invalid={wrong || undefined}
        aria-describedby={wrong ? `${id}-wrong` : undefined}
        onChange={(event) => setReason(event.target.value)}
      />
      {wrong && (
        <p className="wrong" id={`${id}-wrong`} role="alert">
          {tooShort}
        </p>
      )}
      {children}
      <div className="reason-tools" ref={tools}>
        <button type="submit" className="button main">
          {keep}
        </button>
        <button type="button" className="button" onClick={onLeave}>
          {leave}
        </button>
      </div>
    </form>
  );
}
