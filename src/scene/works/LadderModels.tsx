import { useMemo, type ReactElement } from "react";
import type { Estimate } from "../../estimate/index.js";
import { toScene, type SceneFrame } from "../frame.js";
import { InkLines } from "../InkLines.js";
import type { ScenePalette } from "../palette.js";

interface LadderModelsProps {
  estimate: Estimate | null;
  frame: SceneFrame;
  palette: ScenePalette;
}

/** m: half the width of a ladder between its rails, and from rung to rung. Drawn so, no more. */
const HALF = 0.22;
const RUNG = 0.3;

/** The ladders that the holes ask for, each upright on the floor at its place. */
export function LadderModels({ estimate, frame, palette }: LadderModelsProps): ReactElement | null {
  const segments = useMemo(() => ladderLines(estimate, frame), [estimate, frame]);
  if (segments.length === 0) return null;
  return <InkLines segments={segments} colour={palette.ink} width={1.6} through />;
}

/** Rails and rungs of all ladders as pairs of ends, scene frame. */
export function ladderLines(estimate: Estimate | null, frame: SceneFrame): Float32Array {
  const ends = (estimate?.holes ?? []).flatMap((hole) =>
    hole.ladders.flatMap(({ at, floor, length }) => {
      const [x, y] = toScene(frame, at);
      const foot = floor - frame.origin[2];
      const rails = [-HALF, HALF].flatMap((off) => [x + off, y, foot, x + off, y, foot + length]);
      const count = Math.floor(length / RUNG);
      const rungs = Array.from({ length: count }, (_, k) => foot + (k + 1) * RUNG);
      return [...rails, ...rungs.flatMap((z) => [x - HALF, y, z, x + HALF, y, z])];
    }),
  );
  return Float32Array.from(ends);
}
