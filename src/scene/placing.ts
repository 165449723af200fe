import type { PlanPoint } from "../site/index.js";
import type { Placing } from "./props.js";

/** Corners clicked so far, site coordinates. */
export type Corners = readonly PlanPoint[];

export type PlacingEvent = { type: "click"; at: PlanPoint } | { type: "back" } | { type: "finish" };

/** Corners that a kind of thing needs before it can be finished: 1 means a single click places it. */
export function leastCorners(kind: Placing["kind"]): number {
  switch (kind) {
    case "tank":
    case "bed":
    case "probe":
      return 1;
    case "trench":
      return 2;
    case "pad":
    case "building":
    case "strip":
      return 3;
  }
}

/** The corners after an event, and the whole shape when the event finished it. Pure. */
export function stepPlacing(
  kind: Placing["kind"],
  corners: Corners,
  event: PlacingEvent,
): { corners: Corners; placed: Corners | null } {
  const least = leastCorners(kind);
  if (event.type === "back") return { corners: corners.slice(0, -1), placed: null };
  if (event.type === "finish") {
    return corners.length >= least && least > 1
      ? { corners: [], placed: corners }
      : { corners, placed: null };
  }
  if (least === 1) return { corners: [], placed: [event.at] };
  const last = corners.at(-1);
  // The second click of a double click lands where the first did: it is no new corner.
  const repeated =
    last !== undefined && Math.hypot(last[0] - event.at[0], last[1] - event.at[1]) < 0.05;
  return { corners: repeated ? corners : [...corners, event.at], placed: null };
}

const NAMES: Readonly<Record<Placing["kind"], string>> = {
  tank: "tank",
  bed: "raised bed",
  probe: "probe",
  pad: "pad",
  trench: "trench",
  building: "building",
  strip: "topsoil strip",
};

/** One line that says what to do next. */
export function placingHint(kind: Placing["kind"], count: number): string {
  const least = leastCorners(kind);
  if (least === 1) return `Click the ground where the ${NAMES[kind]} goes. Esc to leave it.`;
  const mark = kind === "trench" ? "bend" : "corner";
  if (count === 0) return `Click the first ${mark} of the ${NAMES[kind]}. Esc to leave it.`;
  if (count < least) return `Click the next ${mark}. Backspace takes the last one back.`;
  return `Click the next ${mark}, or finish with Enter or a double click.`;
}
