import { useEffect, useLayoutEffect, useRef, type PointerEvent, type ReactElement } from "react";
import type { PlanPoint } from "../site/index.js";
import { words } from "../words/index.js";
import { snap } from "./dragging.js";
import { snapStep } from "./figures.js";
import { arrowShift, placeUnder, standOn } from "./groundHandles.js";
import type { CranePlace, SiteSceneProps } from "./props.js";
import type { SceneContents } from "./sceneTargets.js";
import type { SceneView } from "./sceneView.js";

/** A stand while it is dragged: where it would be put. */
export interface StandDraft {
  id: string;
  at: PlanPoint;
}

interface StandHandlesProps {
  places: readonly CranePlace[];
  contents: SceneContents;
  view: SceneView;
  /** Told at each step of a drag, and with null at its end. */
  onDraft: (draft: StandDraft | null) => void;
  onMove: SiteSceneProps["onStandMove"];
}

interface Held {
  pointer: number;
  from: PlanPoint;
  grabbed: PlanPoint;
  to: StandDraft | null;
}

/** A handle on each place where the crane might stand; what it is dragged to counts when let go. */
export function StandHandles(props: StandHandlesProps): ReactElement {
  const { places, contents, view, onDraft, onMove } = props;
  const layer = useRef<HTMLDivElement>(null);
  const held = useRef<Held | null>(null);
  useLayoutEffect(() => placeHandles(layer.current, places, contents, view));
  useEffect(
    () => view.subscribe(() => placeHandles(layer.current, places, contents, view)),
    [places, contents, view],
  );
  const end = (cancelled: boolean): void => {
    const to = held.current?.to ?? null;
    held.current = null;
    view.setOrbit(true);
    onDraft(null);
    if (!cancelled && to !== null) onMove(to.id, to.at);
  };
  const press = (event: PointerEvent<HTMLButtonElement>, { at }: CranePlace): void => {
    const grabbed = placeUnder(event, layer.current, contents, view);
    if (event.button !== 0 || grabbed === null) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    view.setOrbit(false);
    held.current = { pointer: event.pointerId, from: at, grabbed, to: null };
  };
  const drag = (event: PointerEvent<HTMLButtonElement>, { id }: CranePlace): void => {
    const now = held.current;
    if (now === null || now.pointer !== event.pointerId) return;
    const under = placeUnder(event, layer.current, contents, view);
    if (under === null) return;
    const step = event.altKey ? 0 : snapStep(contents.site.units);
    const part = (axis: 0 | 1): number =>
      snap(now.from[axis] + under[axis] - now.grabbed[axis], step);
    now.to = { id, at: [part(0), part(1)] };
    onDraft(now.to);
  };
  return (
    <div className="scene-handles" ref={layer}>
      {places.map((place) => (
        <button
          key={place.id}
          type="button"
          className="scene-section-end"
          data-part="line"
          data-testid={`stand-${place.id}`}
          aria-label={words.shading.moveStand(place.name)}
          title={words.shading.moveStand(place.name)}
          onPointerDown={(event) => press(event, place)}
          onPointerMove={(event) => drag(event, place)}
          onPointerUp={() => end(false)}
          onPointerCancel={() => end(true)}
          onKeyDown={(event) => {
            if (event.key === "Escape" && held.current !== null) {
              event.stopPropagation();
              end(true);
              return;
            }
            const by = arrowShift(event, contents);
            if (by !== null) onMove(place.id, [place.at[0] + by[0], place.at[1] + by[1]]);
          }}
        >
          <i />
        </button>
      ))}
    </div>
  );
}

function placeHandles(
  layer: HTMLElement | null,
  places: readonly CranePlace[],
  contents: SceneContents,
  view: SceneView,
): void {
  const buttons = layer?.querySelectorAll<HTMLElement>("button");
  places.forEach(({ at }, i) => {
    const button = buttons?.[i];
    if (button !== undefined) standOn(button, at, contents, view);
  });
}

/** The places with the dragged one where it is dragged to, its rings out to the tanks again. */
export function withDraft(
  places: readonly CranePlace[],
  draft: StandDraft | null,
  { works }: Pick<SceneContents, "works">,
): readonly CranePlace[] {
  if (draft === null) return places;
  const tanks = works.filter((work) => work.kind === "tank").map(({ at }) => at);
  return places.map((place) => {
    if (place.id !== draft.id) return place;
    const [x, y] = draft.at;
    return { ...place, at: draft.at, radii: tanks.map((at) => Math.hypot(at[0] - x, at[1] - y)) };
  });
}
