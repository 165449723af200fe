import { create } from "zustand";

/** What can lie open over the desk, one at a time. */
export type Panel = "findings" | "steps" | "search" | "keys" | "terms";

interface Panels {
  open: Panel | null;
  /** The term that the page of terms was opened at. */
  term: string | null;
  /** How often a place in a leaf was asked for: a phone's sheet that is down then comes up. */
  leafAsked: number;
  /** The tour was asked for again. */
  touring: boolean;
}

/** What lies open over the desk; no part of the document. */
export const usePanels = create<Panels>()(() => ({
  open: null,
  term: null,
  leafAsked: 0,
  touring: false,
}));

/** Opens one, and closes what was open. */
export function openPanel(open: Panel, term: string | null = null): void {
  usePanels.setState({ open, term });
}

/** Closes one, if it is the one that is open. */
export function closePanel(panel: Panel): void {
  if (usePanels.getState().open === panel) usePanels.setState({ open: null });
}
