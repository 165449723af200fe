import { limitKind, outlineProblem, type PlanPoint } from "../site/index.js";
import { words } from "../words/index.js";
import { bearingOf, type ScreenPoint } from "./dragging.js";
import type { Placing } from "./props.js";
import type { SnapHold } from "./snap.js";

/** Corners clicked so far, site coordinates. */
export type Corners = readonly PlanPoint[];

/** What was typed for the present leg: m, degrees clockwise from north. */
export interface FixedLeg {
  length?: number;
  bearing?: number;
}

/** What is being placed, as far as it has come. */
export interface PlacingState {
  corners: Corners;
  /** Site place of the pointer, snapped; null while it is off the ground. */
  pointer: PlanPoint | null;
  /** What the pointer's place is held by. */
  holds: readonly SnapHold[];
  fixed: FixedLeg;
  /** True when the latest click met no ground: said in words, so that no click is lost in silence. */
  missed: boolean;
  /** Why the shape cannot be finished as it is, in words; null when nothing is wrong. */
  fault: string | null;
  /** The latest click that set a corner: a second one close upon it is a double click. */
  tapped: { screen: ScreenPoint; time: number } | null;
}

export const NOTHING_PLACED: PlacingState = {
  corners: [],
  pointer: null,
  holds: [],
  fixed: {},
  missed: false,
  fault: null,
  tapped: null,
};

export type PlacingEvent =
  | { type: "hover"; at: PlanPoint | null; holds: readonly SnapHold[] }
  /** A tap in the scene; `at` is null off the ground. `time` in ms. */
  | { type: "tap"; at: PlanPoint | null; screen: ScreenPoint; time: number }
  /** The browser's own double click, which may come later than ours. */
  | { type: "double" }
  | { type: "click"; at: PlanPoint }
  /** Sets a corner where the mark is. */
  | { type: "set" }
  | { type: "fix"; fixed: FixedLeg }
  | { type: "back" }
  | { type: "finish" };

/** What a kind of thing is drawn as. */
export function shapeOf({ kind, what }: Placing): "point" | "path" | "outline" {
  switch (kind) {
    case "tank":
    case "bed":
    case "probe":
    case "outlet":
      return "point";
    case "limit":
      return limitShape(what ?? "");
    case "trench":
    case "field":
      return "path";
    case "pad":
    case "building":
    case "strip":
      return "outline";
  }
}

/** Lot lines and easements may stay open; what else has an area is an outline. */
function limitShape(kind: string): "point" | "path" | "outline" {
  const known = limitKind(kind);
  if (known?.shape === "place") return "point";
  return known?.shape === "area" && !mayStayOpen(kind) ? "outline" : "path";
}

function mayStayOpen(kind: string): boolean {
  return kind === "lot-line" || kind === "easement";
}

/** Corners that a thing needs before it can be finished: 1 means a single click places it. */
export function leastCorners(placing: Placing): number {
  return { point: 1, path: 2, outline: 3 }[shapeOf(placing)];
}

/** Whether a click on the first corner closes the shape: of an outline, or of a limit's line. */
export function mayClose(placing: Placing, corners: Corners): boolean {
  const { kind, what = "" } = placing;
  const closes = shapeOf(placing) === "outline" || (kind === "limit" && mayStayOpen(what));
  return closes && corners.length >= 3;
}

/** Where the next corner goes: the pointer's place, on the typed length and bearing; null for none. */
export function aimOf({ corners, pointer, fixed }: PlacingState): PlanPoint | null {
  const last = corners.at(-1);
  if (last === undefined || (fixed.length === undefined && fixed.bearing === undefined)) {
    return pointer;
  }
  const bearing = fixed.bearing ?? wayOf(corners, pointer);
  if (bearing === null) return null;
  const turn = (bearing * Math.PI) / 180;
  const along: PlanPoint = [Math.sin(turn), Math.cos(turn)];
  if (fixed.length === undefined && pointer === null) return null;
  const [px, py] = pointer ?? last;
  // With a bearing alone the leg reaches as far as the pointer does, and never backwards.
  const run = fixed.length ?? Math.max(0, (px - last[0]) * along[0] + (py - last[1]) * along[1]);
  return [last[0] + along[0] * run, last[1] + along[1] * run];
}

/** Bearing of the present leg: to the pointer, else straight on from the last leg; null for neither. */
function wayOf(corners: Corners, pointer: PlanPoint | null): number | null {
  const [last, before] = [corners.at(-1), corners.at(-2)];
  if (last === undefined) return null;
  if (pointer !== null && !isOne(last, pointer)) return bearingOf(last, pointer);
  return before === undefined ? null : bearingOf(before, last);
}

/** What holds the aim: a typed length keeps the angle that the pointer was held by. */
export function holdsOf({ holds, fixed }: PlacingState): readonly SnapHold[] {
  if (fixed.bearing !== undefined) return [];
  if (fixed.length === undefined) return holds;
  return holds.filter(({ by }) => by === "square" || by === "straight");
}

interface PlacingStep {
  state: PlacingState;
  /** The whole shape, when the event finished it. */
  placed: Corners | null;
}

/** The state after an event, and the whole shape when the event finished it. Pure. */
export function stepPlacing(
  placing: Placing,
  state: PlacingState,
  event: PlacingEvent,
): PlacingStep {
  switch (event.type) {
    case "hover":
      return kept({ ...state, pointer: event.at, holds: event.holds });
    case "fix":
      return kept({ ...state, fixed: event.fixed, fault: null });
    case "back":
      return kept({ ...state, ...SETTLED, corners: state.corners.slice(0, -1) });
    case "finish":
      return finished(placing, { ...state, tapped: null });
    case "double":
      return state.tapped === null ? kept(state) : stepPlacing(placing, state, { type: "finish" });
    case "click":
      return withCorner(placing, { ...state, pointer: event.at }, event.at);
    case "set": {
      const at = aimOf(state);
      // The mark stands on the new corner: the pointer's earlier place is no next one.
      return withCorner(placing, at === null ? state : { ...state, pointer: at }, at);
    }
    case "tap":
      return tapped(placing, state, event);
  }
}

/** What every set or taken corner brings back to rest. */
const SETTLED = { fixed: {}, holds: [], missed: false, fault: null, tapped: null } as const;

function kept(state: PlacingState): PlacingStep {
  return { state, placed: null };
}

function tapped(
  placing: Placing,
  state: PlacingState,
  { at, screen, time }: Extract<PlacingEvent, { type: "tap" }>,
): PlacingStep {
  // A hand that shook between the two must not set another corner beside the last one.
  const again = state.tapped !== null && isDouble(state.tapped, { screen, time });
  if (again && leastCorners(placing) > 1) return stepPlacing(placing, state, { type: "finish" });
  // A double click off the ground set no corner, so it finishes nothing either.
  if (at === null) return kept({ ...state, pointer: null, missed: true, tapped: null });
  const there = { ...state, pointer: at };
  const step = withCorner(placing, there, aimOf(there));
  return { ...step, state: { ...step.state, tapped: { screen, time } } };
}

function withCorner(placing: Placing, state: PlacingState, at: PlanPoint | null): PlacingStep {
  if (at === null) return kept({ ...state, fault: words.drawing.noWay });
  if (leastCorners(placing) === 1) return { state: NOTHING_PLACED, placed: [at] };
  const { corners } = state;
  const [first, last] = [corners[0], corners.at(-1)];
  if (first !== undefined && mayClose(placing, corners) && isOne(first, at)) {
    const path = shapeOf(placing) === "path";
    return finished(placing, { ...state, ...SETTLED }, path ? [...corners, first] : corners);
  }
  // The second click of a double click lands where the first did: it is no new corner.
  const repeated = last !== undefined && isOne(last, at);
  return kept({ ...state, ...SETTLED, corners: repeated ? corners : [...corners, at] });
}

function finished(placing: Placing, state: PlacingState, corners = state.corners): PlacingStep {
  const least = leastCorners(placing);
  if (least === 1 || corners.length < least) return kept(state);
  const problem = shapeOf(placing) === "outline" ? outlineProblem(corners) : null;
  if (problem !== null) return kept({ ...state, fault: words.drawing.outlineFault(problem) });
  return { state: NOTHING_PLACED, placed: corners };
}

/** m within which two places are one. */
const ONE_PLACE = 0.05;

function isOne(a: PlanPoint, b: PlanPoint): boolean {
  return Math.hypot(a[0] - b[0], a[1] - b[1]) < ONE_PLACE;
}

/** ms and px within which two clicks are one double click. */
const DOUBLE = { time: 400, reach: 8 };

type Tap = { screen: ScreenPoint; time: number };

function isDouble(first: Tap, second: Tap): boolean {
  if (second.time - first.time > DOUBLE.time) return false;
  const { left, top } = first.screen;
  return Math.hypot(second.screen.left - left, second.screen.top - top) <= DOUBLE.reach;
}

/** One line that says what to do next, in words for a finger or for a mouse and keys. */
export function placingHint(placing: Placing, count: number, finger = false): string {
  const { kinds, hint } = words.drawing;
  const act = finger ? hint.tap : hint.click;
  const least = leastCorners(placing);
  const name =
    placing.kind === "limit"
      ? (limitKind(placing.what ?? "")?.name ?? kinds.limit)
      : kinds[placing.kind];
  if (least === 1) return hint.point(act, name);
  const mark = shapeOf(placing) === "path" ? hint.bend : hint.corner;
  if (count === 0) return hint.first(act, mark, name);
  if (count < least) return hint.next(act, mark);
  return hint.finish(act, mark, finger ? hint.done : hint.byKeys);
}
