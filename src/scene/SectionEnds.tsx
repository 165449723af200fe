import { useRef, type PointerEvent, type ReactElement } from "react";
import type { PlanPoint } from "../site/index.js";
import { words } from "../words/index.js";
import { snap } from "./dragging.js";
import { snapStep } from "./figures.js";
import { arrowShift, placeUnder, standOn } from "./groundHandles.js";
import { RANK, useOverLayer } from "./overLayers.js";
import type { SiteSceneProps } from "./props.js";
import type { SceneContents } from "./sceneTargets.js";
import type { SceneView } from "./sceneView.js";
import type { ScreenBox } from "./spotLayout.js";

type Line = readonly [PlanPoint, PlanPoint];
/** What is moved: an end, or the whole line by its middle. */
type Part = "A" | "B" | "line";

interface SectionEndsProps {
  line: Line;
  contents: SceneContents;
  view: SceneView;
  onMove: SiteSceneProps["onSectionMove"];
}

/** px of a handle that are seen, its ring and a little air; it is pressed a little beside too. */
const SEEN = 30;

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
  // Labels of works keep clear of the handles, which lie over them.
  useOverLayer(view, RANK.ends, () =>
    layer.current === null ? [] : placeEnds(layer.current, line, contents, view),
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
          onKeyDown={(event) => {
            const by = arrowShift(event, contents);
            if (by !== null) onMove(moved(line, part, by, 0));
          }}
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
  contents: SceneContents,
  view: SceneView,
): readonly ScreenBox[] {
  const middle: PlanPoint = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const places: Readonly<Record<Part, PlanPoint>> = { A: from, line: middle, B: to };
  return [...layer.querySelectorAll<HTMLElement>(".scene-section-end")].flatMap((button) => {
    const on = standOn(button, places[button.dataset["part"] as Part], contents, view);
    if (on === null) return [];
    return [{ left: on.left - SEEN / 2, top: on.top - SEEN / 2, width: SEEN, height: SEEN }];
  });
}
