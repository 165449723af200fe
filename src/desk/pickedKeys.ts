import type { Site } from "../site/index.js";
import { FOOT } from "../units/index.js";
import { useDesk } from "../store/index.js";

/** m that Page Up raises what is picked: 0.1 ft or 0.05 m. */
export const riseStep = (units: Site["units"]): number => (units === "us" ? 0.1 * FOOT : 0.05);

const RISES: Readonly<Record<string, number>> = { PageUp: 1, PageDown: -1 };

/** In the leaf, Page Up and Page Down turn its pages, but on the list of works they raise. */
function scrollsThere(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  return target.closest(".leaf") !== null && target.closest(".work-list") === null;
}

/** Raises or lowers what is picked by so many steps. True when there was something to raise. */
export function raiseByKey(event: KeyboardEvent, times: number): boolean {
  const { selected, history, raise } = useDesk.getState();
  const rise = RISES[event.key];
  if (rise === undefined || selected === null || scrollsThere(event.target)) return false;
  if (history === null || history.mark !== null) return false;
  raise(rise * times * riseStep(history.present.units));
  return true;
}

/** Picks all works of the scheme. True when there was a scheme to pick from. */
export function pickAllByKey(): boolean {
  const { history, placing, pickAll } = useDesk.getState();
  if (history === null || history.mark !== null || placing !== null) return false;
  pickAll();
  return true;
}
