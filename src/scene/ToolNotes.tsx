import type { ReactElement } from "react";
import type { PlanPoint } from "../site/index.js";
import { GroundNote } from "./GroundNote.js";
import { MeasureDesk } from "./MeasureDesk.js";
import { PlacingDesk } from "./PlacingDesk.js";
import type { SiteSceneProps } from "./props.js";
import type { SceneContents } from "./sceneTargets.js";
import type { SceneView } from "./sceneView.js";
import { SectionHint } from "./SectionHint.js";
import type { WaterTool } from "./useWater.js";
import { WaterDesk } from "./WaterDesk.js";
import { WayNumbers } from "./WaterMarks.js";
import type { MeasureTool } from "./useMeasuring.js";
import type { PlacingTool } from "./usePlacing.js";
import { isDrawing, type SectionTool } from "./useSection.js";
import type { HeldDrag } from "./heldDrag.js";
import { HeldNote } from "./HeldNote.js";

interface ToolNotesProps {
  props: SiteSceneProps;
  contents: SceneContents;
  view: SceneView;
  tool: PlacingTool;
  section: SectionTool;
  measure: MeasureTool;
  water: WaterTool;
  held: HeldDrag;
  /** The place that was asked about. */
  asked: PlanPoint | null;
  onClose: () => void;
}

/** What the tool at work says, and what was asked of the ground. */
export function ToolNotes(given: ToolNotesProps): ReactElement {
  const { props, contents, view, tool, section, measure, water, held, asked, onClose } = given;
  return (
    <>
      {asked !== null && (
        <GroundNote
          {...{ contents, view }}
          at={asked}
          schemeId={props.schemeId}
          onClose={onClose}
        />
      )}
      {isDrawing(props.section) && (
        <SectionHint
          contents={contents}
          count={props.section?.length ?? 0}
          missed={section.missed}
          onAcross={props.onSectionAcross}
          onCancel={props.onSectionCancel}
        />
      )}
      <HeldNote {...{ held, contents, view }} />
      {measure.state !== null && (
        <MeasureDesk
          tool={measure}
          state={measure.state}
          contents={contents}
          onEnd={props.onMeasureEnd}
        />
      )}
      {water.isSetting && (
        <>
          <WayNumbers ways={water.ways} {...{ contents, view }} />
          <WaterDesk
            {...{ contents }}
            tool={water}
            onKeep={props.onKeepWay}
            onEnd={props.onWaterEnd}
          />
        </>
      )}
      {tool.draft !== null && (
        <PlacingDesk
          {...{ tool, contents, view }}
          draft={tool.draft}
          onCancel={props.onCancelPlacing}
        />
      )}
    </>
  );
}
