import { useEffect, useLayoutEffect, useRef, type RefObject } from "react";
import type { PlanPoint } from "../site/index.js";
import { IDLE, stepDrag, type DragEvent, type Grip, type ScreenPoint } from "./dragging.js";
import { snapStep } from "./figures.js";
import { toSite } from "./frame.js";
import { rayMeetsLevel, workUnder } from "./picking.js";
import { leastCorners } from "./placing.js";
import type { Selection, SiteSceneProps } from "./props.js";
import { pickTargets, pinUnder, type SceneContents } from "./sceneTargets.js";
import { metresPerPixel, rayAt, type SceneView } from "./sceneView.js";
import type { StageGround } from "./stageGround.js";
import type { PlacingTool } from "./usePlacing.js";
import { workPlace } from "./workShapes.js";

/** What the pointer slides on during a drag: a level for a solid body, the ground for the rest. */
export type Slide = { level: number } | { ground: StageGround };

/** Begins a press on a handle or label that lies over the scene. */
export type StartPress = (
  event: { pointerId: number; clientX: number; clientY: number; pointerType: string },
  selection: Selection,
  grip: Grip,
  place: PlanPoint,
  slide: Slide,
) => void;

interface ScenePointerInput {
  root: RefObject<HTMLDivElement | null>;
  view: SceneView;
  contents: SceneContents;
  props: SiteSceneProps;
  placing: PlacingTool;
}

const TURN_STEP = 5;

/**
 * All pointing in the scene: picking, dragging with pointer capture, and placing. Orbiting is left
 * to the camera's control, which is stopped while something is dragged.
 */
export function useScenePointer(input: ScenePointerInput): StartPress {
  const latest = useRef(input);
  useLayoutEffect(() => {
    latest.current = input;
  });
  const hand = useRef<Hand | null>(null);
  useEffect(() => {
    const root = latest.current.root.current;
    if (root === null) return undefined;
    const made = makeHand(latest, root);
    hand.current = made;
    return () => {
      made.dispose();
      hand.current = null;
    };
  }, []);
  return (event, selection, grip, place, slide) =>
    hand.current?.startPress(event, selection, grip, place, slide);
}

interface Hand {
  startPress: StartPress;
  dispose(): void;
}

type Latest = { current: ScenePointerInput };

/** The hand: listens on the scene's root and keeps the state of the one press there can be. */
function makeHand(latest: Latest, root: HTMLDivElement): Hand {
  const { view } = latest.current;
  let slide: Slide | null = null;
  let pointer: number | null = null;
  let tap: { screen: ScreenPoint; reach: number } | null = null;

  const screenOf = (event: { clientX: number; clientY: number }): ScreenPoint => {
    const box = root.getBoundingClientRect();
    return { left: event.clientX - box.left, top: event.clientY - box.top };
  };
  const send = (event: DragEvent): void => {
    const { state, calls } = stepDrag(view.drag, event);
    view.drag = state;
    const { props } = latest.current;
    for (const call of calls) {
      if (call.call === "begin") props.onDragBegin(call.selection);
      else if (call.call === "move") props.onDragMove(call.move);
      else if (call.call === "end") props.onDragEnd(call.cancelled);
      else props.onSelect(call.selection);
    }
    root.dataset["drag"] = state.phase;
    if (state.phase !== "idle") return;
    view.setOrbit(true);
    document.removeEventListener("keydown", onDragKey, true);
    if (pointer !== null && root.hasPointerCapture(pointer)) root.releasePointerCapture(pointer);
    pointer = null;
  };
  const onDragKey = (event: KeyboardEvent): void => {
    if (event.key !== "Escape") return;
    event.preventDefault();
    event.stopPropagation();
    send({ type: "cancel" });
  };
  const press = (
    event: { pointerId: number; clientX: number; clientY: number; pointerType: string },
    held: {
      selection: Selection;
      grip: Grip;
      place: PlanPoint;
      grabbed: PlanPoint;
      movable: boolean;
    },
    on: Slide,
  ): void => {
    slide = on;
    const threshold = event.pointerType === "touch" ? 8 : 4;
    if (held.movable) {
      view.setOrbit(false);
      pointer = event.pointerId;
      root.setPointerCapture(event.pointerId);
      document.addEventListener("keydown", onDragKey, true);
    }
    send({ type: "press", press: { ...held, screen: screenOf(event), threshold } });
  };
  const startPress: StartPress = (event, selection, grip, place, on) => {
    const grabbed = slideAt(latest.current, screenOf(event), on);
    if (grabbed !== null) press(event, { selection, grip, place, grabbed, movable: true }, on);
  };

  const onDown = (event: PointerEvent): void => {
    if (!(event.target instanceof HTMLCanvasElement)) return;
    if (!event.isPrimary) {
      send({ type: "cancel" });
      tap = null;
      return;
    }
    if (event.button !== 0) return;
    const screen = screenOf(event);
    tap = { screen, reach: event.pointerType === "touch" ? 10 : 5 };
    if (latest.current.props.placing !== null) return;
    const picked = pickAt(latest.current, screen, event.pointerType === "touch");
    if (picked === null) return;
    tap = null;
    press(event, picked.held, picked.slide);
  };
  const onMove = (event: PointerEvent): void => {
    const screen = screenOf(event);
    const { props, contents, placing } = latest.current;
    const step = event.altKey ? 0 : snapStep(contents.site.units);
    if (view.drag.phase !== "idle" && slide !== null) {
      const at = slideAt(latest.current, screen, slide);
      send({ type: "move", at, screen, step, turnStep: event.altKey ? 0 : TURN_STEP });
    } else if (props.placing !== null) {
      placing.hoverAt(groundUnder(latest.current, screen, step));
    } else if (event.pointerType === "mouse" && event.buttons === 0) {
      const over =
        event.target instanceof HTMLCanvasElement && pickAt(latest.current, screen, false) !== null;
      root.dataset["over"] = over ? "thing" : "ground";
    }
  };
  const onUp = (event: PointerEvent): void => {
    if (!event.isPrimary) return;
    const screen = screenOf(event);
    const { props, contents, placing } = latest.current;
    if (view.drag.phase !== "idle") send({ type: "release" });
    else if (tap !== null && apart(tap.screen, screen) <= tap.reach) {
      if (props.placing === null) props.onSelect(null);
      else {
        const step = event.altKey ? 0 : snapStep(contents.site.units);
        const at = groundUnder(latest.current, screen, step);
        placing.hoverAt(at);
        if (at !== null) placing.send({ type: "click", at });
      }
    }
    tap = null;
  };
  const onLost = (): void => {
    tap = null;
    if (view.drag.phase !== "idle") send({ type: "cancel" });
  };
  const onDouble = (event: MouseEvent): void => {
    const { props, placing } = latest.current;
    if (!(event.target instanceof HTMLCanvasElement) || props.placing === null) return;
    if (leastCorners(props.placing.kind) > 1) placing.send({ type: "finish" });
  };

  root.addEventListener("pointerdown", onDown, true);
  root.addEventListener("pointermove", onMove);
  root.addEventListener("pointerup", onUp);
  root.addEventListener("pointercancel", onLost);
  root.addEventListener("lostpointercapture", onLost);
  root.addEventListener("dblclick", onDouble);
  return {
    startPress,
    dispose() {
      if (view.drag.phase !== "idle") send({ type: "cancel" });
      view.drag = IDLE;
      document.removeEventListener("keydown", onDragKey, true);
      root.removeEventListener("pointerdown", onDown, true);
      root.removeEventListener("pointermove", onMove);
      root.removeEventListener("pointerup", onUp);
      root.removeEventListener("pointercancel", onLost);
      root.removeEventListener("lostpointercapture", onLost);
      root.removeEventListener("dblclick", onDouble);
    },
  };
}

function apart(a: ScreenPoint, b: ScreenPoint): number {
  return Math.hypot(a.left - b.left, a.top - b.top);
}

/** Site place under the pointer on what it slides on; null when it misses or is far off the lot. */
function slideAt(input: ScenePointerInput, screen: ScreenPoint, slide: Slide): PlanPoint | null {
  const ray = rayAt(input.view, screen);
  if (ray === null) return null;
  const { frame } = input.contents;
  const hit = "level" in slide ? rayMeetsLevel(ray, slide.level) : slide.ground.strike(ray);
  if (hit === null) return null;
  const off = Math.hypot(hit[0] - frame.centre[0], hit[1] - frame.centre[1]);
  // Near the horizon a level is struck a long way off: nothing is meant to go there.
  return off > frame.reach * 3 ? null : toSite(frame, [hit[0], hit[1]]);
}

/** Snapped site place on the ground as it stands; null off the ground. */
function groundUnder(
  input: ScenePointerInput,
  screen: ScreenPoint,
  step: number,
): PlanPoint | null {
  const ray = rayAt(input.view, screen);
  const hit = ray === null ? null : input.contents.ground.strike(ray);
  if (hit === null) return null;
  const [x, y] = toSite(input.contents.frame, [hit[0], hit[1]]);
  if (step === 0) return [x, y];
  return [Math.round(x / step) * step, Math.round(y / step) * step];
}

interface Picked {
  held: {
    selection: Selection;
    grip: Grip;
    place: PlanPoint;
    grabbed: PlanPoint;
    movable: boolean;
  };
  slide: Slide;
}

/** What lies under the pointer, and how it would be dragged. */
function pickAt(input: ScenePointerInput, screen: ScreenPoint, touch: boolean): Picked | null {
  const { contents, props, view } = input;
  const shown = { probes: props.showProbes, points: props.showPoints };
  const pin = pinUnder(view, contents, shown, screen, touch ? 22 : 11);
  const selection = pin ?? workPicked(input, screen);
  if (selection === null) return null;
  const chosen = props.selected?.kind === selection.kind && props.selected.id === selection.id;
  const work = contents.works.find((w) => selection.kind === "work" && w.id === selection.id);
  const place = placeOf(contents, selection);
  if (place === null) return null;
  const broad = work?.kind === "pad" || work?.kind === "trench";
  const slide = slideFor(contents, selection);
  const grabbed = slideAt(input, screen, slide);
  if (grabbed === null) return null;
  // A finger turns the view unless what it is on was chosen first; so does a mouse on broad ground.
  const movable = chosen || (!touch && !broad && selection.kind !== "point");
  return { held: { selection, grip: { part: "body" }, place, grabbed, movable }, slide };
}

function workPicked(input: ScenePointerInput, screen: ScreenPoint): Selection | null {
  const ray = rayAt(input.view, screen);
  if (ray === null) return null;
  const slack = 9 * metresPerPixel(input.view, input.view.target);
  const ground = input.contents.ground.strike(ray);
  const id = workUnder(ray, pickTargets(input.contents), ground, slack);
  return id === null ? null : { kind: "work", id };
}

/** The site place of a thing that is snapped when it is dragged; null when it is not there. */
export function placeOf(contents: SceneContents, selection: Selection): PlanPoint | null {
  const { site, works } = contents;
  if (selection.kind === "work") {
    const work = works.find((w) => w.id === selection.id);
    return work === undefined ? null : workPlace(work);
  }
  const pins = selection.kind === "probe" ? site.ground.probes : site.survey.points;
  const pin = pins.find((p) => p.id === selection.id);
  return pin === undefined ? null : [pin.x, pin.y];
}

/** A body that keeps its own elevation slides at it; all else follows the ground as found. */
export function slideFor(contents: SceneContents, selection: Selection): Slide {
  const work = contents.works.find((w) => selection.kind === "work" && w.id === selection.id);
  if (work?.kind === "building" || work?.kind === "bed") {
    return { level: work.base + work.height / 2 - contents.frame.origin[2] };
  }
  return { ground: contents.found };
}
