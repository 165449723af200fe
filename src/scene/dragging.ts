import type { PlanPoint } from "../site/index.js";
import type { DragMove, Selection } from "./props.js";
import type { SnappedMove } from "./snap.js";

/** What part of the thing the pointer has hold of. */
export type Grip =
  | { part: "body" }
  | { part: "corner"; index: number }
  /** A side, from corner `side` to the next: a new corner is dragged out of it. */
  | { part: "side"; side: number }
  /** Raising: `height` is the elevation (m) when pressed, `perMetre` the px that a metre up takes. */
  | { part: "raise"; height: number; perMetre: number }
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

/** Brings the offset that the pointer asks for (m) to the one that is meant, and says what holds it. */
export type DragHold = (by: PlanPoint) => SnappedMove;

export type DragState =
  { phase: "idle" } | { phase: "pressed"; press: Press } | { phase: "dragging"; press: Press };

export type DragEvent =
  | { type: "press"; press: Press }
  /**
   * `at` is the site place under the pointer, null off the ground; `step` 0 means unsnapped. With a
   * `hold` it says where the thing goes, and `step` is not looked at.
   */
  | {
      type: "move";
      at: PlanPoint | null;
      screen: ScreenPoint;
      step: number;
      turnStep: number;
      /** m that an elevation snaps to; absent or 0: none. */
      riseStep?: number;
      hold?: DragHold | null;
    }
  | { type: "release" }
  | { type: "cancel" };

/** What the scene must tell its owner after an event, in order. */
export type DragCall =
  | { call: "begin"; selection: Selection; part: Grip["part"] }
  /** `held` is null when nothing is looked for to hold it. */
  | { call: "move"; move: DragMove; held: SnappedMove | null }
  | { call: "end"; cancelled: boolean }
  | { call: "select"; selection: Selection }
  /** A corner is chosen: it was tapped, dragged or made. */
  | { call: "corner"; selection: Selection; index: number };

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
      if (state.phase === "idle") return { state, calls: [] };
      return {
        state: IDLE,
        calls: state.phase === "dragging" ? letGo(state.press) : tapped(state.press),
      };
    case "cancel": {
      const calls: DragCall[] = [{ call: "end", cancelled: true }];
      return { state: IDLE, calls: state.phase === "dragging" ? calls : [] };
    }
  }
}

/** The end of a drag; the corner that was dragged or made is chosen then. */
function letGo(press: Press): DragCall[] {
  return [{ call: "end", cancelled: false }, ...chosenCorner(press)];
}

/** A press that went nowhere: it chooses what it was on, and on a side makes a corner there. */
function tapped(press: Press): DragCall[] {
  const { selection, grip, place } = press;
  if (grip.part === "corner") return chosenCorner(press);
  if (grip.part !== "side") return [{ call: "select", selection }];
  const move: DragMove = { selection, by: [0, 0], onSide: { side: grip.side, at: place } };
  return [
    { call: "begin", selection, part: "side" },
    { call: "move", move, held: null },
    ...letGo(press),
  ];
}

function chosenCorner({ selection, grip }: Press): DragCall[] {
  if (grip.part === "corner") return [{ call: "corner", selection, index: grip.index }];
  return grip.part === "side" ? [{ call: "corner", selection, index: grip.side + 1 }] : [];
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
  if (state.phase === "pressed") {
    calls.push({ call: "begin", selection: press.selection, part: press.grip.part });
  }
  if (press.grip.part === "raise") {
    calls.push({ call: "move", move: raiseMove(press, event.screen, event.riseStep), held: null });
  } else if (event.at !== null) calls.push(moveCall(press, event.at, event));
  return { state: { phase: "dragging", press }, calls };
}

function moveCall(
  press: Press,
  at: PlanPoint,
  { step, turnStep, hold = null }: Extract<DragEvent, { type: "move" }>,
): DragCall {
  if (hold === null || press.grip.part === "turn") {
    return { call: "move", move: dragMove(press, at, step, turnStep), held: null };
  }
  const held = hold([at[0] - press.grabbed[0], at[1] - press.grabbed[1]]);
  return { call: "move", move: moveBy(press, held.by), held };
}

/** How far the pressed thing is raised (m) when the pointer is there: up the screen is up. */
export function raiseMove(
  { selection, grip, screen }: Press,
  now: ScreenPoint,
  step = 0,
): DragMove {
  if (grip.part !== "raise" || grip.perMetre <= 0) return { selection, by: [0, 0], raise: 0 };
  const up = (screen.top - now.top) / grip.perMetre;
  return { selection, by: [0, 0], raise: snap(grip.height + up, step) - grip.height };
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
  return moveBy(press, by);
}

function moveBy({ selection, grip, place }: Press, by: PlanPoint): DragMove {
  if (grip.part === "corner") return { selection, by, corner: grip.index };
  if (grip.part === "side") return { selection, by, onSide: { side: grip.side, at: place } };
  return { selection, by };
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
