import { useEffect, useRef } from "react";
import type { MouseEvent, PointerEvent } from "react";

/** ms that a finger rests before it means more than a tap. Common practice, no source. */
const LONG = 500;
/** px that it may tremble meanwhile. */
const STILL = 10;

interface LongPress {
  onPointerDown: (event: PointerEvent) => void;
  onPointerMove: (event: PointerEvent) => void;
  onPointerUp: () => void;
  onPointerCancel: () => void;
  onContextMenu: (event: MouseEvent) => void;
  /** The click that the browser makes of the press when it ends belongs to it: true, once. */
  tookClick: () => boolean;
}

/** Handlers that call `onLong` when a finger rests on the element. */
export function useLongPress(onLong: () => void): LongPress {
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const began = useRef<{ x: number; y: number } | null>(null);
  const taken = useRef(false);
  useEffect(() => () => clearTimeout(timer.current), []);

  function stop(): void {
    clearTimeout(timer.current);
    began.current = null;
  }

  return {
    onPointerDown(event) {
      taken.current = false;
      if (event.pointerType !== "touch") return;
      began.current = { x: event.clientX, y: event.clientY };
      clearTimeout(timer.current);
      timer.current = setTimeout(() => {
        taken.current = true;
        onLong();
      }, LONG);
    },
    onPointerMove(event) {
      const from = began.current;
      if (from === null) return;
      if (Math.hypot(event.clientX - from.x, event.clientY - from.y) > STILL) stop();
    },
    onPointerUp: stop,
    onPointerCancel: stop,
    onContextMenu(event) {
      // The browser's own menu on a long press would cover the row.
      if (began.current !== null || taken.current) event.preventDefault();
    },
    tookClick() {
      const was = taken.current;
      taken.current = false;
      return was;
    },
  };
}
