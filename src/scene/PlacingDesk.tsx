import { useEffect, useLayoutEffect, useRef, type ReactElement, type RefObject } from "react";
import { groundAt } from "../estimate/index.js";
import type { PlanPoint, Site } from "../site/index.js";
import { area, bearing, distance, elevation } from "../units/index.js";
import { words } from "../words/index.js";
import { drawnFigures } from "./drawnFigures.js";
import { snapStep } from "./figures.js";
import { toScene, toSite } from "./frame.js";
import { holdWords } from "./holdWords.js";
import { LegFields } from "./LegFields.js";
import { PlaceFields } from "./PlaceFields.js";
import { LegLabels } from "./LegLabels.js";
import { leastCorners, placingHint } from "./placing.js";
import { actOfKey, type PlacingKey } from "./placingKeys.js";
import type { SceneContents } from "./sceneTargets.js";
import { projectPoint, type SceneView } from "./sceneView.js";
import { onGrid } from "./snap.js";
import type { PlacingDraft, PlacingTool } from "./usePlacing.js";

interface PlacingDeskProps {
  tool: PlacingTool;
  draft: PlacingDraft;
  contents: SceneContents;
  view: SceneView;
  onCancel: () => void;
}

/** What is written while placing: elevation, figures of the leg and the shape, what to do next. */
export function PlacingDesk(props: PlacingDeskProps): ReactElement {
  const { tool, draft, contents, view, onCancel } = props;
  const hint = useRef<HTMLDivElement>(null);
  usePlacingKeys(props, hint);
  useRoomFor(hint, view);
  const least = leastCorners(draft.placing);
  const count = draft.corners.length;
  return (
    <>
      <PlacingNote {...{ draft, contents, view }} />
      <LegLabels {...{ contents, view }} places={draft.corners} closed={false} />
      <div className="scene-hint" data-testid="scene-hint" ref={hint}>
        <p role="status">
          {draft.missed && `${words.drawing.hint.missed} `}
          {draft.fault !== null && `${draft.fault} `}
          {placingHint(draft.placing, count, hasFinger())}
        </p>
        {count === 0 && <PlaceFields units={contents.site.units} send={tool.send} />}
        {least > 1 && count > 0 && (
          <LegFields
            count={count}
            onCancel={onCancel}
            units={contents.site.units}
            fixed={draft.fixed}
            send={tool.send}
          />
        )}
        {count > 0 && (
          <button
            type="button"
            data-testid="scene-back"
            onClick={() => tool.send({ type: "back" })}
          >
            {words.drawing.hint.back}
          </button>
        )}
        {least > 1 && count >= least && (
          <button
            type="button"
            className="scene-done"
            data-testid="scene-done"
            onClick={() => tool.send({ type: "finish" })}
          >
            {words.drawing.hint.done}
          </button>
        )}
        <button type="button" data-testid="scene-cancel" onClick={onCancel}>
          {words.drawing.hint.cancel}
        </button>
      </div>
    </>
  );
}

interface PlacingNoteProps {
  draft: PlacingDraft;
  contents: SceneContents;
  view: SceneView;
}

/** The note beside the pointer, and the mark where the place is held. */
function PlacingNote({ draft, contents, view }: PlacingNoteProps): ReactElement {
  const note = useRef<HTMLDivElement>(null);
  const mark = useRef<HTMLElement>(null);
  const { site } = contents;
  useLayoutEffect(() => placeNote(note.current, mark.current, draft.hover, contents, view));
  useLayoutEffect(
    () => view.subscribe(() => placeNote(note.current, mark.current, draft.hover, contents, view)),
    [draft.hover, contents, view],
  );
  const { holds } = draft;
  return (
    <>
      <i className="scene-hold" ref={mark} data-by={holds[0]?.by ?? "nothing"} aria-hidden="true" />
      <div className="scene-note" ref={note} data-testid="scene-placing-note">
        <b>{elevationText(site, draft.hover)}</b>
        {draft.hover !== null && <span>{placeText(draft.hover, site)}</span>}
        {figureLines(site, draft).map((line) => (
          <span key={line}>{line}</span>
        ))}
        {holds.length > 0 && <em data-testid="scene-hold">{holdWords(holds, site.units)}</em>}
      </div>
    </>
  );
}

function elevationText(site: Site, at: PlanPoint | null): string {
  const z = at === null ? null : groundAt(site, at);
  return z === null ? words.drawing.offSurvey : elevation.print(z, site.units);
}

/** East and north of a place, as the site writes distances. */
function placeText([x, y]: PlanPoint, { units }: Site): string {
  return words.drawing.at(distance.print(x, units), distance.print(y, units));
}

/** Whether whoever draws does so with a finger. */
function hasFinger(): boolean {
  return matchMedia("(pointer: coarse)").matches;
}

/** Keeps what the hint lies over free of the lot, unless the person has moved the view. */
function useRoomFor(hint: RefObject<HTMLDivElement | null>, view: SceneView): void {
  useEffect(() => {
    const bar = hint.current;
    const scene = bar?.closest<HTMLElement>(".scene");
    if (bar === null || scene === null || scene === undefined) return undefined;
    const watch = new ResizeObserver(() => {
      const foot = Number.parseFloat(getComputedStyle(bar).bottom) || 0;
      scene.style.setProperty("--scene-bar-bottom", `${foot + bar.offsetHeight + 8}px`);
      view.fitAgain();
    });
    watch.observe(bar);
    return () => {
      watch.disconnect();
      scene.style.removeProperty("--scene-bar-bottom");
      view.fitAgain();
    };
  }, [hint, view]);
}

/** Lines of figures for the leg under way and the shape so far; none before the first corner. */
function figureLines(site: Site, { placing, corners, hover }: PlacingDraft): string[] {
  const figures = drawnFigures(placing, corners, hover);
  if (figures === null) return [];
  const { units } = site;
  const says = words.drawing;
  const whole = [
    ...(figures.running === null ? [] : [says.running(distance.print(figures.running, units))]),
    ...(figures.area === null ? [] : [says.area(area.print(figures.area, units))]),
  ];
  // On the last corner itself there is no leg yet: a finger has no pointer that goes on.
  if (figures.leg < 0.01) return whole;
  const turn =
    figures.angle === null
      ? says.heading(bearing.print(figures.bearing, units))
      : Math.abs(figures.angle - 90) < 0.05
        ? says.rightAngle
        : says.angle(`${figures.angle.toFixed(1)}°`);
  return [says.leg(distance.print(figures.leg, units)), turn, ...whole];
}

/** px at the scene's foot that the hint and the stages lie over. */
const FOOT = 150;

function placeNote(
  note: HTMLElement | null,
  mark: HTMLElement | null,
  hover: PlanPoint | null,
  contents: SceneContents,
  view: SceneView,
): void {
  if (note === null || mark === null) return;
  const plan = hover === null ? null : toScene(contents.frame, hover);
  const z = plan === null ? null : contents.ground.heightAt(plan[0], plan[1]);
  const at = plan === null || z === null ? null : projectPoint(view, [plan[0], plan[1], z.z]);
  note.hidden = at === null;
  mark.hidden = at === null;
  if (at === null) return;
  mark.style.transform = `translate(${Math.round(at.left)}px, ${Math.round(at.top)}px)`;
  // Kept on the screen: it flips to the pointer's other side near the right edge, and up at the foot.
  const { offsetWidth: wide, offsetHeight: high } = note;
  const left = at.left + 18 + wide > view.width ? at.left - 18 - wide : at.left + 18;
  const top = at.top + 14 + high > view.height - FOOT ? at.top - 14 - high : at.top + 14;
  note.style.transform = `translate(${Math.round(Math.max(4, left))}px, ${Math.round(top)}px)`;
}

/** Keys while placing, wherever the focus is, but in a field. */
function usePlacingKeys(
  { tool, draft, contents, onCancel }: PlacingDeskProps,
  hint: RefObject<HTMLDivElement | null>,
): void {
  const { placing } = draft;
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || isTyping(event.target)) return;
      const key: PlacingKey = { key: event.key, shift: event.shiftKey, on: placeOfFocus(event) };
      const step = snapStep(contents.site.units);
      const act = actOfKey(placing, tool.now(), key, { step, middle: middleOf(contents) });
      if (act === null) return;
      event.preventDefault();
      event.stopPropagation();
      if (act.type === "cancel") onCancel();
      else if (act.type === "type") beginTyping(hint.current, act.text);
      else tool.send(act);
    };
    document.addEventListener("keydown", onKey, true);
    return () => document.removeEventListener("keydown", onKey, true);
  }, [tool, placing, contents, onCancel, hint]);
}

/** Puts the first sign of a number into the length's field, with the focus. */
function beginTyping(hint: HTMLDivElement | null, text: string): void {
  const field = hint?.querySelector<HTMLInputElement>("input");
  if (field === null || field === undefined) return;
  field.focus({ preventScroll: true });
  field.setRangeText(text, 0, field.value.length, "end");
  field.dispatchEvent(new Event("input", { bubbles: true }));
}

function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement &&
    target.closest("input, textarea, select, [contenteditable]") !== null
  );
}

function placeOfFocus({ target }: KeyboardEvent): PlacingKey["on"] {
  if (!(target instanceof HTMLElement) || target.closest("button") === null) return "scene";
  return target.closest(".scene-hint") === null ? "button" : "hint";
}

function middleOf({ frame, site }: SceneContents): PlanPoint {
  return onGrid(toSite(frame, [frame.centre[0], frame.centre[1]]), snapStep(site.units));
}
