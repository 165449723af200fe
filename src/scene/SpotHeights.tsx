import { useMemo, useRef, type ReactElement } from "react";
import { elevation } from "../units/index.js";
import type { ScreenPoint } from "./dragging.js";
import { toScene, type ScenePoint } from "./frame.js";
import { RANK, useOverLayer } from "./overLayers.js";
import { standingBoxes, type SceneContents } from "./sceneTargets.js";
import { projectPoint, type SceneView } from "./sceneView.js";
import { laySpots, type ScreenBox } from "./spotLayout.js";

/** The most heights that are written: more could not be read, and would slow the page. */
const MOST = 300;

interface SpotHeightsProps {
  contents: SceneContents;
  view: SceneView;
}

/** Elevations beside the survey points, left out where they would run into each other. */
export function SpotHeights({ contents, view }: SpotHeightsProps): ReactElement {
  const { site, frame } = contents;
  const spots = useMemo(
    () =>
      site.survey.points.slice(0, MOST).map((point) => {
        const [x, y] = toScene(frame, [point.x, point.y]);
        const at: ScenePoint = [x, y, point.z - frame.origin[2]];
        return {
          id: point.id,
          at,
          text: elevation.print(point.z, site.units, { digits: 1, bare: true }),
        };
      }),
    [site, frame],
  );
  const layer = useRef<HTMLDivElement>(null);
  useOverLayer(view, RANK.heights, (taken) => {
    if (layer.current !== null) placeSpots(layer.current, spots, contents, view, taken);
    return [];
  });
  return (
    <div className="scene-spots" ref={layer} aria-hidden="true">
      {spots.map((spot) => (
        <span key={spot.id}>{spot.text}</span>
      ))}
    </div>
  );
}

/** px of a written height: a letter's width, a line, and what is kept free beside it. */
const LETTER = 6.6;
const LINE = 13;
const FREE = 5;

function placeSpots(
  layer: HTMLElement,
  spots: readonly { at: ScenePoint; text: string }[],
  contents: SceneContents,
  view: SceneView,
  before: readonly ScreenBox[],
): void {
  const seats = spots.map((spot) => seatsAt(projectPoint(view, spot.at), spot.text));
  const taken = [...before, ...standingBoxes(contents, view)];
  const places = laySpots(seats, taken, spotBounds(view));
  places.forEach((seat, i) => {
    const text = layer.children[i];
    if (!(text instanceof HTMLElement)) return;
    const box = seat === null ? undefined : seats[i]?.[seat];
    text.hidden = box === undefined;
    if (box === undefined) return;
    text.style.transform = `translate(${Math.round(box.left)}px, ${Math.round(box.top)}px)`;
  });
}

/** Beside the cross, to the right of it or else to the left, a little above or below. */
function seatsAt(at: ScreenPoint | null, text: string): ScreenBox[] {
  if (at === null) return [];
  const [width, height] = [text.length * LETTER + FREE, LINE + 1];
  const right = at.left + 5;
  const left = at.left - 5 - width + FREE;
  return [
    { left: right, top: at.top - 13, width, height },
    { left, top: at.top - 13, width, height },
    { left: right, top: at.top, width, height },
    { left, top: at.top, width, height },
  ];
}

/** Where heights may be written: all of the scene but what the page lays over its foot. */
export function spotBounds(view: SceneView): ScreenBox {
  return { left: 4, top: 4, width: view.width - 8, height: view.height - 8 };
}
