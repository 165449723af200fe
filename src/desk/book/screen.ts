import { useSyncExternalStore } from "react";

/** The leaf is a sheet under the scene, as on a phone; the same width as in page.css. */
const NARROW = "(max-width: 760px)";

/** Whether the page is as narrow as a phone. */
export const isNarrow = (): boolean => window.matchMedia(NARROW).matches;

function watchWidth(tell: () => void): () => void {
  const query = window.matchMedia(NARROW);
  query.addEventListener("change", tell);
  return () => query.removeEventListener("change", tell);
}

/** Whether the page is as narrow as a phone, followed as it changes. */
export const useNarrow = (): boolean => useSyncExternalStore(watchWidth, isNarrow);

/** Whether this device calls its command key ⌘. */
export const isApple = (): boolean => /Mac|iPhone|iPad/.test(navigator.userAgent);
