import { useEffect } from "react";
import { takeKey } from "./book/keys.js";

/** The desk's keys, on the whole page; which there are is one table, `book/keys.ts`. */
export function useKeys(): void {
  useEffect(() => {
    function onKeyDown(event: KeyboardEvent): void {
      if (!event.defaultPrevented && takeKey(event)) event.preventDefault();
    }
    window.addEventListener("keydown", onKeyDown);
    return () => window.removeEventListener("keydown", onKeyDown);
  }, []);
}
