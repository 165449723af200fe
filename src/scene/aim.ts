import { Vector3 } from "three";
import { foundContours, workOutline } from "../estimate/index.js";
import type { PlanPoint, Work } from "../site/index.js";
import { cornersOf } from "../site/index.js";
import type { DragHold, Press, ScreenPoint } from "./dragging.js";
import { dragHold } from "./dragSnap.js";
import { snapStep } from "./figures.js";
import { toScene } from "./frame.js";
import { groundUnder, type PickScene } from "./pickAt.js";
import { placeAimed } from "./placeAimed.js";
import type { PlacingState } from "./placing.js";
import type { Placing, SiteSceneProps } from "./props.js";
import type { SceneContents } from "./sceneTargets.js";
import { metresPerPixel, type SceneView } from "./sceneView.js";
import type { SnapContours, Snapped } from "./snap.js";
import { snapTargets } from "./snapTargets.js";

/** px about the pointer within which something holds. */
const REACH = { mouse: 10, touch: 18 };

/** m within which something holds at a site place, as the view now shows it. */
export function reachAt(
  view: SceneView,
  contents: SceneContents,
  at: PlanPoint,
  pointerType: string,
): number {
  const [x, y] = toScene(contents.frame, at);
  const z = contents.ground.heightAt(x, y)?.z ?? contents.frame.centre[2];
  const px = pointerType === "touch" ? REACH.touch : REACH.mouse;
  return px * metresPerPixel(view, new Vector3(x, y, z));
}

/** Whether what is placed is the path of pipes, whose ends belong at outlets, tanks and ends. */
const isPipeway = ({ kind }: Placing): boolean => kind === "trench" || kind === "field";

/** Whether a press drags the first or last place of a trench's path. */
function isPathEnd({ grip }: Press, work: Work | undefined): boolean {
  if (grip.part !== "corner" || work?.kind !== "trench") return false;
  return grip.index === 0 || grip.index === work.path.length - 1;
}

/** The contours that are drawn, for snapping. */
export function snapContours({ site, found, frame }: SceneContents): SnapContours {
  return {
    step: foundContours(site).step,
    heightAt: (at) => {
      const [x, y] = toScene(frame, at);
      const hit = found.heightAt(x, y);
      return hit && hit.z + frame.origin[2];
    },
  };
}

/** Where the next corner of what is being placed goes; null off the ground. */
export function aimAt(
  scene: PickScene,
  placing: Placing,
  { corners }: Pick<PlacingState, "corners">,
  screen: ScreenPoint,
  pointer: { free: boolean; pointerType: string },
): Snapped | null {
  const at = groundUnder(scene, screen, 0);
  if (at === null || pointer.free) return at && { at, holds: [] };
  const { contents, view, props } = scene;
  return placeAimed(at, placing, corners, {
    targets: snapTargets(contents, props, [], isPipeway(placing)),
    contours: snapContours(contents),
    reach: reachAt(view, contents, at, pointer.pointerType),
    step: snapStep(contents.site.units),
  });
}

/** How a press is held while it is dragged, from all that stands when it is pressed. */
export function holdFor(
  scene: PickScene & { props: Pick<SiteSceneProps, "schemeId"> },
  press: Press,
  pointerType: string,
): DragHold | null {
  const { contents, view, props } = scene;
  const { selection, place } = press;
  const { site, works } = contents;
  const work = selection.kind === "work" ? works.find((one) => one.id === selection.id) : undefined;
  const corners = cornersOf(site, props.schemeId, selection);
  const own = corners?.places ?? (work === undefined ? null : workOutline(work)) ?? [place];
  return dragHold(press, corners, work !== undefined && "at" in work ? [...own, place] : own, {
    targets: snapTargets(contents, props, [selection, ...props.also], isPathEnd(press, work)),
    contours: snapContours(contents),
    reach: reachAt(view, contents, press.grabbed, pointerType),
    step: snapStep(site.units),
  });
}
