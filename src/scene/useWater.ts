import { useCallback, useMemo, useState } from "react";
import { waterFrom, type WaterWay } from "../estimate/index.js";
import type { PlanPoint, Site } from "../site/index.js";

/** A way of water and the place that was tapped for it. */
export interface ShownWay extends WaterWay {
  at: PlanPoint;
}

/** Showing where water runs, as far as the scene knows it; it is kept nowhere else. */
export interface WaterTool {
  /** True while taps show where water runs. */
  isSetting: boolean;
  ways: readonly ShownWay[];
  /** Place under the pointer or the arrow keys, site coordinates; null off the ground. */
  hover: PlanPoint | null;
  /** True when the latest tap met no survey. */
  missed: boolean;
  hoverAt: (at: PlanPoint | null) => void;
  /** A tap on a place, or beside the ground (null). */
  tap: (at: PlanPoint | null) => void;
  takeBack: () => void;
  clear: () => void;
}

interface Held {
  starts: readonly PlanPoint[];
  hover: PlanPoint | null;
  missed: boolean;
}

const FRESH: Held = { starts: [], hover: null, missed: false };

/** Keeps the places that were tapped; they are forgotten when the tool is put away. */
export function useWater(isSetting: boolean, site: Site): WaterTool {
  const [held, setHeld] = useState<Held>(FRESH);
  if (!isSetting && held !== FRESH) setHeld(FRESH);
  const hoverAt = useCallback(
    (hover: PlanPoint | null) => setHeld((now) => ({ ...now, hover })),
    [],
  );
  const { survey } = site;
  const tap = useCallback(
    (at: PlanPoint | null) =>
      setHeld((now) =>
        at === null || waterFrom(site, at) === null
          ? { ...now, missed: true }
          : { ...now, starts: [...now.starts, at], missed: false },
      ),
    [survey],
  );
  const takeBack = useCallback(
    () => setHeld((now) => ({ ...now, starts: now.starts.slice(0, -1), missed: false })),
    [],
  );
  const clear = useCallback(() => setHeld(FRESH), []);
  const ways = useMemo(
    () =>
      held.starts.flatMap((at): ShownWay[] => {
        const way = waterFrom(site, at);
        return way === null ? [] : [{ ...way, at }];
      }),
    [held.starts, survey],
  );
  const { hover, missed } = held;
  return { isSetting, ways, hover, missed, hoverAt, tap, takeBack, clear };
}
