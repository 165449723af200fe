import type { PlanPoint } from "../site/index.js";
import { ARROWS } from "./keys.js";
import { aimOf, leastCorners, type PlacingEvent, type PlacingState } from "./placing.js";
import type { Placing } from "./props.js";

/** A key while something is placed, and where the focus is. */
export interface PlacingKey {
  key: string;
  shift: boolean;
  /** On a button anywhere, on one of the hint's own, or neither. */
  on: "scene" | "button" | "hint";
}

/** What a key means: an event of the placing, leaving it, or the first sign of a typed length. */
export type PlacingAct = PlacingEvent | { type: "cancel" } | { type: "type"; text: string };

/**
 * What a key means while placing; null for nothing. Arrows move the mark (from `middle` before there
 * is one) by `step` m, Space sets it, Enter finishes, Backspace takes back, Escape leaves, a digit
 * begins a length. Keys on a button stay the button's own, but for Enter once a shape can be
 * finished: it finishes wherever the focus is (the button that began the placing may have it still),
 * except on the hint's own buttons.
 */
export function actOfKey(
  placing: Placing,
  state: PlacingState,
  { key, shift, on }: PlacingKey,
  { step, middle }: { step: number; middle: PlanPoint },
): PlacingAct | null {
  if (key === "Escape") return { type: "cancel" };
  if (key === "Backspace") return { type: "back" };
  const way = ARROWS[key];
  if (way !== undefined) {
    const from = state.pointer ?? middle;
    const go = step * (shift ? 50 : 5);
    return { type: "hover", at: [from[0] + way[0] * go, from[1] + way[1] * go], holds: [] };
  }
  const least = leastCorners(placing);
  const single = least === 1;
  if (/^[\d.]$/.test(key) && !single && state.corners.length > 0)
    return { type: "type", text: key };
  if (key !== "Enter" && key !== " ") return null;
  const mayFinish = !single && state.corners.length >= least;
  if (on !== "scene" && (on === "hint" || key === " " || !mayFinish)) return null;
  if (key === " " || single) return aimOf(state) === null ? null : { type: "set" };
  return { type: "finish" };
}
