import type { PlanPoint, Site } from "../site/index.js";
import { snapStep } from "./figures.js";
import { toSite, type SceneFrame } from "./frame.js";
import { ARROWS } from "./keys.js";

/**
 * Where an arrow key moves a mark from `from`, or from the middle of the lot when there is none;
 * farther with Shift. Site coordinates; null for any other key.
 */
export function arrowAim(
  event: Pick<KeyboardEvent, "key" | "shiftKey">,
  from: PlanPoint | null,
  frame: SceneFrame,
  units: Site["units"],
): PlanPoint | null {
  const way = ARROWS[event.key];
  if (way === undefined) return null;
  const unit = snapStep(units);
  const step = unit * (event.shiftKey ? 50 : 5);
  const middle = toSite(frame, [frame.centre[0], frame.centre[1]]);
  const [x, y] = from ?? [Math.round(middle[0] / unit) * unit, Math.round(middle[1] / unit) * unit];
  return [x + way[0] * step, y + way[1] * step];
}
