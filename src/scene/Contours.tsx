import { useMemo, type ReactElement } from "react";
import { FACE, type FoundContours, subdivide } from "../estimate/index.js";
import type { PlanPoint } from "../site/index.js";
import { VEIL_ORDER } from "./earthMaterial.js";
import type { ScenePoint } from "./frame.js";
import { InkLines } from "./InkLines.js";
import type { ScenePalette } from "./palette.js";
import type { StageGround } from "./stageGround.js";

interface ContoursProps {
  lines: FoundContours;
  origin: ScenePoint;
  /** The ground as it stands: contours are left out where it is no longer as found. */
  ground: StageGround;
  palette: ScenePalette;
  /** True over ground that is seen through. */
  through: boolean;
}

/** Contours of the ground as found in brown ink, every fifth heavier, where that ground still is. */
export function Contours({ lines, origin, ground, palette, through }: ContoursProps): ReactElement {
  const light = useMemo(
    () => contourSegments(lines, false, origin, ground),
    [lines, origin, ground],
  );
  const heavy = useMemo(
    () => contourSegments(lines, true, origin, ground),
    [lines, origin, ground],
  );
  const order = through ? VEIL_ORDER.ink : 1;
  return (
    <group>
      <InkLines
        segments={light}
        colour={palette.contour}
        width={0.9}
        opacity={0.42}
        order={order}
      />
      <InkLines
        segments={heavy}
        colour={palette.contour}
        width={1.7}
        opacity={0.75}
        order={order}
      />
    </group>
  );
}

/** m above the ground, so that the lines are not lost in it. */
const LIFT = 0.025;

/** Ends of the legs that lie on untouched ground, and of the parts that do of those that do not. */
function contourSegments(
  lines: FoundContours,
  heavy: boolean,
  origin: ScenePoint,
  ground: StageGround,
): Float32Array {
  const { starts, places, triangles } = lines;
  const [sx, sy] = [lines.origin[0] - origin[0], lines.origin[1] - origin[1]];
  const ends: number[] = [];
  lines.elevations.forEach((elevation, line) => {
    if (lines.heavy[line] !== (heavy ? 1 : 0)) return;
    const z = elevation - origin[2] + LIFT;
    for (let i = starts[line]!; i + 1 < starts[line + 1]!; i++) {
      const ax = places[2 * i]! + sx;
      const ay = places[2 * i + 1]! + sy;
      const bx = places[2 * i + 2]! + sx;
      const by = places[2 * i + 3]! + sy;
      // A leg crosses one triangle of the survey, and most triangles are as found.
      if (!ground.isTouched(triangles[i]!)) ends.push(ax, ay, z, bx, by, z);
      else addFoundParts(ends, [ax, ay], [bx, by], z, ground);
    }
  });
  return Float32Array.from(ends);
}

function addFoundParts(
  ends: number[],
  from: PlanPoint,
  to: PlanPoint,
  z: number,
  ground: StageGround,
): void {
  const path = subdivide([from, to], 0.12);
  path.forEach((b, i) => {
    const a = path[i - 1];
    if (a === undefined) return;
    const there = ground.heightAt((a[0] + b[0]) / 2, (a[1] + b[1]) / 2);
    if (there !== null && there.face !== FACE.found) return;
    ends.push(a[0], a[1], z, b[0], b[1], z);
  });
}
