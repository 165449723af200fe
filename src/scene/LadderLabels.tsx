import { useLayoutEffect, useRef, type ReactElement } from "react";
import type { Ladder } from "../estimate/index.js";
import { length } from "../units/index.js";
import { words } from "../words/index.js";
import { toScene, type SceneFrame } from "./frame.js";
import type { SceneContents } from "./sceneTargets.js";
import { projectPoint, type SceneView } from "./sceneView.js";
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
  useLayoutEffect(() => place(layer.current, ladders, frame, view));
  useLayoutEffect(
    () => view.subscribe(() => place(layer.current, ladders, frame, view)),
    [ladders, frame, view],
  );
  if (ladders.length === 0) return null;
  return (
    <div className="scene-ladders" ref={layer} aria-hidden="true">
      {ladders.map((ladder, i) => (
        <span key={i}>{words.trench.ladderTag(length.print(ladder.length, site.units))}</span>
      ))}
    </div>
  );
}

function place(
  layer: HTMLElement | null,
  ladders: readonly Ladder[],
  frame: SceneFrame,
  view: SceneView,
): void {
  ladders.forEach(({ at, floor, length: long }, i) => {
    const label = layer?.children[i];
    if (!(label instanceof HTMLElement)) return;
    const [x, y] = toScene(frame, at);
    const top = projectPoint(view, [x, y, floor + long - frame.origin[2]]);
    label.hidden = top === null;
    if (top === null) return;
    label.style.transform = `translate(${Math.round(top.left)}px, ${Math.round(top.top)}px) translate(6px, -50%)`;
  });
}
