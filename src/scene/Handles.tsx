import {
  useEffect,
  useLayoutEffect,
  useMemo,
  useRef,
  type KeyboardEvent,
  type ReactElement,
} from "react";
import type { PlanPoint, Work } from "../site/index.js";
import type { Grip, ScreenPoint } from "./dragging.js";
import { snapStep } from "./figures.js";
import { toScene, type ScenePoint } from "./frame.js";
import type { Selection, SiteSceneProps } from "./props.js";
import { isSet } from "./works/WorkModels.js";
import { workAnchor, type SceneContents } from "./sceneTargets.js";
import { projectPoint, type SceneView } from "./sceneView.js";
import { slideFor, type Slide } from "./pickAt.js";
import type { StartPress } from "./useScenePointer.js";
import { workCorners } from "./workShapes.js";

interface HandlesProps {
  contents: SceneContents;
  selected: Selection | null;
  view: SceneView;
  startPress: StartPress;
  props: Pick<SiteSceneProps, "onDragBegin" | "onDragMove" | "onDragEnd">;
}

interface HandleSpot {
  key: string;
  label: string;
  grip: Grip;
  place: PlanPoint;
  at: ScenePoint;
  slide: Slide;
  /** Middle of the thing that the handle must stand clear of on a small screen; null for a corner. */
  about: ScenePoint | null;
}

/** px. */
const NEAREST = 52;

/** Handles of the chosen work: one at each corner or bend, or one that turns a tank or bed. */
export function Handles({
  contents,
  selected,
  view,
  startPress,
  props,
}: HandlesProps): ReactElement | null {
  const work = contents.works.find((w) => selected?.kind === "work" && w.id === selected.id);
  const spots = useMemo(
    () => (work === undefined ? [] : handleSpots(work, contents)),
    [work, contents],
  );
  const layer = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (layer.current !== null) placeHandles(layer.current, spots, view);
  });
  useEffect(
    () =>
      view.subscribe(() => {
        if (layer.current !== null) placeHandles(layer.current, spots, view);
      }),
    [spots, view],
  );
  if (work === undefined) return null;
  const selection: Selection = { kind: "work", id: work.id };
  return (
    <div className="scene-handles" ref={layer}>
      {spots.map((spot) => (
        <button
          key={spot.key}
          type="button"
          className="scene-handle"
          data-part={spot.grip.part}
          data-testid={`scene-handle-${spot.key}`}
          aria-label={spot.label}
          onPointerDown={(event) => {
            if (event.button !== 0) return;
            startPress(event, selection, spot.grip, spot.place, spot.slide);
          }}
          onKeyDown={(event) => nudge(event, selection, spot, contents.site.units, props)}
        />
      ))}
    </div>
  );
}

function handleSpots(work: Work, contents: SceneContents): HandleSpot[] {
  const { frame, ground, found, stage } = contents;
  const surface = stage === "found" ? found : ground;
  const lifted = (at: PlanPoint, z: number | null): ScenePoint => {
    const [x, y] = toScene(frame, at);
    return [x, y, z ?? surface.heightAt(x, y)?.z ?? frame.centre[2]];
  };
  const corners = workCorners(work);
  if (corners !== null) {
    const mark = work.kind === "trench" ? "bend" : "corner";
    const base = work.kind === "building" ? work.base - frame.origin[2] : null;
    const slide = base === null ? { ground: found } : { level: base };
    return corners.map((place, index) => ({
      key: `corner-${index}`,
      label: `Move ${mark} ${index + 1} of ${work.name}`,
      grip: { part: "corner", index },
      place,
      at: lifted(place, base),
      slide,
      about: null,
    }));
  }
  if (work.kind !== "tank" && work.kind !== "bed") return [];
  const turn = (work.bearing * Math.PI) / 180;
  const out = (work.kind === "tank" ? work.body.length / 2 + work.overdig : work.length / 2) + 1.2;
  const place: PlanPoint = [work.at[0] + Math.sin(turn) * out, work.at[1] + Math.cos(turn) * out];
  const level =
    work.kind === "bed" && isSet(stage) ? work.base + work.height - frame.origin[2] : null;
  return [
    {
      key: "turn",
      label: `Turn ${work.name}, bearing ${Math.round(work.bearing)} degrees`,
      grip: { part: "turn", centre: work.at, bearing: work.bearing },
      place,
      at: lifted(place, level),
      about: workAnchor(work, contents),
      slide: level === null ? slideFor(contents, { kind: "work", id: work.id }) : { level },
    },
  ];
}

function placeHandles(layer: HTMLElement, spots: readonly HandleSpot[], view: SceneView): void {
  const buttons = [...layer.querySelectorAll<HTMLElement>(".scene-handle")];
  spots.forEach((spot, i) => {
    const at = projectPoint(view, spot.at);
    const button = buttons[i];
    if (button === undefined) return;
    button.hidden = at === null;
    if (at === null) return;
    const clear = spot.about === null ? at : clearOf(at, projectPoint(view, spot.about));
    button.style.transform = `translate(${Math.round(clear.left)}px, ${Math.round(clear.top)}px)`;
  });
}

/** The place pushed out to at least `NEAREST` px from the middle, so that a finger can tell them apart. */
function clearOf(at: ScreenPoint, middle: ScreenPoint | null): ScreenPoint {
  if (middle === null) return at;
  const [dx, dy] = [at.left - middle.left, at.top - middle.top];
  const far = Math.hypot(dx, dy);
  if (far >= NEAREST || far < 0.5) return at;
  return { left: middle.left + (dx / far) * NEAREST, top: middle.top + (dy / far) * NEAREST };
}

const ARROWS: Readonly<Record<string, PlanPoint>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Arrow keys on a handle: one step east, west, north or south, or 5° of turn; a whole drag each. */
function nudge(
  event: KeyboardEvent,
  selection: Selection,
  spot: HandleSpot,
  units: "us" | "metric",
  props: HandlesProps["props"],
): void {
  const way = ARROWS[event.key];
  if (way === undefined) return;
  event.preventDefault();
  event.stopPropagation();
  const step = snapStep(units) * (event.shiftKey ? 10 : 1);
  props.onDragBegin(selection);
  if (spot.grip.part === "turn") {
    const turned = spot.grip.bearing + (way[0] - way[1]) * (event.shiftKey ? 15 : 5);
    props.onDragMove({ selection, by: [0, 0], turnTo: ((turned % 360) + 360) % 360 });
  } else if (spot.grip.part === "corner") {
    const by: PlanPoint = [way[0] * step, way[1] * step];
    props.onDragMove({ selection, by, corner: spot.grip.index });
  }
  props.onDragEnd(false);
}
