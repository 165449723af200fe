import { useEffect } from "react";
import type { PlanPoint } from "../site/index.js";
import { FOOT } from "../units/index.js";
import { useDesk } from "../store/index.js";
import { saveSite } from "./files.js";

const ARROWS: Readonly<Record<string, PlanPoint>> = {
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
};

/** Whether the keys belong to what has the focus: a field, a list, a menu, a dialog. */
function typesElsewhere(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  return (
    target.closest(
      "input, textarea, select, [role=dialog], [role=menu], [role=slider], summary",
    ) !== null
  );
}

/** In a field with typing under way, Ctrl+Z is the field's own. */
function hasTyping(target: EventTarget | null): boolean {
  if (target instanceof HTMLTextAreaElement) return true;
  return target instanceof HTMLInputElement && target.dataset["typing"] !== undefined;
}

/** Undo, redo and save by Ctrl (or the command key). True when the key was one of them. */
function commanded(event: KeyboardEvent): boolean {
  if (!event.ctrlKey && !event.metaKey) return false;
  const key = event.key.toLowerCase();
  if (key === "s") {
    saveSite();
    return true;
  }
  if (hasTyping(event.target)) return false;
  if (key === "z" && !event.shiftKey) useDesk.getState().undo();
  else if (key === "y" || (key === "z" && event.shiftKey)) useDesk.getState().redo();
  else return false;
  return true;
}

/** Keys for what is picked: nudge, remove, let go. True when the key was one of them. */
function onPicked(event: KeyboardEvent): boolean {
  const desk = useDesk.getState();
  if (event.key === "Escape") {
    if (desk.placing !== null) desk.stopPlacing();
    else if (desk.section !== null && desk.section.length < 2) desk.stopSection();
    else if (desk.selected !== null) desk.select(null);
    else if (desk.section !== null) desk.stopSection();
    else return false;
    return true;
  }
  if (event.ctrlKey || event.metaKey || event.altKey || desk.selected === null) return false;
  if (desk.history === null || desk.history.mark !== null) return false;
  if (event.key === "Delete" || event.key === "Backspace") {
    desk.removeSelected();
    return true;
  }
  const arrow = ARROWS[event.key];
  if (arrow === undefined) return false;
  const small = desk.history.present.units === "us" ? 0.5 * FOOT : 0.1;
  const step = event.shiftKey ? small * 10 : small;
  desk.nudge([arrow[0] * step, arrow[1] * step]);
  return true;
}

/** The desk's keys, on the whole page. */
export function useKeys(): void {
  useEffect(() => {
    function onKeyDown(event: KeyboardEvent): void {
      if (event.defaultPrevented) return;
      const used = commanded(event) || (!typesElsewhere(event.target) && onPicked(event));
      if (used) event.preventDefault();
    }
    window.addEventListener("keydown", onKeyDown);
    return () => window.removeEventListener("keydown", onKeyDown);
  }, []);
}
