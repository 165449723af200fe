import {
  cornersOfWork,
  findLimit,
  limitCorners,
  type PlanPoint,
  type Work,
} from "../site/index.js";
import { words } from "../words/index.js";
import type { Grip, ScreenPoint } from "./dragging.js";
import { toScene, type ScenePoint } from "./frame.js";
import { slideFor, type Slide } from "./pickAt.js";
import type { Selection } from "./props.js";
import { workAnchor, type SceneContents } from "./sceneTargets.js";
import { pixelsPerMetre, projectPoint, type SceneView } from "./sceneView.js";
import { isLocked } from "./shown.js";
import type { ScreenBox } from "./spotLayout.js";
import { limitName } from "./snapTargets.js";
import { isSet } from "./works/WorkModels.js";

/** One handle: what it takes hold of, and where it stands. */
export interface HandleSpot {
  key: string;
  label: string;
  grip: Grip;
  place: PlanPoint;
  at: ScenePoint;
  slide: Slide;
  /** Middle of the thing that the handle must stand clear of on a small screen; null for a corner. */
  about: ScenePoint | null;
  /** Ends of the side that a new corner is dragged out of; null for all else. */
  ends: readonly [ScenePoint, ScenePoint] | null;
  /** What is printed beside it. */
  says?: string;
}

/** The handles of what is chosen: its corners and sides, or the one that turns it; often none. */
export function handleSpots(contents: SceneContents, selected: Selection | null): HandleSpot[] {
  // What is locked has no handles: nothing of it can be dragged.
  if (selected === null || isLocked(contents, selected)) return [];
  if (selected.kind === "limit") return limitSpots(contents, selected);
  const work = contents.works.find((one) => selected.kind === "work" && one.id === selected.id);
  if (work === undefined) return [];
  const corners = cornersOfWork(work);
  if (corners === null) return turnSpots(work, contents);
  const base = work.kind === "building" ? work.base - contents.frame.origin[2] : null;
  return cornerSpots(contents, corners, {
    name: work.name,
    mark: work.kind === "trench" ? "bend" : "corner",
    level: base,
  });
}

function limitSpots(contents: SceneContents, { id }: Selection): HandleSpot[] {
  const limit = findLimit(contents.site, id);
  const corners = limit === null ? null : limitCorners(limit);
  if (limit === null || corners === null || limit.hidden === true) return [];
  return cornerSpots(contents, corners, { name: limitName(limit), mark: "corner", level: null });
}

function lifted(
  { frame, ground, found, stage }: SceneContents,
  at: PlanPoint,
  z: number | null,
): ScenePoint {
  const [x, y] = toScene(frame, at);
  return [x, y, z ?? (stage === "found" ? found : ground).heightAt(x, y)?.z ?? frame.centre[2]];
}

function cornerSpots(
  contents: SceneContents,
  { places, closed }: { places: readonly PlanPoint[]; closed: boolean },
  { name, mark, level }: { name: string; mark: string; level: number | null },
): HandleSpot[] {
  const slide: Slide = level === null ? { ground: contents.found } : { level };
  const corners = places.map((place, index): HandleSpot => ({
    key: `corner-${index}`,
    label: words.drawing.corner.move(mark, String(index + 1), name),
    grip: { part: "corner", index },
    place,
    at: lifted(contents, place, level),
    ...{ slide, about: null, ends: null },
  }));
  const sides = places.flatMap((a, side): HandleSpot[] => {
    const b = places[side + 1] ?? (closed ? places[0] : undefined);
    if (b === undefined) return [];
    const place: PlanPoint = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    return [
      {
        key: `side-${side}`,
        label: words.drawing.corner.add(mark, String(side + 1), name),
        grip: { part: "side", side },
        place,
        at: lifted(contents, place, level),
        ...{ slide, about: null },
        ends: [lifted(contents, a, level), lifted(contents, b, level)],
      },
    ];
  });
  return [...corners, ...sides];
}

function turnSpots(work: Work, contents: SceneContents): HandleSpot[] {
  if (work.kind !== "tank" && work.kind !== "bed") return [];
  const { frame, stage } = contents;
  const turn = (work.bearing * Math.PI) / 180;
  const out = (work.kind === "tank" ? work.body.length / 2 + work.overdig : work.length / 2) + 1.2;
  const place: PlanPoint = [work.at[0] + Math.sin(turn) * out, work.at[1] + Math.cos(turn) * out];
  const level =
    work.kind === "bed" && isSet(stage) ? work.base + work.height - frame.origin[2] : null;
  return [
    {
      key: "turn",
      label: words.scene.turnBearingDegrees(work.name, Math.round(work.bearing)),
      grip: { part: "turn", centre: work.at, bearing: work.bearing },
      place,
      at: lifted(contents, place, level),
      about: workAnchor(work, contents),
      slide: level === null ? slideFor(contents, { kind: "work", id: work.id }) : { level },
      ends: null,
    },
  ];
}

/** px that a handle that turns keeps from the middle of its thing. */
const NEAREST = 52;
/** px of a side on the screen that leave room for a handle between those of its ends. */
const LEAST_SIDE = 84;

/**
 * Puts the handles' elements where they stand on the screen now; one for each spot, in order. The boxes
 * of those that stand apart from the thing.
 */
export function placeHandles(
  layer: HTMLElement,
  spots: readonly HandleSpot[],
  view: SceneView,
): readonly ScreenBox[] {
  const buttons = [...layer.querySelectorAll<HTMLElement>(".scene-handle")];
  return spots.flatMap((spot, i) => {
    const at = projectPoint(view, spot.at);
    const button = buttons[i];
    if (button === undefined) return [];
    button.hidden = at === null || !hasRoom(spot, view) || !canRise(spot, view);
    if (at === null) return [];
    const clear = spot.about === null ? at : clearOf(at, projectPoint(view, spot.about));
    button.style.transform = `translate(${Math.round(clear.left)}px, ${Math.round(clear.top)}px)`;
    // Corners and sides may be many and stand on the thing itself: labels cannot keep clear of all.
    const isApart = spot.grip.part === "turn" || spot.grip.part === "raise";
    if (button.hidden || !isApart) return [];
    return [{ left: clear.left - SEEN / 2, top: clear.top - SEEN / 2, width: SEEN, height: SEEN }];
  });
}

/** px of a handle that are seen, with a little air. */
const SEEN = 24;

/** px that a metre upwards must take on the screen for a hand to raise by it. */
const LEAST_RISE = 4;

function canRise({ grip, at }: HandleSpot, view: SceneView): boolean {
  return grip.part !== "raise" || pixelsPerMetre(view, at) >= LEAST_RISE;
}

function hasRoom({ ends }: HandleSpot, view: SceneView): boolean {
  if (ends === null) return true;
  const [a, b] = [projectPoint(view, ends[0]), projectPoint(view, ends[1])];
  return a !== null && b !== null && Math.hypot(a.left - b.left, a.top - b.top) >= LEAST_SIDE;
}

/** The place pushed out to at least `NEAREST` px from the middle, so that a finger can tell them apart. */
function clearOf(at: ScreenPoint, middle: ScreenPoint | null): ScreenPoint {
  if (middle === null) return at;
  const [dx, dy] = [at.left - middle.left, at.top - middle.top];
  const far = Math.hypot(dx, dy);
  if (far >= NEAREST || far < 0.5) return at;
  return { left: middle.left + (dx / far) * NEAREST, top: middle.top + (dy / far) * NEAREST };
}
