import { useRef, useState } from "react";
import type { CSSProperties, PointerEvent } from "react";

interface SheetDrag {
  isHeld: boolean;
  style: CSSProperties;
  handlers: {
    onPointerDown?: (event: PointerEvent<HTMLElement>) => void;
    onPointerMove?: (event: PointerEvent<HTMLElement>) => void;
    onPointerUp?: (event: PointerEvent<HTMLElement>) => void;
    onPointerCancel?: () => void;
  };
}

const NOWHERE = [0, 0] as const;
/** mm of paper: a press that moves less is no drag. */
const LEAST = 1;

/**
 * Dragging a plan on its paper: the drawing follows the pointer (by CSS variables that the page's
 * style hands to the plan's own layer) and is drawn anew once it is let go.
 * @param paperWidth mm
 * @param onMove told mm right and down; null where nothing can be moved
 */
export function useSheetDrag(
  paperWidth: number,
  onMove: ((by: readonly [number, number]) => void) | null,
): SheetDrag {
  const from = useRef<readonly [number, number] | null>(null);
  const [by, setBy] = useState<readonly [number, number]>(NOWHERE);
  const isHeld = by !== NOWHERE;
  const style = { "--moved-x": by[0], "--moved-y": by[1] } as CSSProperties;
  if (onMove === null) return { isHeld: false, style: {}, handlers: {} };
  const stop = (): void => {
    from.current = null;
    setBy(NOWHERE);
  };
  return {
    isHeld,
    style,
    handlers: {
      onPointerDown: (event) => {
        if (event.button !== 0 || !event.isPrimary) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        from.current = [event.clientX, event.clientY];
      },
      onPointerMove: (event) => {
        if (from.current === null || !event.isPrimary) return;
        const pixels = event.currentTarget.clientWidth / paperWidth;
        setBy([
          (event.clientX - from.current[0]) / pixels,
          (event.clientY - from.current[1]) / pixels,
        ]);
      },
      onPointerUp: () => {
        if (Math.hypot(...by) >= LEAST) onMove(by);
        stop();
      },
      onPointerCancel: stop,
    },
  };
}
