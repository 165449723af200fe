import { useCallback, useState } from "react";
import type { PlanPoint } from "../site/index.js";
import { NOTHING_MEASURED, stepMeasuring, type MeasureEvent, type Measuring } from "./measuring.js";

/** Measuring as far as the scene knows it; it is kept nowhere else. */
export interface MeasureTool {
  /** Null while nothing is measured. */
  state: Measuring | null;
  /** True while taps set places. */
  isSetting: boolean;
  /** Place under the pointer or the arrow keys, site coordinates; null off the ground. */
  hover: PlanPoint | null;
  /** True when the latest tap met no ground. */
  missed: boolean;
  hoverAt: (at: PlanPoint | null) => void;
  /** A tap on a place, or beside the ground (null). */
  tap: (at: PlanPoint | null) => void;
  send: (event: MeasureEvent) => void;
}

interface Held {
  state: Measuring;
  hover: PlanPoint | null;
  missed: boolean;
}

const FRESH: Held = { state: NOTHING_MEASURED, hover: null, missed: false };

/** Keeps the places that were set; they are forgotten when measuring ends. */
export function useMeasuring(measuring: boolean): MeasureTool {
  const [held, setHeld] = useState<Held>(FRESH);
  if (!measuring && held !== FRESH) setHeld(FRESH);
  const hoverAt = useCallback(
    (hover: PlanPoint | null) => setHeld((now) => ({ ...now, hover })),
    [],
  );
  const send = useCallback(
    (event: MeasureEvent) =>
      setHeld((now) => ({ ...now, state: stepMeasuring(now.state, event), missed: false })),
    [],
  );
  const tap = useCallback(
    (at: PlanPoint | null) => {
      if (at === null) setHeld((now) => ({ ...now, missed: true }));
      else send({ type: "set", at });
    },
    [send],
  );
  const isSetting = measuring && held.state.isSetting;
  return {
    state: measuring ? held.state : null,
    isSetting,
    hover: isSetting ? held.hover : null,
    missed: held.missed,
    hoverAt,
    tap,
    send,
  };
}
