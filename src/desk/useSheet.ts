import { useRef, useState } from "react";
import type { PointerEvent } from "react";
import type { Leaf } from "../store/index.js";
import { usePanels } from "./book/panels.js";

/** How far a phone's sheet is drawn up: its head only, beside the ground, or over the ground. */
export const SHEET_STOPS = ["down", "half", "up"] as const;
export type SheetStop = (typeof SHEET_STOPS)[number];

/** The stop next to one, up or down; the ends stay. */
export function nextStop(at: SheetStop, way: "up" | "down"): SheetStop {
  const index = SHEET_STOPS.indexOf(at) + (way === "up" ? 1 : -1);
  return SHEET_STOPS[Math.min(SHEET_STOPS.length - 1, Math.max(0, index))]!;
}

export interface Sheet {
  at: SheetStop;
  move: (way: "up" | "down") => void;
  /** Handlers for what the sheet is pulled by. */
  pull: {
    onPointerDown: (event: PointerEvent) => void;
    onPointerUp: (event: PointerEvent) => void;
    onPointerCancel: () => void;
  };
}

/** px that a finger must travel to pull the sheet by one stop, and by two. */
const ONE_STOP = 24;
const TWO_STOPS = 260;

/** The phone's sheet: where it stands, and how it is pulled. */
export function useSheet(leaf: Leaf): Sheet {
  const asked = usePanels((panels) => panels.leafAsked);
  const [set, setSet] = useState<{ at: SheetStop; leaf: Leaf; asked: number }>({
    ...{ at: "half", leaf, asked },
  });
  const from = useRef<number | null>(null);
  // Whoever asks for another leaf, or for a place in this one, wants to see it.
  const isWanted = set.leaf !== leaf || set.asked !== asked;
  const at = set.at === "down" && isWanted ? "half" : set.at;
  const move = (way: "up" | "down"): void => setSet({ at: nextStop(at, way), leaf, asked });
  return {
    at,
    move,
    pull: {
      onPointerDown: (event) => {
        const onButton = event.target instanceof Element && event.target.closest("button") !== null;
        from.current = onButton ? null : event.clientY;
        if (!onButton) event.currentTarget.setPointerCapture(event.pointerId);
      },
      onPointerUp: (event) => {
        const by = from.current === null ? 0 : from.current - event.clientY;
        from.current = null;
        if (Math.abs(by) < ONE_STOP) return;
        const way = by > 0 ? "up" : "down";
        const next = nextStop(at, way);
        setSet({ at: Math.abs(by) < TWO_STOPS ? next : nextStop(next, way), leaf, asked });
      },
      onPointerCancel: () => (from.current = null),
    },
  };
}
