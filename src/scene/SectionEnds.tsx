import {
  useEffect,
  useLayoutEffect,
  useRef,
  type KeyboardEvent,
  type PointerEvent,
  type ReactElement,
} from "react";
import type { PlanPoint } from "../site/index.js";
import { words } from "../words/index.js";
import { snap, type ScreenPoint } from "./dragging.js";
import { snapStep } from "./figures.js";
import { toScene, toSite } from "./frame.js";
import type { SiteSceneProps } from "./props.js";
import type { SceneContents } from "./sceneTargets.js";
import { projectPoint, rayAt, type SceneView } from "./sceneView.js";

type Line = readonly [PlanPoint, PlanPoint];
/** What is moved: an end, or the whole line by its middle. */
type Part = "A" | "B" | "line";

interface SectionEndsProps {
  line: Line;
  contents: SceneContents;
  view: SceneView;
  onMove: SiteSceneProps["onSectionMove"];
}

const PARTS: readonly Part[] = ["A", "line", "B"];
const NAMES: Readonly<Record<Part, string>> = {
  A: words.scene.moveEndSection,
  B: words.scene.moveEndBSection,
  line: words.scene.moveWholeSection,
};

/** One press on a handle: all of its drag is worked out from this. */
interface Held {
  pointer: number;
  part: Part;
  line: Line;
  grabbed: PlanPoint;
}

/** Handles of the section's line: one at each end, and one in the middle that moves it whole. */
export function SectionEnds({ line, contents, view, onMove }: SectionEndsProps): ReactElement {
  const layer = useRef<HTMLDivElement>(null);
  const held = useRef<Held | null>(null);
  useLayoutEffect(() => {
    if (layer.current !== null) placeEnds(layer.current, line, contents, view);
  });
  useEffect(
    () =>
      view.subscribe(() => {
        if (layer.current !== null) placeEnds(layer.current, line, contents, view);
      }),
    [line, contents, view],
  );
  const end = (cancelled: boolean): void => {
    if (cancelled && held.current !== null) onMove(held.current.line);
    held.current = null;
    view.setOrbit(true);
  };
  const press = (event: PointerEvent<HTMLButtonElement>, part: Part): void => {
    const grabbed = placeUnder(event, layer.current, contents, view);
    if (event.button !== 0 || grabbed === null) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    view.setOrbit(false);
    held.current = { pointer: event.pointerId, part, line, grabbed };
  };
  const drag = (event: PointerEvent<HTMLButtonElement>): void => {
    const now = held.current;
    if (now === null || now.pointer !== event.pointerId) return;
    const at = placeUnder(event, layer.current, contents, view);
    if (at === null) return;
    const step = event.altKey ? 0 : snapStep(contents.site.units);
    onMove(moved(now.line, now.part, [at[0] - now.grabbed[0], at[1] - now.grabbed[1]], step));
  };
  return (
    <div className="scene-handles" ref={layer}>
      {PARTS.map((part) => (
        <button
          key={part}
          type="button"
          className="scene-section-end"
          data-part={part}
          data-testid={`section-end-${part}`}
          aria-label={NAMES[part]}
          title={words.scene.dragToMove}
          onPointerDown={(event) => press(event, part)}
          onPointerMove={drag}
          onPointerUp={() => end(false)}
          onPointerCancel={() => end(true)}
          onKeyDown={(event) => nudge(event, part, line, contents, onMove)}
        >
          <i>{part === "line" ? "" : part}</i>
        </button>
      ))}
    </div>
  );
}

/** The line with one of its parts moved by an offset, snapped to whole steps (m; 0: not at all). */
export function moved(line: Line, part: Part, by: PlanPoint, step: number): Line {
  const [from, to] = line;
  const shift = (at: PlanPoint, exact: PlanPoint): PlanPoint => [
    snap(at[0] + exact[0], step),
    snap(at[1] + exact[1], step),
  ];
  if (part === "A") return [shift(from, by), to];
  if (part === "B") return [from, shift(to, by)];
  // Moved whole it keeps its length and its direction.
  const start = shift(from, by);
  return [start, [to[0] + start[0] - from[0], to[1] + start[1] - from[1]]];
}

function placeEnds(
  layer: HTMLElement,
  [from, to]: Line,
  { frame, ground, found }: SceneContents,
  view: SceneView,
): void {
  const middle: PlanPoint = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const places: Readonly<Record<Part, PlanPoint>> = { A: from, line: middle, B: to };
  for (const button of layer.querySelectorAll<HTMLElement>(".scene-section-end")) {
    const [x, y] = toScene(frame, places[button.dataset["part"] as Part]);
    const z = (ground.heightAt(x, y) ?? found.heightAt(x, y))?.z ?? frame.centre[2];
    const at = projectPoint(view, [x, y, z]);
    button.hidden = at === null;
    if (at === null) continue;
    button.style.transform = `translate(${Math.round(at.left)}px, ${Math.round(at.top)}px)`;
  }
}

/** Site place under the pointer on the ground as found; null off it. */
export function placeUnder(
  event: PointerEvent<HTMLElement>,
  layer: HTMLElement | null,
  { frame, found }: SceneContents,
  view: SceneView,
): PlanPoint | null {
  const box = layer?.getBoundingClientRect();
  if (box === undefined) return null;
  const screen: ScreenPoint = { left: event.clientX - box.left, top: event.clientY - box.top };
  const ray = rayAt(view, screen);
  const hit = ray === null ? null : found.strike(ray);
  return hit === null ? null : toSite(frame, [hit[0], hit[1]]);
}

/** Which way each arrow key moves a thing, east and north. */
export const ARROWS: Readonly<Record<string, PlanPoint>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

function nudge(
  event: KeyboardEvent,
  part: Part,
  line: Line,
  contents: SceneContents,
  onMove: SiteSceneProps["onSectionMove"],
): void {
  const way = ARROWS[event.key];
  if (way === undefined) return;
  event.preventDefault();
  event.stopPropagation();
  const step = snapStep(contents.site.units) * (event.shiftKey ? 10 : 1);
  onMove(moved(line, part, [way[0] * step, way[1] * step], 0));
}
