/** Raising by hand: the upright grip over a work, and what a drag of it means. */
import { heightOf, type PlanPoint, type Site, type Work } from "../site/index.js";
import { elevation } from "../units/index.js";
import { words } from "../words/index.js";
import type { Grip } from "./dragging.js";
import { toScene } from "./frame.js";
import type { HandleSpot } from "./handleSpots.js";
import { slideFor } from "./pickAt.js";
import type { Selection } from "./props.js";
import { workAnchor, type SceneContents } from "./sceneTargets.js";
import { pixelsPerMetre, type SceneView } from "./sceneView.js";
import { isLocked } from "./shown.js";
import { workMiddle } from "../estimate/index.js";

/** The top of what is raised, elevation m, and how far its grip stands out from the middle, m. */
function gripPlace(work: Work): { top: number; beside: number } | null {
  switch (work.kind) {
    case "tank":
      return {
        top: work.base + work.body.height,
        beside: work.body.width / 2 + work.overdig + 0.8,
      };
    case "bed":
      return { top: work.base + work.height, beside: work.width / 2 + 0.8 };
    case "pad":
      return { top: work.top, beside: 0 };
    case "building":
      return { top: work.base + work.height, beside: 0 };
    default:
      return null;
  }
}

/** The grip that raises the chosen work; none for what has no height of its own, or is locked. */
export function raiseSpots(contents: SceneContents, selected: Selection | null): HandleSpot[] {
  const work = contents.works.find((one) => selected?.kind === "work" && one.id === selected.id);
  if (work === undefined || selected === null || isLocked(contents, selected)) return [];
  const [height, grip] = [heightOf(work), gripPlace(work)];
  if (height === null || grip === null) return [];
  const turn = "bearing" in work ? (work.bearing * Math.PI) / 180 : 0;
  const [mx, my] = workMiddle(work);
  const place: PlanPoint = [mx + Math.cos(turn) * grip.beside, my - Math.sin(turn) * grip.beside];
  const [x, y] = toScene(contents.frame, place);
  const says = elevation.print(height, contents.site.units);
  return [
    {
      key: "raise",
      label: words.picked.scene.raise(work.name, says),
      grip: { part: "raise", height, perMetre: 0 },
      place,
      at: [x, y, grip.top - contents.frame.origin[2]],
      about: grip.beside > 0 ? workAnchor(work, contents) : null,
      slide: slideFor(contents, selected),
      ends: null,
      says,
    },
  ];
}

/** The grip as it is pressed: with what a metre takes on the screen just then. */
export function pressedGrip({ grip, at }: HandleSpot, view: SceneView): Grip {
  return grip.part === "raise" ? { ...grip, perMetre: pixelsPerMetre(view, at) } : grip;
}

/** m that a raised thing's elevation snaps to: 0.1 ft or 0.05 m. */
export const riseStep = (units: Site["units"]): number => (units === "us" ? 0.1 * 0.3048 : 0.05);
