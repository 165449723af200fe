import { useEffect } from "react";
import { typesElsewhere } from "./keys.js";

/**
 * Keys of a tool that takes taps on the ground, before anything else hears them: Escape leaves it, and
 * `act` says whether a key was one of its own.
 */
export function useToolKeys(act: (event: KeyboardEvent) => boolean, onEnd: () => void): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || typesElsewhere(event.target)) return;
      if (event.key === "Escape") onEnd();
      else if (!act(event)) return;
      event.preventDefault();
      event.stopPropagation();
    };
    document.addEventListener("keydown", onKey, true);
    return () => document.removeEventListener("keydown", onKey, true);
  }, [act, onEnd]);
}

/** Keys on a button stay the button's own. */
export function isOnButton({ target }: KeyboardEvent): boolean {
  return target instanceof HTMLElement && target.closest("button") !== null;
}
