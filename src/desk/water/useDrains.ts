import { useMemo } from "react";
import { useDesk } from "../../store/index.js";
import type { Runoff } from "../parts.js";
import { useSite } from "../useSite.js";

/** What of the ground's water a work meets; null where nothing is known of it. */
export function useRunoffOf(workId: string | null): Runoff | null {
  const { estimate } = useSite();
  return estimate?.runoff.find(({ work }) => work === workId) ?? null;
}

/**
 * The picked work's share of the slope where it is to be shown; else, on the leaf that offers it,
 * the ditch above the work alone.
 */
export function useDrains(): Runoff | null {
  const draining = useDesk((desk) => desk.draining);
  const offers = useDesk((desk) => desk.leaf === "dig");
  const id = useDesk((desk) => (desk.selected?.kind === "work" ? desk.selected.id : null));
  const runoff = useRunoffOf(draining || offers ? id : null);
  return useMemo(() => {
    if (draining || runoff === null) return runoff;
    return runoff.ditch === null ? null : { ...runoff, starts: [], longest: [] };
  }, [draining, runoff]);
}
