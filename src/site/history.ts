/**
 * Undo and redo, as a pure value. Undo keeps whole sites (they share what did not change).
 *
 * An edit is recorded at once. A drag is one step: `mark` before it, any number of passing
 * `pass`, then `commit` (one step from the mark) or `restore` (back to the mark, no step).
 */
import type { Site } from "./schema.js";

/** How many steps can be undone. */
export const MOST_STEPS = 200;

/** A site and the name of the edit that led away from it (past) or into it (future). */
export interface HistoryStep {
  name: string;
  site: Site;
}

export interface History {
  /** Oldest first; each holds the site as it was before the named edit. */
  past: readonly HistoryStep[];
  present: Site;
  /** Next redo first; each holds the site as it is after the named edit. */
  future: readonly HistoryStep[];
  /** Where an unfinished drag began, or null. */
  mark: HistoryStep | null;
}

/** A history with nothing to undo. */
export function startHistory(site: Site): History {
  return { past: [], present: site, future: [], mark: null };
}

function stepFrom(history: History, before: HistoryStep, present: Site): History {
  const past = [...history.past, before].slice(-MOST_STEPS);
  return { past, present, future: [], mark: null };
}

/** One whole edit. An unfinished drag is committed first; an edit that changes nothing is no step. */
export function record(history: History, site: Site, name: string): History {
  const settled = commit(history);
  if (site === settled.present) return settled;
  return stepFrom(settled, { name, site: settled.present }, site);
}

/** Marks where a drag begins. An earlier unfinished drag is committed first. */
export function mark(history: History, name: string): History {
  const settled = commit(history);
  return { ...settled, mark: { name, site: settled.present } };
}

/** A passing update within a drag; outside a drag it is a broken invariant. */
export function pass(history: History, site: Site): History {
  if (history.mark === null) throw new Error("a passing update expected a mark, got none");
  return site === history.present ? history : { ...history, present: site };
}

/** Ends a drag as one step, or as none when nothing changed. */
export function commit(history: History): History {
  const begun = history.mark;
  if (begun === null) return history;
  if (begun.site === history.present) return { ...history, mark: null };
  return stepFrom(history, begun, history.present);
}

/** Ends a drag by going back to where it began. */
export function restore(history: History): History {
  if (history.mark === null) return history;
  return { ...history, present: history.mark.site, mark: null };
}

/** One step back; during a drag, back to where the drag began. */
export function undo(history: History): History {
  if (history.mark !== null) return restore(history);
  const step = history.past.at(-1);
  if (step === undefined) return history;
  return {
    past: history.past.slice(0, -1),
    present: step.site,
    future: [{ name: step.name, site: history.present }, ...history.future],
    mark: null,
  };
}

/** One step forward again; nothing during a drag. */
export function redo(history: History): History {
  const step = history.future[0];
  if (step === undefined || history.mark !== null) return history;
  return {
    past: [...history.past, { name: step.name, site: history.present }],
    present: step.site,
    future: history.future.slice(1),
    mark: null,
  };
}

/** Name of the edit that `undo` would take back, or null. */
export function undoName(history: History): string | null {
  return history.past.at(-1)?.name ?? null;
}

/** Name of the edit that `redo` would bring back, or null. */
export function redoName(history: History): string | null {
  return history.future[0]?.name ?? null;
}

/** One step that can be gone to: its name, and the site as it is after it. */
export interface NamedStep {
  /** The edit that led here; null for the oldest site that is kept. */
  name: string | null;
  site: Site;
}

/** Every site that can be gone to, oldest first; the present is at `past.length`. */
export function stepsOf({ past, present, future }: History): NamedStep[] {
  const sites = [...past.map((step) => step.site), present, ...future.map((step) => step.site)];
  const names = [...past, ...future].map((step) => step.name);
  return sites.map((site, index) => ({ site, name: index === 0 ? null : names[index - 1]! }));
}

/**
 * Goes straight to one of `stepsOf`, by its index; what lies between is undone or done again with
 * it. A drag under way is given up first. An index that is not there changes nothing else.
 */
export function stepTo(history: History, index: number): History {
  let now = restore(history);
  if (!Number.isInteger(index) || index < 0 || index > now.past.length + now.future.length)
    return now;
  while (now.past.length > index) now = undo(now);
  while (now.past.length < index) now = redo(now);
  return now;
}
