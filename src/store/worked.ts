import { estimate } from "../estimate/index.js";
import type { Estimate } from "../estimate/index.js";
import type { Site } from "../site/index.js";

/** The estimate of what is shown, or why there is none. */
export type Worked = { ok: true; estimate: Estimate } | { ok: false; text: string };

/**
 * Runs the engine on one scheme, at once, so that the figures belong to the frame that draws the
 * edit. A fault of the engine is told to the person in words; the site is not lost by it.
 */
export function worked(site: Site, schemeId: string): Worked {
  try {
    return { ok: true, estimate: estimate(site, schemeId) };
  } catch (fault) {
    return { ok: false, text: fault instanceof Error ? fault.message : String(fault) };
  }
}
