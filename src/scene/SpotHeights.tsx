import { useEffect, useLayoutEffect, useMemo, useRef, type ReactElement } from "react";
import { elevation } from "../units/index.js";
import { toScene, type ScenePoint } from "./frame.js";
import type { SceneContents } from "./sceneTargets.js";
import { projectPoint, type SceneView } from "./sceneView.js";

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
  useLayoutEffect(() => {
    if (layer.current !== null) placeSpots(layer.current, spots, view);
  });
  useEffect(
    () =>
      view.subscribe(() => {
        if (layer.current !== null) placeSpots(layer.current, spots, view);
      }),
    [spots, view],
  );
  return (
    <div className="scene-spots" ref={layer} aria-hidden="true">
      {spots.map((spot) => (
        <span key={spot.id}>{spot.text}</span>
      ))}
    </div>
  );
}

function placeSpots(
  layer: HTMLElement,
  spots: readonly { at: ScenePoint }[],
  view: SceneView,
): void {
  const taken = new Set<string>();
  spots.forEach((spot, i) => {
    const text = layer.children[i];
    if (!(text instanceof HTMLElement)) return;
    const at = projectPoint(view, spot.at);
    const cells = at === null ? [] : cellsAround(at.left, at.top);
    const free = at !== null && cells.every((cell) => !taken.has(cell));
    text.hidden = !free;
    if (at === null || !free) return;
    for (const cell of cells) taken.add(cell);
    text.style.transform = `translate(${Math.round(at.left + 5)}px, ${Math.round(at.top - 13)}px)`;
  });
}

/** The squares of 12 px that a written height covers. */
function cellsAround(left: number, top: number): string[] {
  const [i, j] = [Math.floor(left / 12), Math.floor(top / 12)];
  return [0, 1, 2, 3].flatMap((k) => [`${i + k},${j}`, `${i + k},${j - 1}`]);
}
