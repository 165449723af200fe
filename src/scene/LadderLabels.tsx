import { useRef, type ReactElement } from "react";
import type { Ladder } from "../estimate/index.js";
import { length } from "../units/index.js";
import { words } from "../words/index.js";
import type { ScreenPoint } from "./dragging.js";
import { toScene, type SceneFrame } from "./frame.js";
import { RANK, useOverLayer } from "./overLayers.js";
import type { SceneContents } from "./sceneTargets.js";
import { projectPoint, type SceneView } from "./sceneView.js";
import { sharedArea, type ScreenBox } from "./spotLayout.js";
import "./ladders.css";

interface LadderLabelsProps {
  contents: SceneContents;
  view: SceneView;
}

/** How long each ladder is, written over its top, while the holes stand open. */
export function LadderLabels({ contents, view }: LadderLabelsProps): ReactElement | null {
  const layer = useRef<HTMLDivElement>(null);
  const { estimate, frame, site } = contents;
  const ladders = (estimate?.holes ?? []).flatMap((hole) => hole.ladders);
  useOverLayer(view, RANK.ladders, (taken) => place(layer.current, ladders, frame, view, taken));
  if (ladders.length === 0) return null;
  return (
    <div className="scene-ladders" ref={layer} aria-hidden="true">
      {ladders.map((ladder, i) => (
        <span key={i}>{words.trench.ladderTag(length.print(ladder.length, site.units))}</span>
      ))}
    </div>
  );
}

/** px between a ladder's top and what is written of it. */
const OFF = 6;

/** Beside each ladder's top, or under it or over it: the first that covers nothing; else left out. */
function place(
  layer: HTMLElement | null,
  ladders: readonly Ladder[],
  frame: SceneFrame,
  view: SceneView,
  taken: readonly ScreenBox[],
): readonly ScreenBox[] {
  const stood: ScreenBox[] = [];
  ladders.forEach(({ at, floor, length: long }, i) => {
    const label = layer?.children[i];
    if (!(label instanceof HTMLElement)) return;
    const [x, y] = toScene(frame, at);
    const top = projectPoint(view, [x, y, floor + long - frame.origin[2]]);
    // What is hidden has no size.
    label.hidden = false;
    const size = { width: label.offsetWidth, height: label.offsetHeight };
    const full = [...taken, ...stood];
    const seat =
      top && seatsAbout(top, size).find((one) => !full.some((box) => sharedArea(one, box) > 0));
    label.hidden = !seat;
    if (!seat) return;
    stood.push(seat);
    label.style.transform = `translate(${Math.round(seat.left)}px, ${Math.round(seat.top)}px)`;
  });
  return stood;
}

function seatsAbout(
  { left, top }: ScreenPoint,
  { width, height }: { width: number; height: number },
): ScreenBox[] {
  const middle = top - height / 2;
  const aside = [
    [left + OFF, middle],
    [left - OFF - width, middle],
    [left - width / 2, top + OFF],
    [left - width / 2, top - OFF - height],
    [left + OFF, middle + height],
    [left - OFF - width, middle + height],
  ] as const;
  return aside.map(([x, y]) => ({ left: x, top: y, width, height }));
}
