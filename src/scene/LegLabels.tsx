import { useLayoutEffect, useMemo, useRef, type ReactElement } from "react";
import type { PlanPoint } from "../site/index.js";
import { distance } from "../units/index.js";
import { legLengths, type LegLength } from "./drawnFigures.js";
import { toScene } from "./frame.js";
import type { SceneContents } from "./sceneTargets.js";
import { projectPoint, type SceneView } from "./sceneView.js";

interface LegLabelsProps {
  places: readonly PlanPoint[];
  closed: boolean;
  contents: SceneContents;
  view: SceneView;
}

/** The length of each leg, written on the ground at its middle. */
export function LegLabels({ places, closed, contents, view }: LegLabelsProps): ReactElement {
  const legs = useMemo(() => legLengths(places, closed), [places, closed]);
  return <LengthLabels {...{ legs, contents, view }} />;
}

interface LengthLabelsProps {
  legs: readonly LegLength[];
  contents: SceneContents;
  view: SceneView;
}

/** Lengths, each written at its place on the ground. */
export function LengthLabels({ legs, contents, view }: LengthLabelsProps): ReactElement {
  const layer = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => place(layer.current, legs, contents, view));
  useLayoutEffect(
    () => view.subscribe(() => place(layer.current, legs, contents, view)),
    [legs, contents, view],
  );
  return (
    <div className="scene-legs" ref={layer} aria-hidden="true">
      {legs.map(({ length }, i) => (
        <span key={i}>{distance.print(length, contents.site.units)}</span>
      ))}
    </div>
  );
}

function place(
  layer: HTMLElement | null,
  legs: readonly LegLength[],
  { frame, ground }: SceneContents,
  view: SceneView,
): void {
  legs.forEach(({ middle }, i) => {
    const label = layer?.children[i];
    if (!(label instanceof HTMLElement)) return;
    const [x, y] = toScene(frame, middle);
    const z = ground.heightAt(x, y)?.z;
    const at = z === undefined ? null : projectPoint(view, [x, y, z]);
    label.hidden = at === null;
    if (at === null) return;
    label.style.transform = `translate(${Math.round(at.left)}px, ${Math.round(at.top)}px) translate(-50%, -50%)`;
  });
}
