import { useEffect, useLayoutEffect, useRef, type RefObject } from "react";
import type { PlanPoint } from "../site/index.js";
import {
  stepDrag,
  type DragCall,
  type DragHold,
  type DragEvent,
  type Grip,
  type ScreenPoint,
} from "./dragging.js";
import { aimAt, holdFor } from "./aim.js";
import { snapStep } from "./figures.js";
import type { HeldDrag } from "./heldDrag.js";
import { apart, groundUnder, pickAt, slideAt, type Picked, type Slide } from "./pickAt.js";
import { riseStep } from "./raising.js";
import { RubberBand, worksWithin } from "./rubberBand.js";
import type { Selection, SiteSceneProps } from "./props.js";
import type { SceneContents } from "./sceneTargets.js";
import { LongPress } from "./longPress.js";
import type { SceneView } from "./sceneView.js";
import type { Snapped } from "./snap.js";
import { isDrawing, type SectionTool } from "./useSection.js";
import { measureAim } from "./measureAim.js";
import type { MeasureTool } from "./useMeasuring.js";
import type { PlacingTool } from "./usePlacing.js";

/** Begins a press on a handle or label that lies over the scene. */
export type StartPress = (
  event: PointerAt & { isPrimary: boolean },
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
  section: SectionTool;
  /** The tool that measures, or the one that shows water, when it has the taps. */
  measure: Pick<MeasureTool, "isSetting" | "hoverAt" | "tap">;
  /** Turns the view to a thing. */
  onFrame: (selection: Selection) => void;
  /** A place on bare ground that was asked about; null to ask no more. */
  onGround: (at: PlanPoint | null) => void;
  held: HeldDrag;
}

const TURN_STEP = 5;
/** ms within which two presses are one double press. */
const DOUBLE_TIME = 400;

/**
 * All pointing in the scene: picking, dragging with pointer capture, and placing. Orbiting is left
 * to the camera's control, which is stopped while something is dragged.
 */
export function useScenePointer(input: ScenePointerInput): StartPress {
  const latest = useRef(input);
  useLayoutEffect(() => {
    latest.current = input;
  });
  const hand = useRef<SceneHand | null>(null);
  useEffect(() => {
    const root = latest.current.root.current;
    if (root === null) return undefined;
    const made = new SceneHand(latest, root);
    hand.current = made;
    return () => {
      made.dispose();
      hand.current = null;
    };
  }, []);
  return (event, selection, grip, place, slide) =>
    hand.current?.startPress(event, selection, grip, place, slide);
}

type Latest = { current: ScenePointerInput };

/** What of a pointer event a press needs; React's and the browser's own both have it. */
type PointerAt = Partial<Pick<PointerEvent, "shiftKey" | "ctrlKey" | "metaKey">> & {
  pointerId: number;
  clientX: number;
  clientY: number;
  pointerType: string;
};

/** The hand: listens on the scene's root and keeps the state of the one press there can be. */
class SceneHand {
  private slide: Slide | null = null;
  private pointer: number | null = null;
  private tap: { screen: ScreenPoint; reach: number } | null = null;
  /** True when the browser's own click after the touch under way is to be kept from the page. */
  private swallows = false;
  /** What the latest press that was no drag picked, and when. */
  private chosen: { selection: Selection; time: number } | null = null;
  /** The first finger on the scene, wherever it came down. */
  private first: PointerEvent | null = null;
  private handing = false;
  private readonly long = new LongPress();
  /** The rectangle that is drawn with Shift, to pick what lies in it. */
  private band: RubberBand | null = null;
  /** True when the press under way adds to what is picked. */
  private adds = false;
  /** Where the right button went down. */
  private asked: ScreenPoint | null = null;
  /** What holds the thing that is pressed, taken as all stood when it was pressed. */
  private hold: DragHold | null = null;
  private readonly view: SceneView;
  private readonly off: () => void;

  constructor(
    private readonly latest: Latest,
    private readonly root: HTMLDivElement,
  ) {
    this.view = latest.current.view;
    const ends = new AbortController();
    const { signal } = ends;
    root.addEventListener("pointerdown", (e) => this.down(e), { signal, capture: true });
    root.addEventListener("pointermove", (e) => this.move(e), { signal });
    root.addEventListener("pointerup", (e) => this.up(e), { signal });
    root.addEventListener("pointercancel", () => this.lost(), { signal });
    // The canvas loses its capture when the root takes it from it: that is no end of a press.
    root.addEventListener("lostpointercapture", (e) => e.target === root && this.lost(), {
      signal,
    });
    root.addEventListener("touchend", (e) => this.swallow(e), { signal, passive: false });
    root.addEventListener("contextmenu", (e) => this.menu(e), { signal });
    root.addEventListener("dblclick", (e) => this.double(e), { signal });
    this.off = () => ends.abort();
  }

  /** Cancels what is under way and stops listening. */
  dispose(): void {
    if (this.view.drag.phase !== "idle") this.send({ type: "cancel" });
    document.removeEventListener("keydown", this.dragKey, true);
    this.off();
  }

  /** A press that begins on a handle or a label. */
  readonly startPress: StartPress = (event, selection, grip, place, on) => {
    // The second finger of a pinch may come down on a handle: it is not meant to move anything.
    if (!event.isPrimary) return;
    const screen = this.screenOf(event);
    // What is raised goes by the screen: the ground under the grip does not matter.
    const grabbed = grip.part === "raise" ? place : slideAt(this.latest.current, screen, on);
    if (grabbed === null) return;
    this.adds = isAdding(event);
    const { fixed } = this.latest.current.contents;
    if (event.pointerType === "touch" && grip.part === "body" && fixed !== true) {
      this.long.begin(screen, () => this.gathers(selection));
    }
    this.press(event, { selection, grip, place, grabbed, movable: fixed !== true }, on);
  };

  private screenOf(event: { clientX: number; clientY: number }): ScreenPoint {
    const box = this.root.getBoundingClientRect();
    return { left: event.clientX - box.left, top: event.clientY - box.top };
  }

  private send(event: DragEvent): void {
    const { state, calls } = stepDrag(this.view.drag, event);
    this.view.drag = state;
    const { props, held } = this.latest.current;
    for (const call of calls) tell(props, held, call, this.adds);
    this.root.dataset["drag"] = state.phase;
    if (state.phase !== "idle") return;
    this.view.setOrbit(true);
    document.removeEventListener("keydown", this.dragKey, true);
    const { pointer } = this;
    this.pointer = null;
    if (pointer === null || !this.root.hasPointerCapture(pointer)) return;
    this.root.releasePointerCapture(pointer);
  }

  private readonly dragKey = (event: KeyboardEvent): void => {
    if (event.key !== "Escape") return;
    event.preventDefault();
    event.stopPropagation();
    if (this.band !== null) this.endBand({ left: 0, top: 0 }, true);
    this.send({ type: "cancel" });
  };

  private press(event: PointerAt, held: Picked["held"], on: Slide): void {
    this.slide = on;
    const threshold = event.pointerType === "touch" ? 8 : 4;
    if (held.movable) {
      this.view.setOrbit(false);
      this.pointer = event.pointerId;
      this.root.setPointerCapture(event.pointerId);
      document.addEventListener("keydown", this.dragKey, true);
    }
    const press = { ...held, screen: this.screenOf(event), threshold };
    this.hold = held.movable ? holdFor(this.latest.current, press, event.pointerType) : null;
    this.send({ type: "press", press });
  }

  private down(event: PointerEvent): void {
    if (this.handing) return;
    if (event.isPrimary) this.first = event;
    else this.second(event);
    if (!(event.target instanceof HTMLCanvasElement) || !event.isPrimary) return;
    this.latest.current.onGround(null);
    this.asked = event.button === 2 ? this.screenOf(event) : null;
    if (event.button !== 0) return;
    const touch = event.pointerType === "touch";
    const screen = this.screenOf(event);
    this.tap = { screen, reach: touch ? 12 : 7 };
    this.adds = isAdding(event);
    if (!this.isFree()) return;
    if (touch) this.long.begin(screen, () => this.rested(event, screen));
    const picked = pickAt(this.latest.current, screen, touch);
    if (event.shiftKey && picked?.held.movable !== true && this.beginBand(event, picked)) return;
    if (picked === null) return;
    this.tap = null;
    this.press(event, picked.held, picked.slide);
  }

  /** With Shift held, a drag that moves nothing draws a rectangle; on foot it looks round. */
  private beginBand(event: PointerEvent, picked: Picked | null): boolean {
    const { props, contents } = this.latest.current;
    if (props.view === "walk" || contents.fixed === true) return false;
    this.tap = null;
    this.band = new RubberBand(this.root, this.screenOf(event), picked?.held.selection ?? null);
    this.view.setOrbit(false);
    this.pointer = event.pointerId;
    this.root.setPointerCapture(event.pointerId);
    document.addEventListener("keydown", this.dragKey, true);
    return true;
  }

  /** The end of the rectangle: what lies in it is picked too, or what was under a press that stayed. */
  private endBand(screen: ScreenPoint, cancelled: boolean): void {
    const { band } = this;
    this.band = null;
    const box = band?.end(screen) ?? null;
    this.send({ type: "cancel" });
    if (band === null || cancelled) return;
    const { props, contents } = this.latest.current;
    if (box !== null) props.onSelectAll(worksWithin(contents, this.view, box), true);
    else if (band.under !== null) props.onSelect(band.under, true);
  }

  /** A finger has rested on a label: several are picked from now on. */
  private gathers(selection: Selection): void {
    if (this.view.drag.phase !== "pressed") return;
    this.send({ type: "cancel" });
    if ("vibrate" in navigator) navigator.vibrate(12);
    this.latest.current.props.onGather(selection);
  }

  /**
   * A second finger means a pinch: whatever the first one began is off. The camera must know of both,
   * also of one that came down on a label or took hold of a thing.
   */
  private second(event: PointerEvent): void {
    const { first } = this;
    const held = this.pointer !== null;
    this.send({ type: "cancel" });
    this.tap = null;
    this.long.end();
    if (event.pointerType !== "touch" || first === null) return;
    if (this.latest.current.props.view === "walk") return;
    if (held || isOverlay(first)) this.handOver(first);
    if (isOverlay(event)) this.handOver(event);
  }

  /** Tells the camera's control of a finger that it does not know of. */
  private handOver(event: PointerEvent): void {
    const { pointerId, pointerType, clientX, clientY, isPrimary } = event;
    const told = { pointerId, pointerType, clientX, clientY, isPrimary, bubbles: true, button: 0 };
    this.handing = true;
    this.root.querySelector("canvas")?.dispatchEvent(new PointerEvent("pointerdown", told));
    this.handing = false;
  }

  /** A finger has rested: what is under it is picked and can be dragged at once; the ground is read. */
  private rested(event: PointerAt, screen: ScreenPoint): void {
    if (this.view.drag.phase === "dragging") return;
    const input = this.latest.current;
    // Taps gather things then, and each of them is one.
    if (input.props.several) return;
    this.tap = null;
    // Not every browser can, and a person may have it switched off.
    if ("vibrate" in navigator) navigator.vibrate(12);
    const picked = pickAt(input, screen, true);
    if (picked === null) {
      input.onGround(groundUnder(input, screen, 0));
      return;
    }
    input.props.onSelect(picked.held.selection, false);
    const movable = input.props.view !== "walk" && input.contents.fixed !== true;
    this.press(event, { ...picked.held, movable }, picked.slide);
  }

  /** The browser's own menu would come up under the finger that rests, and after the right button. */
  private menu(event: MouseEvent): void {
    if (event.target instanceof HTMLCanvasElement || this.view.drag.phase !== "idle") {
      event.preventDefault();
    }
  }

  private move(event: PointerEvent): void {
    const input = this.latest.current;
    const screen = this.screenOf(event);
    this.long.move(screen);
    if (this.band !== null) {
      this.band.stretch(screen);
      return;
    }
    if (this.view.drag.phase !== "idle" && this.slide !== null) {
      const at = slideAt(input, screen, this.slide);
      const turnStep = event.altKey ? 0 : TURN_STEP;
      const step = stepOf(event, input);
      const hold = step === 0 ? null : this.hold;
      const rise = event.altKey ? 0 : riseStep(input.contents.site.units);
      this.send({ type: "move", at, screen, step, turnStep, riseStep: rise, hold });
    } else if (input.props.placing !== null) {
      const aim = this.aimed(event, screen);
      input.placing.send({ type: "hover", at: aim?.at ?? null, holds: aim?.holds ?? [] });
    } else if (isDrawing(input.props.section)) {
      input.section.hoverAt(groundUnder(input, screen, stepOf(event, input)));
    } else if (input.measure.isSetting) {
      // Over the canvas alone: the pointer on its way to a button measures nothing.
      const onCanvas = event.target instanceof HTMLCanvasElement;
      input.measure.hoverAt(onCanvas ? this.measured(event, screen) : null);
    } else if (event.pointerType === "mouse" && event.buttons === 0) {
      const onCanvas = event.target instanceof HTMLCanvasElement;
      const picked = onCanvas ? pickAt(input, screen, false) : null;
      this.root.dataset["over"] =
        picked === null ? "ground" : picked.held.movable ? "movable" : "thing";
    }
  }

  private up(event: PointerEvent): void {
    if (!event.isPrimary) return;
    const screen = this.screenOf(event);
    const { tap, asked } = this;
    this.tap = null;
    this.asked = null;
    this.long.end();
    if (this.band !== null) this.endBand(screen, false);
    // A right click that was no drag of the view asks about the ground, as a resting finger does.
    if (asked !== null && apart(asked, screen) <= 4 && this.isFree()) {
      this.latest.current.onGround(groundUnder(this.latest.current, screen, 0));
    }
    if (this.view.drag.phase !== "idle") this.release(event.timeStamp);
    else if (tap !== null && apart(tap.screen, screen) <= tap.reach) this.tapped(event, screen);
  }

  /** The end of a press; of a second one upon the same thing within a moment, the view turns to it. */
  private release(time: number): void {
    const { drag } = this.view;
    const isWhole = drag.phase === "pressed" && drag.press.grip.part === "body";
    const selection = isWhole ? drag.press.selection : null;
    const { chosen } = this;
    this.chosen = selection && { selection, time };
    this.send({ type: "release" });
    if (this.adds || selection === null || chosen === null) return;
    if (time - chosen.time > DOUBLE_TIME) return;
    const { kind, id } = chosen.selection;
    if (selection.kind !== kind || selection.id !== id) return;
    this.chosen = null;
    this.latest.current.onFrame(selection);
  }

  /** True when no tool has the taps. */
  private isFree(): boolean {
    const { props, measure } = this.latest.current;
    return props.placing === null && !isDrawing(props.section) && !measure.isSetting;
  }

  /** The place that is measured; null off the ground. */
  private measured(event: PointerEvent, screen: ScreenPoint): PlanPoint | null {
    const input = this.latest.current;
    const free = event.altKey || !input.props.snapping;
    return measureAim(input, screen, { free, pointerType: event.pointerType });
  }

  /** Where the next corner of what is placed goes, held by what is near; null off the ground. */
  private aimed(event: PointerEvent, screen: ScreenPoint): Snapped | null {
    const input = this.latest.current;
    if (input.props.placing === null) return null;
    const { pointerType } = event;
    const pointer = { free: event.altKey || !input.props.snapping, pointerType };
    return aimAt(input, input.props.placing, input.placing.now(), screen, pointer);
  }

  private tapped(event: PointerEvent, screen: ScreenPoint): void {
    const input = this.latest.current;
    if (isDrawing(input.props.section)) {
      this.swallows = event.pointerType === "touch";
      input.section.tap(groundUnder(input, screen, stepOf(event, input)));
      return;
    }
    if (input.measure.isSetting) {
      input.measure.tap(this.measured(event, screen));
      return;
    }
    if (input.props.placing === null) {
      input.props.onSelect(null, this.adds);
      return;
    }
    const at = this.aimed(event, screen)?.at ?? null;
    input.placing.send({ type: "tap", at, screen, time: event.timeStamp });
  }

  /**
   * A tap that ends a section's line brings up its panel under the finger: the click that the browser
   * makes of the touch afterwards must not press what has come to lie there.
   */
  private swallow(event: TouchEvent): void {
    if (this.swallows && event.cancelable) event.preventDefault();
    this.swallows = false;
  }

  private lost(): void {
    if (this.band !== null) this.endBand({ left: 0, top: 0 }, true);
    this.tap = null;
    this.long.end();
    if (this.view.drag.phase !== "idle") this.send({ type: "cancel" });
  }

  private double(event: MouseEvent): void {
    const { props, placing } = this.latest.current;
    if (!(event.target instanceof HTMLCanvasElement) || props.placing === null) return;
    placing.send({ type: "double" });
  }
}

/** True for a press on a label or handle, which lie over the canvas. */
function isOverlay({ target }: PointerEvent): boolean {
  const over = ".scene-tag, .scene-handle, .scene-section-end";
  return target instanceof Element && target.closest(over) !== null;
}

/** Whether a press adds to what is picked, or takes away. */
const isAdding = (
  event: Partial<Pick<PointerEvent, "shiftKey" | "ctrlKey" | "metaKey">>,
): boolean => event.shiftKey === true || event.ctrlKey === true || event.metaKey === true;

function tell(props: SiteSceneProps, held: HeldDrag, call: DragCall, adds: boolean): void {
  switch (call.call) {
    case "begin":
      props.onDragBegin(call.selection, call.part);
      break;
    case "move":
      held.move(props, call);
      props.onDragMove(call.move);
      break;
    case "end":
      held.end();
      props.onDragEnd(call.cancelled);
      break;
    case "select":
      held.choose(null);
      props.onSelect(call.selection, adds);
      break;
    case "corner":
      held.choose({ selection: call.selection, index: call.index });
      break;
  }
}

/** m that places snap to; 0 while Alt is held. */
function stepOf(event: { altKey: boolean }, input: ScenePointerInput): number {
  return event.altKey || !input.props.snapping ? 0 : snapStep(input.contents.site.units);
}
