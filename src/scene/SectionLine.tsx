import { useMemo, type ReactElement } from "react";
import type { PlanPoint } from "../site/index.js";
import { drape } from "./drape.js";
import { toScene, type SceneFrame } from "./frame.js";
import { chainSegments, InkLines } from "./InkLines.js";
import type { ScenePalette } from "./palette.js";
import type { StageGround } from "./stageGround.js";

interface SectionLineProps {
  ends: readonly PlanPoint[];
  /** Where the pointer is while the line is drawn. */
  hover: PlanPoint | null;
  frame: SceneFrame;
  ground: StageGround;
  palette: ScenePalette;
}

/** The section's line on the ground as it stands, seen through what is in front of it. */
export function SectionLine(props: SectionLineProps): ReactElement {
  const { ends, hover, frame, ground, palette } = props;
  const segments = useMemo(() => {
    const drawn = ends.length < 2 && hover !== null ? [...ends, hover] : ends;
    const path = drawn.map((at) => toScene(frame, at));
    return chainSegments(drape(path, ground, 0.06, false, frame.reach / 150), false);
  }, [ends, hover, frame, ground]);
  const drawing = ends.length < 2;
  return (
    <InkLines
      segments={segments}
      colour={palette.stake}
      width={2.6}
      through
      {...(drawing ? { dash: frame.reach / 50 } : {})}
    />
  );
}
