import { useCallback, useEffect, useRef, useState } from "react";
import type { PlanPoint } from "../site/index.js";
import {
  aimOf,
  holdsOf,
  NOTHING_PLACED,
  stepPlacing,
  type PlacingEvent,
  type PlacingState,
} from "./placing.js";
import type { Placing, SiteSceneProps } from "./props.js";

/** What is being placed, as far as it has come. */
export interface PlacingDraft extends PlacingState {
  placing: Placing;
  /** Site place of the next corner; null while it is not known. */
  hover: PlanPoint | null;
}

export interface PlacingTool {
  draft: PlacingDraft | null;
  send: (event: PlacingEvent) => void;
  /** The state as the latest event left it, which may be ahead of what is rendered. */
  now: () => PlacingState;
}

/** Keeps the corners clicked so far; they are forgotten as soon as something else is to be placed. */
export function usePlacing(
  placing: Placing | null,
  onPlace: SiteSceneProps["onPlace"],
): PlacingTool {
  const key = placing === null ? null : `${placing.kind} ${placing.what ?? ""}`;
  const [held, setHeld] = useState<{ key: string; state: PlacingState } | null>(null);
  // The state as the latest event left it: a second event may come before the next render.
  const latest = useRef(NOTHING_PLACED);
  useEffect(() => {
    latest.current = NOTHING_PLACED;
  }, [key]);
  if (held !== null && key === null) setHeld(null);
  const state = held !== null && held.key === key ? held.state : NOTHING_PLACED;
  const draft =
    placing === null ? null : { ...state, placing, hover: aimOf(state), holds: holdsOf(state) };
  const send = (event: PlacingEvent): void => {
    if (placing === null || key === null) return;
    const next = stepPlacing(placing, latest.current, event);
    latest.current = next.state;
    setHeld({ key, state: next.state });
    if (next.placed !== null) onPlace(next.placed);
  };
  const now = useCallback(() => latest.current, []);
  return { draft, send, now };
}
