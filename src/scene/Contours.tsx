import { useMemo, type ReactElement } from "react";
import { FACE, type ContourLine } from "../estimate/index.js";
import type { PlanPoint } from "../site/index.js";
import type { ScenePoint } from "./frame.js";
import { InkLines } from "./InkLines.js";
import type { ScenePalette } from "./palette.js";
import type { StageGround } from "./stageGround.js";
import { subdivide } from "./workShapes.js";

interface ContoursProps {
  lines: readonly ContourLine[];
  origin: ScenePoint;
  /** The ground as it stands: contours are left out where it is no longer as found. */
  ground: StageGround;
  palette: ScenePalette;
}

/** Contours of the ground as found in brown ink, every fifth heavier, where that ground still is. */
export function Contours({ lines, origin, ground, palette }: ContoursProps): ReactElement {
  const light = useMemo(
    () => contourSegments(lines, false, origin, ground),
    [lines, origin, ground],
  );
  const heavy = useMemo(
    () => contourSegments(lines, true, origin, ground),
    [lines, origin, ground],
  );
  return (
    <group>
      <InkLines segments={light} colour={palette.contour} width={0.9} opacity={0.42} />
      <InkLines segments={heavy} colour={palette.contour} width={1.7} opacity={0.75} />
    </group>
  );
}

/** m above the ground, so that the lines are not lost in it. */
const LIFT = 0.025;

function contourSegments(
  lines: readonly ContourLine[],
  heavy: boolean,
  origin: ScenePoint,
  ground: StageGround,
): Float32Array {
  const ends: number[] = [];
  for (const line of lines) {
    if (line.heavy !== heavy) continue;
    const z = line.elevation - origin[2] + LIFT;
    const path = line.line.map(([x, y]): PlanPoint => [x - origin[0], y - origin[1]]);
    const first = path[0];
    if (line.closed && first !== undefined) path.push(first);
    path.forEach((to, i) => {
      const from = path[i - 1];
      if (from !== undefined) addLeg(ends, from, to, z, ground);
    });
  }
  return Float32Array.from(ends);
}

/** Adds a leg whole, or only its parts over untouched ground where it may cross a work. */
function addLeg(
  ends: number[],
  from: PlanPoint,
  to: PlanPoint,
  z: number,
  ground: StageGround,
): void {
  const box = ground.worked;
  const clear =
    box === null ||
    Math.max(from[0], to[0]) < box[0] ||
    Math.max(from[1], to[1]) < box[1] ||
    Math.min(from[0], to[0]) > box[2] ||
    Math.min(from[1], to[1]) > box[3];
  const path = clear ? [from, to] : subdivide([from, to], 0.12);
  path.forEach((b, i) => {
    const a = path[i - 1];
    if (a === undefined) return;
    const there = clear ? null : ground.heightAt((a[0] + b[0]) / 2, (a[1] + b[1]) / 2);
    if (there !== null && there.face !== FACE.found) return;
    ends.push(a[0], a[1], z, b[0], b[1], z);
  });
}
