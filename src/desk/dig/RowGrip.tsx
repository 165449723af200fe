import { useEffect, useRef, useState } from "react";
import type { KeyboardEvent, PointerEvent, ReactNode, RefObject } from "react";
import { words } from "../../words/index.js";
import { placeInList } from "./listOrder.js";

/** A row that is dragged in the list, and the place that it would take. */
export interface RowDrag {
  from: number;
  to: number;
}

interface RowGripProps {
  list: RefObject<HTMLOListElement | null>;
  index: number;
  name: string;
  onDrag: (drag: RowDrag | null) => void;
  onMove: (to: number) => void;
}

function middlesOf(list: HTMLOListElement): number[] {
  return [...list.children].map((row) => {
    const { top, height } = row.getBoundingClientRect();
    return top + height / 2;
  });
}

/** The grip at the start of a row: dragged by hand, or moved by the arrow keys. */
export function RowGrip({ list, index, name, onDrag, onMove }: RowGripProps): ReactNode {
  const grip = useRef<HTMLButtonElement>(null);
  const [held, setHeld] = useState(false);
  const refocus = useRef(false);
  useEffect(() => {
    // The row has gone to its new place, and the focus with it.
    if (refocus.current) grip.current?.focus();
    refocus.current = false;
  }, [index]);

  function placeAt(event: PointerEvent): number {
    return list.current === null
      ? index
      : placeInList(middlesOf(list.current), index, event.clientY);
  }

  function end(to: number | null): void {
    setHeld(false);
    onDrag(null);
    if (to !== null && to !== index) onMove(to);
  }

  function onKeyDown(event: KeyboardEvent): void {
    if (event.key === "Escape" && held) {
      event.preventDefault();
      event.stopPropagation();
      end(null);
      return;
    }
    const way = { ArrowUp: -1, ArrowDown: 1 }[event.key];
    if (way === undefined) return;
    // The arrow keys would move the work itself otherwise.
    event.preventDefault();
    refocus.current = true;
    onMove(index + way);
  }

  return (
    <button
      ref={grip}
      type="button"
      className="row-grip"
      aria-label={words.picked.list.drag(name)}
      title={words.picked.list.drag(name)}
      onKeyDown={onKeyDown}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        setHeld(true);
        onDrag({ from: index, to: index });
      }}
      onPointerMove={(event) => {
        if (held) onDrag({ from: index, to: placeAt(event) });
      }}
      onPointerUp={(event) => {
        if (held) end(placeAt(event));
      }}
      onPointerCancel={() => end(null)}
    >
      <svg className="mark-icon" viewBox="0 0 16 16" aria-hidden="true">
        <path d="M3 5h10M3 8h10M3 11h10" />
      </svg>
    </button>
  );
}
