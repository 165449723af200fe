import type { PlanPoint } from "../site/index.js";

/** Which way each arrow key moves a thing, east and north. */
export const ARROWS: Readonly<Record<string, PlanPoint>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Whether the keys belong to what has the focus: a field, a list, a menu, a dialog, a slider. */
export function typesElsewhere(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  const owner = "input, textarea, select, summary, [contenteditable], ";
  const roles = "[role=dialog], [role=menu], [role=listbox], [role=slider], [role=tablist]";
  return target.closest(owner + roles) !== null;
}
