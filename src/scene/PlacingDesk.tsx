import { useEffect, useLayoutEffect, useRef, type ReactElement } from "react";
import { groundAt } from "../estimate/index.js";
import type { PlanPoint, Site } from "../site/index.js";
import { distance, elevation } from "../units/index.js";
import { toScene, toSite } from "./frame.js";
import { leastCorners, placingHint } from "./placing.js";
import type { SceneContents } from "./sceneTargets.js";
import { projectPoint, type SceneView } from "./sceneView.js";
import { snapStep } from "./figures.js";
import type { PlacingDraft, PlacingTool } from "./usePlacing.js";

interface PlacingDeskProps {
  tool: PlacingTool;
  draft: PlacingDraft;
  contents: SceneContents;
  view: SceneView;
  onCancel: () => void;
}

/** What is written while placing: the place's elevation, the leg's length, and what to do next. */
export function PlacingDesk({
  tool,
  draft,
  contents,
  view,
  onCancel,
}: PlacingDeskProps): ReactElement {
  const note = useRef<HTMLDivElement>(null);
  const { site } = contents;
  useLayoutEffect(() => {
    if (note.current !== null) placeNote(note.current, draft.hover, contents, view);
  });
  useEffect(
    () =>
      view.subscribe(() => {
        if (note.current !== null) placeNote(note.current, draft.hover, contents, view);
      }),
    [draft.hover, contents, view],
  );
  usePlacingKeys(tool, draft, contents, onCancel);
  const least = leastCorners(draft.kind);
  return (
    <>
      <div className="scene-note" ref={note} data-testid="scene-placing-note">
        <b>{elevationText(site, draft.hover)}</b>
        {legText(site, draft) !== null && <span>{legText(site, draft)}</span>}
      </div>
      <div className="scene-hint" data-testid="scene-hint">
        <p role="status">
          {draft.missed && "No ground there: click on the ground that is drawn. "}
          {placingHint(draft.kind, draft.corners.length)}
        </p>
        {least > 1 && draft.corners.length >= least && (
          <button
            type="button"
            className="scene-done"
            data-testid="scene-done"
            onClick={() => tool.send({ type: "finish" })}
          >
            Done
          </button>
        )}
        <button type="button" data-testid="scene-cancel" onClick={onCancel}>
          Cancel
        </button>
      </div>
    </>
  );
}

function elevationText(site: Site, at: PlanPoint | null): string {
  const z = at === null ? null : groundAt(site, at);
  return z === null ? "off the survey" : elevation.print(z, site.units);
}

/** Length of the leg to the pointer; null before the first corner. */
function legText(site: Site, draft: PlacingDraft): string | null {
  const last = draft.corners.at(-1);
  if (last === undefined || draft.hover === null) return null;
  const leg = Math.hypot(draft.hover[0] - last[0], draft.hover[1] - last[1]);
  return `${distance.print(leg, site.units)} from the last`;
}

function placeNote(
  note: HTMLElement,
  hover: PlanPoint | null,
  contents: SceneContents,
  view: SceneView,
): void {
  const plan = hover === null ? null : toScene(contents.frame, hover);
  const z = plan === null ? null : contents.ground.heightAt(plan[0], plan[1]);
  const at = plan === null || z === null ? null : projectPoint(view, [plan[0], plan[1], z.z]);
  note.hidden = at === null;
  if (at === null) return;
  // Kept on the screen: it flips to the pointer's other side near the right edge.
  const left =
    at.left + 18 + note.offsetWidth > view.width ? at.left - 18 - note.offsetWidth : at.left + 18;
  note.style.transform = `translate(${Math.round(left)}px, ${Math.round(at.top + 14)}px)`;
}

const ARROWS: Readonly<Record<string, PlanPoint>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Keys while placing: arrows move the mark, Space sets it, Enter finishes, Backspace takes back. */
function usePlacingKeys(
  tool: PlacingTool,
  draft: PlacingDraft,
  contents: SceneContents,
  onCancel: () => void,
): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (isTyping(event.target)) return;
      const did = actOn(event, tool, draft, contents, onCancel);
      if (!did) return;
      event.preventDefault();
      event.stopPropagation();
    };
    document.addEventListener("keydown", onKey, true);
    return () => document.removeEventListener("keydown", onKey, true);
  }, [tool, draft, contents, onCancel]);
}

function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement &&
    target.closest("input, textarea, select, [contenteditable]") !== null
  );
}

/**
 * True when the key meant something. Keys on a button stay the button's own, but for Enter once a
 * shape can be finished: it finishes wherever the focus is (the button that began the placing may
 * have it still), except on the hint's own buttons.
 */
function actOn(
  event: KeyboardEvent,
  tool: PlacingTool,
  draft: PlacingDraft,
  contents: SceneContents,
  onCancel: () => void,
): boolean {
  const onButton = event.target instanceof HTMLElement && event.target.closest("button") !== null;
  if (event.key === "Escape") {
    onCancel();
    return true;
  }
  if (event.key === "Backspace") {
    tool.send({ type: "back" });
    return true;
  }
  const way = ARROWS[event.key];
  if (way !== undefined) {
    const step = snapStep(contents.site.units) * (event.shiftKey ? 50 : 5);
    const from = draft.hover ?? middleOf(contents);
    tool.hoverAt([from[0] + way[0] * step, from[1] + way[1] * step]);
    return true;
  }
  if (event.key !== "Enter" && event.key !== " ") return false;
  const least = leastCorners(draft.kind);
  const single = least === 1;
  if (onButton) {
    const onHint = event.target.closest(".scene-hint") !== null;
    if (onHint || event.key === " " || single || draft.corners.length < least) return false;
  }
  if (draft.hover !== null && (single || event.key === " ")) {
    tool.send({ type: "click", at: draft.hover });
  } else if (event.key === "Enter") tool.send({ type: "finish" });
  return true;
}

function middleOf(contents: SceneContents): PlanPoint {
  const { frame, site } = contents;
  const step = snapStep(site.units);
  const [x, y] = toSite(frame, [frame.centre[0], frame.centre[1]]);
  return [Math.round(x / step) * step, Math.round(y / step) * step];
}
