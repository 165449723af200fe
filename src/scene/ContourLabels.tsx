import { useEffect, useLayoutEffect, useMemo, useRef, type ReactElement } from "react";
import { FACE, type ContourLine } from "../estimate/index.js";
import { elevation } from "../units/index.js";
import { toScene, type ScenePoint } from "./frame.js";
import type { SceneContents } from "./sceneTargets.js";
import { projectPoint, type SceneView } from "./sceneView.js";

interface ContourLabelsProps {
  lines: readonly ContourLine[];
  contents: SceneContents;
  view: SceneView;
}

/** The elevation of each heavy contour, written once on its longest piece. */
export function ContourLabels({ lines, contents, view }: ContourLabelsProps): ReactElement {
  const spots = useMemo(() => contourSpots(lines, contents), [lines, contents]);
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
    <div className="scene-spots scene-contour-spots" ref={layer} aria-hidden="true">
      {spots.map((spot) => (
        <span key={spot.key}>{spot.text}</span>
      ))}
    </div>
  );
}

interface ContourSpot {
  key: number;
  text: string;
  at: ScenePoint;
  /** A little way on along the line, for the writing's slant. */
  on: ScenePoint;
}

function contourSpots(lines: readonly ContourLine[], contents: SceneContents): ContourSpot[] {
  const longest = new Map<number, ContourLine>();
  for (const line of lines) {
    const kept = longest.get(line.elevation);
    if (line.heavy && (kept === undefined || line.line.length > kept.line.length)) {
      longest.set(line.elevation, line);
    }
  }
  return [...longest.values()].flatMap((line) => spotOn(line, contents) ?? []);
}

/** A place about a fifth along the line where the ground still is as found; null if there is none. */
function spotOn(line: ContourLine, contents: SceneContents): ContourSpot | null {
  const { frame, site, ground } = contents;
  const z = line.elevation - frame.origin[2];
  for (const share of [0.2, 0.3, 0.75, 0.5, 0.1]) {
    const index = Math.floor((line.line.length - 1) * share);
    const [a, b] = [line.line[index], line.line[index + 1]];
    if (a === undefined || b === undefined) continue;
    const from = toScene(frame, [a[0], a[1]]);
    const to = toScene(frame, [b[0], b[1]]);
    if (ground.heightAt(from[0], from[1])?.face !== FACE.found) continue;
    const text = elevation.print(line.elevation, site.units, {
      digits: wholeDigits(line, site.units),
      bare: true,
    });
    return { key: line.elevation, text, at: [...from, z], on: [...to, z] };
  }
  return null;
}

/** Whole numbers where the contour has one. */
function wholeDigits(line: ContourLine, units: "us" | "metric"): number {
  const shown = elevation.toSystem(line.elevation, units);
  return Math.abs(shown - Math.round(shown)) < 0.01 ? 0 : 1;
}

function placeSpots(layer: HTMLElement, spots: readonly ContourSpot[], view: SceneView): void {
  spots.forEach((spot, i) => {
    const text = layer.children[i];
    if (!(text instanceof HTMLElement)) return;
    const at = projectPoint(view, spot.at);
    const on = projectPoint(view, spot.on);
    text.hidden = at === null || on === null;
    if (at === null || on === null) return;
    const slant = (Math.atan2(on.top - at.top, on.left - at.left) * 180) / Math.PI;
    // Never upside down.
    const upright = slant > 90 ? slant - 180 : slant < -90 ? slant + 180 : slant;
    text.style.transform = `translate(${at.left.toFixed(1)}px, ${at.top.toFixed(1)}px) rotate(${upright.toFixed(1)}deg) translate(-50%, -50%)`;
  });
}
