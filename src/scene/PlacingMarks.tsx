import { useMemo, type ReactElement } from "react";
import type { PlanPoint } from "../site/index.js";
import { drape } from "./drape.js";
import { toScene, type SceneFrame } from "./frame.js";
import { chainSegments, InkLines } from "./InkLines.js";
import { shapeOf } from "./placing.js";
import type { ScenePalette } from "./palette.js";
import type { StageGround } from "./stageGround.js";
import type { PlacingDraft } from "./usePlacing.js";

/** What of a thing that is being placed is drawn. */
export type DrawnDraft = Pick<PlacingDraft, "corners" | "hover" | "placing">;

interface PlacingMarksProps {
  draft: DrawnDraft;
  frame: SceneFrame;
  ground: StageGround;
  palette: ScenePalette;
}

/** The crosshair where the next click goes, and the rubber line of the corners so far. */
export function PlacingMarks({ draft, frame, ground, palette }: PlacingMarksProps): ReactElement {
  const arm = Math.max(0.8, frame.reach / 28);
  const { corners, hover, placing } = draft;
  const outline = shapeOf(placing) === "outline";
  const cross = useMemo(() => {
    if (hover === null) return new Float32Array();
    const [x, y] = toScene(frame, hover);
    const arms: PlanPoint[][] = [
      [
        [x - arm, y],
        [x - arm * 0.2, y],
      ],
      [
        [x + arm * 0.2, y],
        [x + arm, y],
      ],
      [
        [x, y - arm],
        [x, y - arm * 0.2],
      ],
      [
        [x, y + arm * 0.2],
        [x, y + arm],
      ],
    ];
    return Float32Array.from(
      arms.flatMap((path) => [...chainSegments(drape(path, ground, 0.06, false, 0.25), false)]),
    );
  }, [hover, frame, ground, arm]);
  const rubber = useMemo(() => {
    const path = [...corners, ...(hover === null ? [] : [hover])].map((at) => toScene(frame, at));
    const closed = outline && path.length > 2;
    return chainSegments(drape(path, ground, 0.06, closed), closed);
  }, [corners, hover, outline, frame, ground]);
  return (
    <group>
      <InkLines segments={cross} colour={palette.stake} width={2.4} through />
      <InkLines segments={rubber} colour={palette.stake} width={2.2} through />
    </group>
  );
}
