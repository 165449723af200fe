import { useMemo, type ReactElement } from "react";
import type { PlanPoint } from "../site/index.js";
import { drape } from "./drape.js";
import { toScene, type SceneFrame } from "./frame.js";
import { chainSegments, InkLines } from "./InkLines.js";
import type { ScenePalette } from "./palette.js";
import type { CranePlace } from "./props.js";
import type { StageGround } from "./stageGround.js";

interface CranePlacesProps {
  places: readonly CranePlace[];
  frame: SceneFrame;
  ground: StageGround;
  palette: ScenePalette;
}

const CORNERS = 48;
/** m: half the square that marks a place whose crane's pads are not known. */
const SMALL_PAD = 1;

/**
 * Where the crane might stand: a square over its pads, with a ring at the radius that it lifts at.
 * The place that asks least of the crane is drawn in the stake's colour.
 */
export function CranePlaces({ places, frame, ground, palette }: CranePlacesProps): ReactElement {
  const [best, others] = useMemo(
    () =>
      [true, false].map((isBest) =>
        marks(
          places.filter((place) => place.isBest === isBest),
          frame,
          ground,
        ),
      ),
    [places, frame, ground],
  );
  return (
    <group>
      {others !== undefined && (
        <InkLines segments={others} colour={palette.ink} width={1.2} opacity={0.75} through />
      )}
      {best !== undefined && <InkLines segments={best} colour={palette.stake} width={2} through />}
    </group>
  );
}

function marks(
  places: readonly CranePlace[],
  frame: SceneFrame,
  ground: StageGround,
): Float32Array {
  const paths = places.flatMap(({ at, radii, spread }) => {
    const [x, y] = toScene(frame, at);
    return [
      ...radii.map((radius) => ring(x, y, radius, CORNERS, 0)),
      // The corners of a square lie on a ring of half its diagonal.
      ring(x, y, Math.max(SMALL_PAD, spread / 2) * Math.SQRT2, 4, Math.PI / 4),
    ];
  });
  return Float32Array.from(
    paths.flatMap((path) => [...chainSegments(drape(path, ground, 0.08, false, 1), false)]),
  );
}

function ring(x: number, y: number, radius: number, corners: number, from: number): PlanPoint[] {
  return Array.from({ length: corners + 1 }, (_, i): PlanPoint => {
    const turn = from + (2 * Math.PI * i) / corners;
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)];
  });
}
