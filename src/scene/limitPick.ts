import { limitCorners, type Limit, type PlanPoint } from "../site/index.js";
import type { ScreenPoint } from "./dragging.js";
import { toScene, type ScenePoint } from "./frame.js";
import { isOverhead, supportsOf } from "./overhead.js";
import { distanceToPath } from "./picking.js";
import type { Selection } from "./props.js";
import type { SceneContents } from "./sceneTargets.js";
import { projectPoint, type SceneView } from "./sceneView.js";
import { shownLimits } from "./shown.js";
import { alongPath } from "../estimate/index.js";

/** The place of a limit that is snapped when it is dragged: its own, or its line's first corner. */
export function limitPlace(limit: Limit): PlanPoint | null {
  return limit.at ?? limit.path?.[0] ?? null;
}

/** Where a limit's label points, scene frame: its place, or the middle of its line. */
export function limitAnchor({ frame, found }: SceneContents, limit: Limit): ScenePoint | null {
  const at = limit.at ?? (limit.path === undefined ? null : alongPath(limit.path, 0.5));
  if (at === null) return null;
  const [x, y] = toScene(frame, at);
  const z = found.heightAt(x, y)?.z ?? frame.centre[2];
  const wire = isOverhead(limit) ? (limit.height ?? 0) : 0;
  return [x, y, z + (limit.at === undefined ? wire : 1)];
}

/** The limit that shows nearest the pointer within `reach` px; places win over lines. */
export function limitUnder(
  view: SceneView,
  contents: SceneContents,
  screen: ScreenPoint,
  reach: number,
): Selection | null {
  let best: { id: string; far: number } | null = null;
  for (const limit of shownLimits(contents.site)) {
    const far = pxTo(view, contents, limit, screen) + (limit.at === undefined ? reach / 2 : 0);
    if (far <= reach * 1.5 && far < (best?.far ?? Infinity)) best = { id: limit.id, far };
  }
  return best && { kind: "limit", id: best.id };
}

function pxTo(
  view: SceneView,
  { frame, found }: SceneContents,
  limit: Limit,
  { left, top }: ScreenPoint,
): number {
  const shownAt = (at: ScenePoint): PlanPoint | null => {
    const shown = projectPoint(view, at);
    return shown && [shown.left, shown.top];
  };
  const onScreen = (at: PlanPoint): PlanPoint | null => {
    const [x, y] = toScene(frame, at);
    return shownAt([x, y, found.heightAt(x, y)?.z ?? frame.centre[2]]);
  };
  const corners = limitCorners(limit);
  const places = corners?.places ?? (limit.at === undefined ? [] : [limit.at]);
  const path = corners?.closed === true ? [...places, ...places.slice(0, 1)] : places;
  // A line on poles is picked by its wire, and by its line on the ground.
  const wire = supportsOf(limit, frame, found)?.map((one) => shownAt(one.wire)) ?? [];
  const far = [path.map(onScreen), wire].flatMap((line) =>
    line.map((a, i) => {
      const b = line[i + 1] ?? a;
      return a === null || b === null ? Infinity : distanceToPath([left, top], [a, b]);
    }),
  );
  return Math.min(...far, Infinity);
}
