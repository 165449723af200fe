import { findLimit, type PlanPoint } from "../site/index.js";
import type { Grip, ScreenPoint } from "./dragging.js";
import { toSite } from "./frame.js";
import { limitPlace, limitUnder } from "./limitPick.js";
import { rayMeetsLevel, workUnder } from "./picking.js";
import type { Selection, SiteSceneProps } from "./props.js";
import {
  hasTag,
  holeUnder,
  pickTargets,
  pinUnder,
  workAnchor,
  type SceneContents,
} from "./sceneTargets.js";
import { isAmong, isLocked } from "./shown.js";
import { metresPerPixel, projectPoint, rayAt, type SceneView } from "./sceneView.js";
import type { StageGround } from "./stageGround.js";
import { workPlace } from "../estimate/index.js";

/** What a pick is made in: the view, what shows in it, and what is chosen and shown. */
export interface PickScene {
  view: SceneView;
  contents: SceneContents;
  props: Pick<SiteSceneProps, "selected" | "also" | "showProbes" | "showPoints" | "view">;
}

/** What the pointer slides on during a drag: a level for a solid body, the ground for the rest. */
export type Slide = { level: number } | { ground: StageGround };

/** Distance of two places on the screen, px. */
export function apart(a: ScreenPoint, b: ScreenPoint): number {
  return Math.hypot(a.left - b.left, a.top - b.top);
}

/** Site place under the pointer on what it slides on; null when it misses or is far off the lot. */
export function slideAt(input: PickScene, screen: ScreenPoint, slide: Slide): PlanPoint | null {
  const ray = rayAt(input.view, screen);
  if (ray === null) return null;
  const { frame } = input.contents;
  const hit = "level" in slide ? rayMeetsLevel(ray, slide.level) : slide.ground.strike(ray);
  if (hit === null) return null;
  const off = Math.hypot(hit[0] - frame.centre[0], hit[1] - frame.centre[1]);
  // Near the horizon a level is struck a long way off: nothing is meant to go there.
  return off > frame.reach * 3 ? null : toSite(frame, [hit[0], hit[1]]);
}

/** Snapped site place on the ground as it stands; null off the ground. */
export function groundUnder(input: PickScene, screen: ScreenPoint, step: number): PlanPoint | null {
  const ray = rayAt(input.view, screen);
  const hit = ray === null ? null : input.contents.ground.strike(ray);
  if (hit === null) return null;
  const [x, y] = toSite(input.contents.frame, [hit[0], hit[1]]);
  if (step === 0) return [x, y];
  return [Math.round(x / step) * step, Math.round(y / step) * step];
}

/** What a press takes hold of. */
export interface Picked {
  held: {
    selection: Selection;
    grip: Grip;
    place: PlanPoint;
    grabbed: PlanPoint;
    movable: boolean;
  };
  slide: Slide;
}

/** What lies under the pointer, and how it would be dragged. */
export function pickAt(input: PickScene, screen: ScreenPoint, touch: boolean): Picked | null {
  const { contents, props, view } = input;
  const shown = { probes: props.showProbes, points: props.showPoints };
  const pin = pinUnder(view, contents, shown, screen, touch ? 22 : 11);
  const dot = pin === null ? dotUnder(input, screen, touch ? 16 : 9) : null;
  const selection = pin ?? dot ?? workPicked(input, screen) ?? limitPicked(input, screen, touch);
  if (selection === null) return null;
  const chosen = isAmong([props.selected, ...props.also], selection);
  const work = contents.works.find((w) => selection.kind === "work" && w.id === selection.id);
  const place = placeOf(contents, selection);
  if (place === null) return null;
  const broad = work?.kind === "pad" || work?.kind === "trench" || work?.kind === "strip";
  const slide = slideFor(contents, selection);
  const grabbed = slideAt(input, screen, slide);
  if (grabbed === null) return null;
  // A finger turns the view unless what it is on was chosen first; so does a mouse on broad ground.
  // A label's dot is as good as the label.
  // On foot a drag looks round: there a thing is moved by its label or its keys.
  const still = props.view === "walk" || isLocked(contents, selection);
  const movable = !still && (chosen || dot !== null || (!touch && !broad && isFree(selection)));
  return { held: { selection, grip: { part: "body" }, place, grabbed, movable }, slide };
}

/** True for what a mouse may drag without choosing it first: not the survey itself, nor a limit. */
function isFree({ kind }: Selection): boolean {
  return kind !== "point" && kind !== "limit";
}

/** Limits are picked where the survey is shown: elsewhere a tap on a tree would leave the leaf. */
function limitPicked(
  { view, contents, props }: PickScene,
  screen: ScreenPoint,
  touch: boolean,
): Selection | null {
  if (!props.showPoints && props.selected?.kind !== "limit") return null;
  return limitUnder(view, contents, screen, touch ? 18 : 9);
}

/** The work whose label's dot is nearest the pointer within `reach` px; null for none. */
function dotUnder(input: PickScene, screen: ScreenPoint, reach: number): Selection | null {
  const { contents, props, view } = input;
  let best: { id: string; far: number } | null = null;
  for (const work of contents.works) {
    if (!hasTag(work, [props.selected, ...props.also], view.width)) continue;
    const dot = projectPoint(view, workAnchor(work, contents));
    const far = dot === null ? Infinity : apart(dot, screen);
    if (far <= reach && far < (best?.far ?? Infinity)) best = { id: work.id, far };
  }
  return best === null ? null : { kind: "work", id: best.id };
}

function workPicked(input: PickScene, screen: ScreenPoint): Selection | null {
  const ray = rayAt(input.view, screen);
  if (ray === null) return null;
  const slack = 9 * metresPerPixel(input.view, input.view.target);
  const ground = input.contents.ground.strike(ray);
  const targets = pickTargets(input.contents);
  const id = workUnder(ray, targets, ground, slack) ?? holeUnder(input.contents, targets, ground);
  return id === null ? null : { kind: "work", id };
}

/** The site place of a thing that is snapped when it is dragged; null when it is not there. */
export function placeOf(contents: SceneContents, selection: Selection): PlanPoint | null {
  const { site, works } = contents;
  if (selection.kind === "work") {
    const work = works.find((w) => w.id === selection.id);
    return work === undefined ? null : workPlace(work);
  }
  if (selection.kind === "limit") {
    const limit = findLimit(site, selection.id);
    return limit && limitPlace(limit);
  }
  const pins = selection.kind === "probe" ? site.ground.probes : site.survey.points;
  const pin = pins.find((p) => p.id === selection.id);
  return pin === undefined ? null : [pin.x, pin.y];
}

/** A body that keeps its own elevation slides at it; all else follows the ground as found. */
export function slideFor(contents: SceneContents, selection: Selection): Slide {
  const work = contents.works.find((w) => selection.kind === "work" && w.id === selection.id);
  if (work?.kind === "building" || work?.kind === "bed") {
    return { level: work.base + work.height / 2 - contents.frame.origin[2] };
  }
  return { ground: contents.found };
}
