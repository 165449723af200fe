import { useEffect, useRef, type ReactElement } from "react";
import { Vector3 } from "three";
import type { Site } from "../site/index.js";
import { scaleBar } from "./figures.js";
import type { SceneFrame } from "./frame.js";
import { words } from "../words/index.js";
import type { ViewKind } from "./props.js";
import { metresPerPixel, type SceneView } from "./sceneView.js";

interface SceneCornerProps {
  units: Site["units"];
  frame: SceneFrame;
  view: SceneView;
  kind: ViewKind;
  /** Turns the view to what is picked; null when nothing is. */
  onFrame: (() => void) | null;
}

/**
 * The north arrow (which also shows the whole lot again, north up), the button that shows what is
 * picked, and the scale bar, kept to the camera.
 */
export function SceneCorner({ units, frame, view, kind, onFrame }: SceneCornerProps): ReactElement {
  const needle = useRef<SVGSVGElement>(null);
  const bar = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const update = (): void => {
      if (needle.current !== null) {
        needle.current.style.transform = `rotate(${northOnScreen(view)}deg)`;
      }
      if (bar.current !== null) drawScale(bar.current, units, view);
    };
    update();
    return view.subscribe(update);
  }, [units, frame, view, kind]);
  const north = kind === "walk" ? words.looking.faceNorth : words.looking.wholeLot;
  return (
    <>
      <button
        type="button"
        className="scene-north"
        data-testid="scene-north"
        aria-label={north}
        title={north}
        onClick={() => view.fitLot(true)}
      >
        <svg ref={needle} viewBox="-20 -28 40 56" width="40" height="56" aria-hidden="true">
          <text y="-15" textAnchor="middle">
            {words.scene.northMark}
          </text>
          <path d="M0,-11 L8,20 L0,14 L-8,20 Z" />
        </svg>
      </button>
      {onFrame !== null && (
        <button
          type="button"
          className="scene-frame"
          data-testid="scene-frame"
          aria-label={words.looking.frame}
          title={words.looking.frameTitle}
          aria-keyshortcuts="F"
          onClick={onFrame}
        >
          <svg viewBox="-12 -12 24 24" width="24" height="24" aria-hidden="true">
            <path d="M-10,-4 V-10 H-4 M4,-10 H10 V-4 M10,4 V10 H4 M-4,10 H-10 V4" />
            <circle r="3.5" />
          </svg>
        </button>
      )}
      {/* On foot one length holds nowhere: what is near is large. */}
      <div className="scene-scale" data-testid="scene-scale" ref={bar} hidden={kind === "walk"}>
        <span className="scene-scale-text" />
        <span className="scene-scale-bar" aria-hidden="true" />
        {kind === "orbit" && <span className="scene-scale-note">{words.scene.atMidView}</span>}
      </div>
    </>
  );
}

/** Degrees clockwise that north lies from the top of the screen, at the view's target. */
function northOnScreen(view: SceneView): number {
  if (view.camera === null) return 0;
  const right = new Vector3().setFromMatrixColumn(view.camera.matrixWorld, 0);
  return (Math.atan2(right.y, right.x) * 180) / Math.PI;
}

function drawScale(bar: HTMLElement, units: Site["units"], view: SceneView): void {
  const most = Math.min(140, view.width * 0.28);
  const scale = scaleBar(units, metresPerPixel(view, view.target), most);
  bar.dataset["metres"] = String(scale.metres);
  bar.style.setProperty("--scale-px", `${scale.pixels.toFixed(3)}px`);
  const text = bar.querySelector(".scene-scale-text");
  if (text !== null) text.textContent = scale.text;
}
