import { useCallback, useState } from "react";
import type { PlanPoint } from "../site/index.js";
import { stepPlacing, type Corners, type PlacingEvent } from "./placing.js";
import type { Placing, SiteSceneProps } from "./props.js";

/** What is being placed, as far as it has come. */
export interface PlacingDraft {
  kind: Placing["kind"];
  corners: Corners;
  /** Site place of the next click, snapped; null while the pointer is off the ground. */
  hover: PlanPoint | null;
}

export interface PlacingTool {
  draft: PlacingDraft | null;
  hoverAt: (at: PlanPoint | null) => void;
  send: (event: PlacingEvent) => void;
}

/** Keeps the corners clicked so far; they are forgotten as soon as something else is to be placed. */
export function usePlacing(
  placing: Placing | null,
  onPlace: SiteSceneProps["onPlace"],
): PlacingTool {
  const kind = placing?.kind ?? null;
  const [held, setHeld] = useState<PlacingDraft | null>(null);
  const fresh = kind === null ? null : { kind, corners: [], hover: null };
  const draft = held !== null && held.kind === kind ? held : fresh;
  if (held !== null && kind === null) setHeld(null);
  const hoverAt = useCallback(
    (at: PlanPoint | null) => {
      if (kind === null) return;
      setHeld((now) =>
        now !== null && now.kind === kind
          ? { ...now, hover: at }
          : { kind, corners: [], hover: at },
      );
    },
    [kind],
  );
  const send = (event: PlacingEvent): void => {
    if (draft === null) return;
    const next = stepPlacing(draft.kind, draft.corners, event);
    setHeld({ ...draft, corners: next.corners });
    if (next.placed !== null) onPlace(next.placed);
  };
  return { draft, hoverAt, send };
}
