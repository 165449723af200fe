import { useCallback, useEffect, useRef, useState } from "react";
import type { PlanPoint } from "../site/index.js";
import { stepPlacing, type Corners, type PlacingEvent } from "./placing.js";
import type { Placing, SiteSceneProps } from "./props.js";

/** What is being placed, as far as it has come. */
export interface PlacingDraft {
  kind: Placing["kind"];
  corners: Corners;
  /** Site place of the next click, snapped; null while the pointer is off the ground. */
  hover: PlanPoint | null;
  /** True when the latest click met no ground: said in words, so that no click is lost in silence. */
  missed: boolean;
}

export interface PlacingTool {
  draft: PlacingDraft | null;
  hoverAt: (at: PlanPoint | null) => void;
  send: (event: PlacingEvent) => void;
  /** A click that met no ground. */
  miss: () => void;
}

/** Keeps the corners clicked so far; they are forgotten as soon as something else is to be placed. */
export function usePlacing(
  placing: Placing | null,
  onPlace: SiteSceneProps["onPlace"],
): PlacingTool {
  const kind = placing?.kind ?? null;
  const [held, setHeld] = useState<PlacingDraft | null>(null);
  // The corners as the latest event left them: a second event may come before the next render.
  const corners = useRef<Corners>([]);
  useEffect(() => {
    corners.current = [];
  }, [kind]);
  const fresh = kind === null ? null : draftOf(kind);
  const draft = held !== null && held.kind === kind ? held : fresh;
  if (held !== null && kind === null) setHeld(null);
  const change = useCallback(
    (part: Partial<PlacingDraft>) => {
      if (kind === null) return;
      setHeld((now) => ({ ...(now?.kind === kind ? now : draftOf(kind)), ...part }));
    },
    [kind],
  );
  const hoverAt = useCallback((at: PlanPoint | null) => change({ hover: at }), [change]);
  const miss = useCallback(() => change({ missed: true }), [change]);
  const send = (event: PlacingEvent): void => {
    if (kind === null) return;
    const next = stepPlacing(kind, corners.current, event);
    corners.current = next.corners;
    change({ corners: next.corners, missed: false });
    if (next.placed !== null) onPlace(next.placed);
  };
  return { draft, hoverAt, send, miss };
}

function draftOf(kind: Placing["kind"]): PlacingDraft {
  return { kind, corners: [], hover: null, missed: false };
}
