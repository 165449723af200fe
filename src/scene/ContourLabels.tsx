import { useEffect, useLayoutEffect, useMemo, useRef, type ReactElement } from "react";
import { FACE, type ContourLine } from "../estimate/index.js";
import { elevation } from "../units/index.js";
import type { ScreenPoint } from "./dragging.js";
import { toScene, type ScenePoint } from "./frame.js";
import { standingBoxes, type SceneContents } from "./sceneTargets.js";
import { projectPoint, type SceneView } from "./sceneView.js";
import { spotBounds } from "./SpotHeights.js";
import { laySpots, type ScreenBox } from "./spotLayout.js";

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
    if (layer.current !== null) placeSpots(layer.current, spots, contents, view);
  });
  useEffect(
    () =>
      view.subscribe(() => {
        if (layer.current !== null) placeSpots(layer.current, spots, contents, view);
      }),
    [spots, contents, view],
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
  /** Where it may be written, best first; each with a place a little way on, for the slant. */
  seats: readonly { at: ScenePoint; on: ScenePoint }[];
}

function contourSpots(lines: readonly ContourLine[], contents: SceneContents): ContourSpot[] {
  const longest = new Map<number, ContourLine>();
  for (const line of lines) {
    const kept = longest.get(line.elevation);
    if (line.heavy && (kept === undefined || line.line.length > kept.line.length)) {
      longest.set(line.elevation, line);
    }
  }
  return [...longest.values()].map((line) => spotOn(line, contents));
}

/** The places along the line where the ground still is as found: a fifth along it if possible. */
function spotOn(line: ContourLine, contents: SceneContents): ContourSpot {
  const { frame, site, ground } = contents;
  const z = line.elevation - frame.origin[2];
  const seats = [0.2, 0.3, 0.75, 0.5, 0.1, 0.4, 0.6, 0.85].flatMap((share) => {
    const index = Math.floor((line.line.length - 1) * share);
    const [a, b] = [line.line[index], line.line[index + 1]];
    if (a === undefined || b === undefined) return [];
    const from = toScene(frame, [a[0], a[1]]);
    const to = toScene(frame, [b[0], b[1]]);
    if (ground.heightAt(from[0], from[1])?.face !== FACE.found) return [];
    return [{ at: [...from, z] as ScenePoint, on: [...to, z] as ScenePoint }];
  });
  const text = elevation.print(line.elevation, site.units, {
    digits: wholeDigits(line, site.units),
    bare: true,
  });
  return { key: line.elevation, text, seats };
}

/** Whole numbers where the contour has one. */
function wholeDigits(line: ContourLine, units: "us" | "metric"): number {
  const shown = elevation.toSystem(line.elevation, units);
  return Math.abs(shown - Math.round(shown)) < 0.01 ? 0 : 1;
}

/** A seat as it shows: its middle and slant (degrees), and the box that the writing fills. */
interface Written {
  middle: ScreenPoint;
  slant: number;
  box: ScreenBox;
}

function placeSpots(
  layer: HTMLElement,
  spots: readonly ContourSpot[],
  contents: SceneContents,
  view: SceneView,
): void {
  const written = spots.map((spot) =>
    spot.seats.flatMap((seat) => writtenAt(seat, spot.text, view) ?? []),
  );
  const taken = [...view.tags, ...standingBoxes(contents, view)];
  const places = laySpots(
    written.map((seats) => seats.map((seat) => seat.box)),
    taken,
    spotBounds(view),
  );
  places.forEach((place, i) => {
    const text = layer.children[i];
    if (!(text instanceof HTMLElement)) return;
    const seat = place === null ? undefined : written[i]?.[place];
    text.hidden = seat === undefined;
    if (seat === undefined) return;
    const { left, top } = seat.middle;
    text.style.transform = `translate(${left.toFixed(1)}px, ${top.toFixed(1)}px) rotate(${seat.slant.toFixed(1)}deg) translate(-50%, -50%)`;
  });
}

function writtenAt(
  seat: { at: ScenePoint; on: ScenePoint },
  text: string,
  view: SceneView,
): Written | null {
  const at = projectPoint(view, seat.at);
  const on = projectPoint(view, seat.on);
  if (at === null || on === null) return null;
  const steep = (Math.atan2(on.top - at.top, on.left - at.left) * 180) / Math.PI;
  // Never upside down.
  const slant = steep > 90 ? steep - 180 : steep < -90 ? steep + 180 : steep;
  const [long, high] = [text.length * 6 + 4, 13];
  const turn = (Math.abs(slant) * Math.PI) / 180;
  const width = long * Math.cos(turn) + high * Math.sin(turn);
  const height = long * Math.sin(turn) + high * Math.cos(turn);
  const box = { left: at.left - width / 2, top: at.top - height / 2, width, height };
  return { middle: at, slant, box };
}
