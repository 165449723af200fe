import { useMemo, useRef, type ReactElement } from "react";
import { FACE, type FoundContours } from "../estimate/index.js";
import { elevation } from "../units/index.js";
import type { ScreenPoint } from "./dragging.js";
import { toScene, type ScenePoint } from "./frame.js";
import { RANK, useOverLayer } from "./overLayers.js";
import { standingBoxes, type SceneContents } from "./sceneTargets.js";
import { projectPoint, type SceneView } from "./sceneView.js";
import { spotBounds } from "./SpotHeights.js";
import { laySpots, type ScreenBox } from "./spotLayout.js";

interface ContourLabelsProps {
  lines: FoundContours;
  contents: SceneContents;
  view: SceneView;
}

/** The elevation of each heavy contour, written once on its longest piece. */
export function ContourLabels({ lines, contents, view }: ContourLabelsProps): ReactElement {
  const spots = useMemo(() => contourSpots(lines, contents), [lines, contents]);
  const layer = useRef<HTMLDivElement>(null);
  useOverLayer(view, RANK.heights, (taken) => {
    if (layer.current !== null) placeSpots(layer.current, spots, contents, view, taken);
    return [];
  });
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

function contourSpots(lines: FoundContours, contents: SceneContents): ContourSpot[] {
  const longest = new Map<number, number>();
  const places = (line: number): number => lines.starts[line + 1]! - lines.starts[line]!;
  lines.elevations.forEach((elevation, line) => {
    const kept = longest.get(elevation);
    const isHeavy = lines.heavy[line] === 1;
    if (isHeavy && (kept === undefined || places(line) > places(kept)))
      longest.set(elevation, line);
  });
  return [...longest.values()].map((line) => spotOn(lines, line, contents));
}

/** The places along the line where the ground still is as found: a fifth along it if possible. */
function spotOn(lines: FoundContours, line: number, contents: SceneContents): ContourSpot {
  const { frame, site, ground } = contents;
  const level = lines.elevations[line]!;
  const z = level - frame.origin[2];
  const [start, end] = [lines.starts[line]!, lines.starts[line + 1]!];
  const { origin } = lines;
  const place = (i: number) =>
    toScene(frame, [lines.places[2 * i]! + origin[0], lines.places[2 * i + 1]! + origin[1]]);
  const seats = [0.2, 0.3, 0.75, 0.5, 0.1, 0.4, 0.6, 0.85].flatMap((share) => {
    const index = start + Math.floor((end - start - 1) * share);
    if (index + 1 >= end) return [];
    const from = place(index);
    if (ground.heightAt(from[0], from[1])?.face !== FACE.found) return [];
    return [{ at: [...from, z] as ScenePoint, on: [...place(index + 1), z] as ScenePoint }];
  });
  const text = elevation.print(level, site.units, {
    digits: wholeDigits(level, site.units),
    bare: true,
  });
  return { key: level, text, seats };
}

/** Whole numbers where the contour has one. */
function wholeDigits(level: number, units: "us" | "metric"): number {
  const shown = elevation.toSystem(level, units);
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
  before: readonly ScreenBox[],
): void {
  const written = spots.map((spot) =>
    spot.seats.flatMap((seat) => writtenAt(seat, spot.text, view) ?? []),
  );
  const taken = [...before, ...standingBoxes(contents, view)];
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
