/** Whether the tour is shown by itself: once on a device, and never to a machine that drives the page. */

const KEY = "bankyard.tour-seen";

/** Where the device remembers that it was seen; null where the browser keeps nothing. */
export interface Memory {
  getItem: (key: string) => string | null;
  setItem: (key: string, value: string) => void;
}

/** The browser's own memory, or null where it is switched off (reading it throws then). */
export function deviceMemory(): Memory | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}

/** Whether the tour begins by itself on opening the page. `?tour` asks for it in any case. */
export function beginsByItself(search: string, isDriven: boolean, memory: Memory | null): boolean {
  if (new URLSearchParams(search).has("tour")) return true;
  // Where nothing is remembered it would come back on every visit: then only when asked for.
  return !isDriven && memory !== null && memory.getItem(KEY) === null;
}

/** Remembers that it was seen. A full memory keeps it from being so, and it is shown once more. */
export function rememberSeen(memory: Memory | null): boolean {
  try {
    memory?.setItem(KEY, "yes");
    return memory !== null;
  } catch {
    return false;
  }
}
