import { useDesk } from "../../store/index.js";
import type { Runoff } from "../parts.js";
import { useSite } from "../useSite.js";

/** What of the ground's water a work meets; null where nothing is known of it. */
export function useRunoffOf(workId: string | null): Runoff | null {
  const { estimate } = useSite();
  return estimate?.runoff.find(({ work }) => work === workId) ?? null;
}

/** The picked work's share of the slope, where it is to be shown. */
export function useDrains(): Runoff | null {
  const draining = useDesk((desk) => desk.draining);
  const id = useDesk((desk) => (desk.selected?.kind === "work" ? desk.selected.id : null));
  return useRunoffOf(draining ? id : null);
}
