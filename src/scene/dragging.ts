import type { PlanPoint } from "../site/index.js";
import type { DragMove, Selection } from "./props.js";

/** What part of the thing the pointer has hold of. */
export type Grip =
  | { part: "body" }
  | { part: "corner"; index: number }
  /** Turning about `centre`; `bearing` is what it was when pressed. */
  | { part: "turn"; centre: PlanPoint; bearing: number };

/** A place on the screen, CSS px. */
export interface ScreenPoint {
  left: number;
  top: number;
}

/** One press, from pointer down to up. All of a drag is computed from this snapshot. */
export interface Press {
  selection: Selection;
  grip: Grip;
  /** Site place under the pointer when pressed, m. */
  grabbed: PlanPoint;
  /** Site place of the thing (or corner) itself when pressed: what is snapped. */
  place: PlanPoint;
  screen: ScreenPoint;
  /** True when the thing may be dragged; false when a press can only select it. */
  movable: boolean;
  /** px that the pointer must go before a press becomes a drag. */
  threshold: number;
}

export type DragState =
  { phase: "idle" } | { phase: "pressed"; press: Press } | { phase: "dragging"; press: Press };

export type DragEvent =
  | { type: "press"; press: Press }
  /** `at` is the site place under the pointer, null off the ground; `step` 0 means unsnapped. */
  | { type: "move"; at: PlanPoint | null; screen: ScreenPoint; step: number; turnStep: number }
  | { type: "release" }
  | { type: "cancel" };

/** What the scene must tell its owner after an event, in order. */
export type DragCall =
  | { call: "begin"; selection: Selection }
  | { call: "move"; move: DragMove }
  | { call: "end"; cancelled: boolean }
  | { call: "select"; selection: Selection };

export const IDLE: DragState = { phase: "idle" };

/** The next state and the calls to make. Pure: enter, mark, move from the snapshot, end or cancel. */
export function stepDrag(
  state: DragState,
  event: DragEvent,
): { state: DragState; calls: readonly DragCall[] } {
  switch (event.type) {
    case "press":
      // A second finger or a lost release must not leave an open undo mark behind.
      return {
        state: { phase: "pressed", press: event.press },
        calls: state.phase === "dragging" ? [{ call: "end", cancelled: true }] : [],
      };
    case "move":
      return stepMove(state, event);
    case "release":
      if (state.phase === "dragging") return ended(false);
      if (state.phase === "pressed") {
        const selection = state.press.selection;
        return { state: IDLE, calls: [{ call: "select", selection }] };
      }
      return { state, calls: [] };
    case "cancel":
      return state.phase === "dragging" ? ended(true) : { state: IDLE, calls: [] };
  }
}

function ended(cancelled: boolean): { state: DragState; calls: readonly DragCall[] } {
  return { state: IDLE, calls: [{ call: "end", cancelled }] };
}

function stepMove(
  state: DragState,
  event: Extract<DragEvent, { type: "move" }>,
): { state: DragState; calls: readonly DragCall[] } {
  if (state.phase === "idle") return { state, calls: [] };
  const { press } = state;
  if (state.phase === "pressed") {
    const gone = Math.hypot(
      event.screen.left - press.screen.left,
      event.screen.top - press.screen.top,
    );
    if (gone < press.threshold) return { state, calls: [] };
    // What cannot be dragged leaves the pointer to the orbit, and is not selected at the end of it.
    if (!press.movable) return { state: IDLE, calls: [] };
  }
  const calls: DragCall[] = [];
  if (state.phase === "pressed") calls.push({ call: "begin", selection: press.selection });
  if (event.at !== null) {
    calls.push({ call: "move", move: dragMove(press, event.at, event.step, event.turnStep) });
  }
  return { state: { phase: "dragging", press }, calls };
}

/** Where the pressed thing goes when the pointer is over `at`, from the snapshot alone. */
export function dragMove(press: Press, at: PlanPoint, step: number, turnStep: number): DragMove {
  const { selection, grip } = press;
  if (grip.part === "turn") {
    const turned =
      grip.bearing + bearingOf(grip.centre, at) - bearingOf(grip.centre, press.grabbed);
    return { selection, by: [0, 0], turnTo: wholeTurn(snap(turned, turnStep)) };
  }
  const by: PlanPoint = [
    snap(press.place[0] + at[0] - press.grabbed[0], step) - press.place[0],
    snap(press.place[1] + at[1] - press.grabbed[1], step) - press.place[1],
  ];
  return grip.part === "corner" ? { selection, by, corner: grip.index } : { selection, by };
}

/** The nearest whole multiple of `step`; the number itself when `step` is 0. */
export function snap(metres: number, step: number): number {
  return step > 0 ? Math.round(metres / step) * step : metres;
}

/** Bearing from one place to another, degrees clockwise from north, 0 ≤ b < 360. */
export function bearingOf(from: PlanPoint, to: PlanPoint): number {
  return wholeTurn((Math.atan2(to[0] - from[0], to[1] - from[1]) * 180) / Math.PI);
}

function wholeTurn(degrees: number): number {
  return ((degrees % 360) + 360) % 360;
}
