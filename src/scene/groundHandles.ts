/** What handles on the ground share: where they stand, what the pointer and the arrow keys do. */
import type { KeyboardEvent, PointerEvent } from "react";
import type { PlanPoint } from "../site/index.js";
import type { ScreenPoint } from "./dragging.js";
import { snapStep } from "./figures.js";
import { toScene, toSite } from "./frame.js";
import { ARROWS } from "./keys.js";
import type { SceneContents } from "./sceneTargets.js";
import { projectPoint, rayAt, type SceneView } from "./sceneView.js";

/** Site place under the pointer on the ground as found; null off it. */
export function placeUnder(
  event: PointerEvent<HTMLElement>,
  layer: HTMLElement | null,
  { frame, found }: SceneContents,
  view: SceneView,
): PlanPoint | null {
  const box = layer?.getBoundingClientRect();
  if (box === undefined) return null;
  const screen: ScreenPoint = { left: event.clientX - box.left, top: event.clientY - box.top };
  const ray = rayAt(view, screen);
  const hit = ray === null ? null : found.strike(ray);
  return hit === null ? null : toSite(frame, [hit[0], hit[1]]);
}

/** Puts a handle on the ground at a place of the site, or on that as found; hides it behind the eye. Where on the screen. */
export function standOn(
  handle: HTMLElement,
  at: PlanPoint,
  { frame, ground, found }: SceneContents,
  view: SceneView,
): ScreenPoint | null {
  const [x, y] = toScene(frame, at);
  const z = (ground.heightAt(x, y) ?? found.heightAt(x, y))?.z ?? frame.centre[2];
  const on = projectPoint(view, [x, y, z]);
  handle.hidden = on === null;
  if (on !== null) {
    handle.style.transform = `translate(${Math.round(on.left)}px, ${Math.round(on.top)}px)`;
  }
  return on;
}

/** How far an arrow key moves the handle, m: one step, ten with Shift; null for any other key. */
export function arrowShift(event: KeyboardEvent, { site }: SceneContents): PlanPoint | null {
  const way = ARROWS[event.key];
  if (way === undefined) return null;
  event.preventDefault();
  event.stopPropagation();
  const step = snapStep(site.units) * (event.shiftKey ? 10 : 1);
  return [way[0] * step, way[1] * step];
}
