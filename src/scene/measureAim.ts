import { reachAt } from "./aim.js";
import type { PlanPoint } from "../site/index.js";
import type { ScreenPoint } from "./dragging.js";
import { groundUnder, type PickScene } from "./pickAt.js";
import { snapPlace } from "./snap.js";
import { snapTargets } from "./snapTargets.js";

/**
 * The site place that is measured from or to: on a corner or edge near the pointer, else just under
 * it, for a length that is measured must not be made round. Null off the ground.
 */
export function measureAim(
  scene: PickScene,
  screen: ScreenPoint,
  pointer: { free: boolean; pointerType: string },
): PlanPoint | null {
  const at = groundUnder(scene, screen, 0);
  if (at === null || pointer.free) return at;
  const { contents, view, props } = scene;
  return snapPlace({
    at,
    targets: snapTargets(contents, props, []),
    lines: [],
    close: null,
    from: null,
    contours: null,
    reach: reachAt(view, contents, at, pointer.pointerType),
    step: 0,
  }).at;
}
