import {
  useMemo,
  useRef,
  useSyncExternalStore,
  type KeyboardEvent,
  type ReactElement,
} from "react";
import type { PlanPoint } from "../site/index.js";
import { CornerBar } from "./CornerBar.js";
import { snapStep } from "./figures.js";
import { handleSpots, placeHandles, type HandleSpot } from "./handleSpots.js";
import type { HeldDrag } from "./heldDrag.js";
import { ARROWS } from "./keys.js";
import { RANK, useOverLayer } from "./overLayers.js";
import type { Selection, SiteSceneProps } from "./props.js";
import { pressedGrip, raiseSpots, riseStep } from "./raising.js";
import type { SceneContents } from "./sceneTargets.js";
import type { SceneView } from "./sceneView.js";
import type { StartPress } from "./useScenePointer.js";

interface HandlesProps {
  contents: SceneContents;
  selected: Selection | null;
  view: SceneView;
  held: HeldDrag;
  startPress: StartPress;
  props: Pick<
    SiteSceneProps,
    "onDragBegin" | "onDragMove" | "onDragEnd" | "onRemoveCorner" | "view" | "also"
  >;
}

/**
 * Handles of what is chosen: one at each corner or bend, one in the middle of each side that makes a
 * corner there, or one that turns a tank or bed.
 */
export function Handles({
  contents,
  selected: first,
  view,
  held,
  startPress,
  props,
}: HandlesProps): ReactElement | null {
  // Several move and rise together, but each is turned and shaped by itself.
  const selected = props.also.length > 0 ? null : first;
  const { corner } = useSyncExternalStore(held.subscribe, held.read);
  // In plan a metre up is no way on the screen.
  const raises = props.view === "orbit";
  const spots = useMemo(
    () => [...handleSpots(contents, selected), ...(raises ? raiseSpots(contents, selected) : [])],
    [contents, selected, raises],
  );
  const layer = useRef<HTMLDivElement>(null);
  // Labels of works keep clear of the handles, which lie over them.
  useOverLayer(view, RANK.grips, () =>
    layer.current === null ? [] : placeHandles(layer.current, spots, view),
  );
  if (selected === null || spots.length === 0) return null;
  const isOfThis = corner?.selection.kind === selected.kind && corner.selection.id === selected.id;
  const index = isOfThis ? corner.index : null;
  return (
    <>
      <div className="scene-handles" ref={layer}>
        {spots.map((spot) => (
          <button
            key={spot.key}
            type="button"
            className="scene-handle"
            data-part={spot.grip.part}
            data-chosen={spot.grip.part === "corner" && spot.grip.index === index ? "" : undefined}
            data-testid={`scene-handle-${spot.key}`}
            aria-label={spot.label}
            onPointerDown={(event) => {
              if (event.button !== 0) return;
              startPress(event, selected, pressedGrip(spot, view), spot.place, spot.slide);
            }}
            onClick={(event) => {
              // A pointer's click is told by the press; this is the keyboard's.
              if (event.detail === 0) pressed(selected, spot, held, props);
            }}
            onKeyDown={(event) => nudge(event, selected, spot, contents.site.units, props)}
          >
            {spot.says !== undefined && <span aria-hidden="true">{spot.says}</span>}
          </button>
        ))}
      </div>
      {index !== null && (
        <CornerBar
          {...{ contents, selected, index }}
          onRemove={() => {
            held.choose(null);
            props.onRemoveCorner(selected, index);
          }}
          onClose={() => held.choose(null)}
        />
      )}
    </>
  );
}

/** Enter or Space on a handle: a corner is chosen, a side gets a corner in its middle. */
function pressed(
  selection: Selection,
  { grip, place }: HandleSpot,
  held: HeldDrag,
  props: HandlesProps["props"],
): void {
  if (grip.part === "corner") held.choose({ selection, index: grip.index });
  if (grip.part !== "side") return;
  props.onDragBegin(selection, "side");
  props.onDragMove({ selection, by: [0, 0], onSide: { side: grip.side, at: place } });
  props.onDragEnd(false);
  held.choose({ selection, index: grip.side + 1 });
}

/** Arrow keys on a handle: one step east, west, north or south, or 5° of turn; a whole drag each. */
function nudge(
  event: KeyboardEvent,
  selection: Selection,
  { grip }: HandleSpot,
  units: "us" | "metric",
  props: HandlesProps["props"],
): void {
  const way = ARROWS[event.key];
  if (way === undefined) return;
  event.preventDefault();
  event.stopPropagation();
  if (grip.part === "raise") {
    const rise = way[1] * riseStep(units) * (event.shiftKey ? 10 : 1);
    if (rise === 0) return;
    props.onDragBegin(selection, "raise");
    props.onDragMove({ selection, by: [0, 0], raise: rise });
    props.onDragEnd(false);
    return;
  }
  if (grip.part !== "turn" && grip.part !== "corner") return;
  const step = snapStep(units) * (event.shiftKey ? 10 : 1);
  props.onDragBegin(selection, grip.part);
  if (grip.part === "turn") {
    const turned = grip.bearing + (way[0] - way[1]) * (event.shiftKey ? 15 : 5);
    props.onDragMove({ selection, by: [0, 0], turnTo: ((turned % 360) + 360) % 360 });
  } else {
    const by: PlanPoint = [way[0] * step, way[1] * step];
    props.onDragMove({ selection, by, corner: grip.index });
  }
  props.onDragEnd(false);
}
