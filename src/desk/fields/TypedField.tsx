import { useId, useRef, useState } from "react";
import type { KeyboardEvent, ReactNode } from "react";
import { useDesk } from "../../store/index.js";
import type { Measure, PrintOptions } from "../../units/index.js";
import { words } from "../../words/index.js";
import { atRest, entered, overtaken, settled, textIn, typedIn } from "./typing.js";
import type { Objection, Reading, Typing } from "./typing.js";
import { UnitMenu } from "./UnitMenu.js";

export type { Reading } from "./typing.js";

/** The small button at the end of a field: the value whose other units it opens. */
export interface FieldMenu {
  value: number | undefined;
  measure: Measure;
  print: PrintOptions | undefined;
  /** The unit of a bare number. */
  unit: string;
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
  /** The text one step up or down from this one; null when it cannot be stepped. */
  step?: ((text: string, by: 1 | -1, large: boolean) => string | null) | undefined;
  menu?: FieldMenu | undefined;
  /** The line that tells what is typical. */
  typical?: ReactNode;
}

const saysUnit = (text: string, unit: string): boolean => text.trim().endsWith(unit.trim());

const ARROWS: Readonly<Record<string, 1 | -1>> = { ArrowUp: 1, ArrowDown: -1 };

/** What was typed and not taken, which undo, redo and Escape let go of. */
function useTyping<T>({ shown, read, onCommit }: TypedFieldProps<T>) {
  const [typing, setTyping] = useState<Typing<T>>(atRest);
  const steps = useDesk((desk) => desk.steps);
  const [seenSteps, setSeenSteps] = useState(steps);
  const clear = (): void => setTyping(atRest);
  if (seenSteps !== steps) {
    setSeenSteps(steps);
    clear();
  }
  const [seenShown, setSeenShown] = useState(shown);
  if (seenShown !== shown) {
    setSeenShown(shown);
    setTyping(overtaken);
  }
  return {
    typing,
    clear,
    enter: () => setTyping((now) => entered(now, shown)),
    type: (text: string) => setTyping((now) => typedIn(now, text, read)),
    take: (value: T) => {
      clear();
      onCommit(value);
    },
    commit: () => {
      const { next, take } = settled(typing, shown, read);
      setTyping(next);
      if (take !== undefined) onCommit(take.value);
    },
  };
}

/**
 * A text field that keeps what people type. Enter or leaving it commits; what cannot be read stays
 * as typed with the reason beneath, and changes nothing. Escape puts the old value back, and so does
 * undo or redo. Arrow keys step; the step is taken when the key is let go. What stands under the
 * cursor stays while the document changes.
 */
export function TypedField<T>(props: TypedFieldProps<T>): ReactNode {
  const { label, shown, note, name, usual, inputMode = "text", step, menu, typical } = props;
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const [open, setOpen] = useState(false);
  const stepping = useRef(false);
  const { typing, clear, enter, type, take, commit } = useTyping(props);
  const { typed, wrong } = typing;
  const text = textIn(typing, shown);

  function onKeyDown(event: KeyboardEvent<HTMLInputElement>): void {
    const by = ARROWS[event.key];
    if (event.key === "Enter") {
      event.preventDefault();
      commit();
      event.currentTarget.select();
    } else if (event.key === "Escape" && typed !== null) {
      event.stopPropagation();
      clear();
    } else if (event.altKey && event.key === "ArrowDown" && menu !== undefined) {
      event.preventDefault();
      setOpen(true);
    } else if (by !== undefined && !event.altKey && !event.ctrlKey && !event.metaKey) {
      const next = step?.(text, by, event.shiftKey) ?? null;
      if (next === null) return;
      event.preventDefault();
      stepping.current = true;
      type(next);
    }
  }

  function onKeyUp(event: KeyboardEvent<HTMLInputElement>): void {
    if (ARROWS[event.key] === undefined || !stepping.current) return;
    stepping.current = false;
    commit();
  }

  const described = [
    wrong !== null && `${id}-wrong`,
    note !== undefined && `${id}-note`,
    typical !== undefined && `${id}-typical`,
  ].filter((one) => one !== false);
  return (
    <div className="field">
      <label id={`${id}-label`} htmlFor={id}>
        {label}
      </label>
      <div className={menu === undefined ? "value" : "value with-unit"}>
        <input
          ref={field}
          id={id}
          type="text"
          autoComplete="off"
          spellCheck={false}
          inputMode={inputMode}
          data-field={name}
          data-typing={typed !== null || undefined}
          aria-invalid={wrong !== null || undefined}
          aria-describedby={described.length > 0 ? described.join(" ") : undefined}
          aria-keyshortcuts={menu === undefined ? undefined : "Alt+ArrowDown"}
          placeholder={usual}
          value={text}
          onChange={(event) => type(event.target.value)}
          onFocus={enter}
          onBlur={commit}
          onKeyDown={onKeyDown}
          onKeyUp={onKeyUp}
        />
        {menu !== undefined && (
          // Beside its field and opened from it by Alt and Down, so it is no stop of its own.
          <button
            type="button"
            className="unit"
            tabIndex={-1}
            aria-haspopup="dialog"
            aria-expanded={open}
            aria-labelledby={`${id}-sign ${id}-unit ${id}-label`}
            onClick={() => setOpen(!open)}
          >
            <span className="unseen" id={`${id}-unit`}>
              {words.forms.otherUnits}
            </span>
            <span id={`${id}-sign`}>
              {saysUnit(text === "" ? (usual ?? "") : text, menu.unit) ? "" : menu.unit}
            </span>
            <span aria-hidden="true">▾</span>
          </button>
        )}
        {menu !== undefined && <UnitMenu {...menu} anchor={field} open={open} onOpen={setOpen} />}
      </div>
      {wrong !== null && (
        <Wrong
          id={`${id}-wrong`}
          wrong={wrong}
          back={shown === "" ? (usual ?? words.forms.emptyField) : shown}
          onKeep={take}
          onBack={clear}
          onOffer={(offer) => {
            type(offer);
            field.current?.focus();
          }}
        />
      )}
      {typical !== undefined && <div id={`${id}-typical`}>{typical}</div>}
      {note !== undefined && (
        <p className="note" id={`${id}-note`}>
          {note}
        </p>
      )}
    </div>
  );
}

function Wrong<T>(props: {
  id: string;
  wrong: Objection<T>;
  back: string;
  onKeep: (value: T) => void;
  onBack: () => void;
  onOffer: (text: string) => void;
}): ReactNode {
  const { id, wrong, back, onKeep, onBack, onOffer } = props;
  const { text, typed, offer } = wrong;
  return (
    <p className="wrong" id={id} role="alert">
      {text}
      {offer !== undefined && (
        <>
          {" "}
          {words.forms.didYouMean}{" "}
          <button type="button" className="link" onClick={() => onOffer(offer)}>
            {offer}
          </button>
          ?
        </>
      )}
      {typed !== undefined && (
        <>
          {" "}
          <button type="button" className="link" onClick={() => onKeep(typed.value)}>
            {words.forms.keepTyped}
          </button>{" "}
          {words.forms.or}{" "}
          <button type="button" className="link" onClick={onBack}>
            {words.forms.goBackTo(back)}
          </button>
        </>
      )}
    </p>
  );
}
