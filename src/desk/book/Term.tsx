import { useEffect, useId, useRef, useState } from "react";
import type { KeyboardEvent, MouseEvent, PointerEvent, ReactNode } from "react";
import { Popover } from "react-aria-components";
import { words } from "../../words/index.js";

export type TermId = keyof typeof words.terms;

/** ms that the mouse rests on a term before it is explained, and that it may be off it. */
const REST_MS = 250;

/** Opens on resting the mouse, on the keyboard's focus and on a tap; closes on leaving and Escape. */
function useExplained() {
  const [isOpen, setOpen] = useState(false);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const place = useRef<HTMLSpanElement>(null);
  const soon = (open: boolean): void => {
    clearTimeout(timer.current);
    timer.current = setTimeout(() => setOpen(open), REST_MS);
  };
  const now = (open: boolean): void => {
    clearTimeout(timer.current);
    setOpen(open);
  };
  useEffect(() => () => clearTimeout(timer.current), []);
  useEffect(() => {
    if (!isOpen) return undefined;
    // A tap beside it; what has the focus does not always lose it by a tap.
    const onDown = (event: Event): void => {
      const isOn = event.target instanceof Node && place.current?.contains(event.target);
      if (isOn !== true) setOpen(false);
    };
    document.addEventListener("pointerdown", onDown, true);
    return () => document.removeEventListener("pointerdown", onDown, true);
  }, [isOpen]);
  const handlers = {
    onPointerEnter: (event: PointerEvent) => event.pointerType === "mouse" && soon(true),
    onPointerLeave: (event: PointerEvent) => event.pointerType === "mouse" && soon(false),
    onFocus: () => place.current?.matches(":focus-visible") === true && now(true),
    onBlur: () => now(false),
    onClick: (event: MouseEvent) => {
      // Within a label or a line that opens, the tap is for the term alone.
      event.preventDefault();
      event.stopPropagation();
      now(!isOpen || event.detail === 0);
    },
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key === "Escape" && isOpen) {
        event.stopPropagation();
        now(false);
      }
      if (event.key !== "Enter" && event.key !== " ") return;
      event.preventDefault();
      event.stopPropagation();
      now(!isOpen);
    },
  };
  return { isOpen, now, place, handlers };
}

/**
 * A word of the trade that explains itself. It is no `button` element, because it also stands in
 * labels of fields, where only the field itself may be one.
 */
export function Term({ id, children }: { id: TermId; children: ReactNode }): ReactNode {
  const note = useId();
  const { isOpen, now, place, handlers } = useExplained();
  return (
    <>
      <span
        ref={place}
        className="term"
        role="button"
        tabIndex={0}
        data-term={id}
        aria-expanded={isOpen}
        aria-describedby={isOpen ? note : undefined}
        {...handlers}
      >
        {children}
      </span>
      <Popover
        isNonModal
        triggerRef={place}
        isOpen={isOpen}
        onOpenChange={now}
        placement="top start"
        className="term-note"
      >
        <p id={note} role="tooltip">
          <strong>{words.terms[id].name}.</strong> {words.terms[id].says}
        </p>
      </Popover>
    </>
  );
}
