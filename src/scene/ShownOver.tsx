import type { ReactElement } from "react";
import type { FoundContours } from "../estimate/index.js";
import { ContourLabels } from "./ContourLabels.js";
import type { DepthBands } from "./depthBands.js";
import { DepthLegend } from "./DepthLegend.js";
import type { LimitMarksShown } from "./marksOfLimits.js";
import { LimitTags } from "./LimitTags.js";
import type { MachineAtWork } from "./machinesAtWork.js";
import { MachineTag } from "./MachineTag.js";
import { NextProbeTag } from "./ProbeMap.js";
import type { CranePlace, SiteSceneProps } from "./props.js";
import type { SceneContents } from "./sceneTargets.js";
import type { SceneView } from "./sceneView.js";
import { SectionEnds } from "./SectionEnds.js";
import { SpotHeights } from "./SpotHeights.js";
import { StandHandles, type StandDraft } from "./StandHandles.js";

interface ShownOverProps {
  props: Pick<
    SiteSceneProps,
    "looks" | "site" | "onStandMove" | "probeWorth" | "section" | "onSectionMove"
  >;
  contents: SceneContents;
  view: SceneView;
  bands: DepthBands | null;
  machine: MachineAtWork | null;
  stands: readonly CranePlace[];
  limitMarks: LimitMarksShown | null;
  /** True while something is placed: then nothing here takes taps or the focus. */
  idle: boolean;
  onDraft: (draft: StandDraft | null) => void;
}

/** What lies over the ground beside labels: section, next probe, legend of depths, machines, stands. */
export function ShownOver(given: ShownOverProps): ReactElement {
  const { props, contents, view, bands, machine, stands, limitMarks, idle, onDraft } = given;
  const [from, to] = props.section ?? [];
  const nextProbe = props.probeWorth?.best ?? null;
  return (
    <>
      {nextProbe !== null && <NextProbeTag at={nextProbe} contents={contents} view={view} />}
      {from !== undefined && to !== undefined && (
        <SectionEnds {...{ contents, view }} line={[from, to]} onMove={props.onSectionMove} />
      )}
      {props.looks.depths && <DepthLegend bands={bands} units={props.site.units} />}
      {stands.length > 0 && !idle && (
        <StandHandles {...{ contents, view, onDraft }} places={stands} onMove={props.onStandMove} />
      )}
      {limitMarks !== null && <LimitTags {...{ contents, view }} marks={limitMarks} />}
      {machine !== null && <MachineTag {...{ machine, view, idle }} />}
    </>
  );
}

/** Elevations written on the ground: at the survey's points where wanted, else on the contours. */
export function GroundFigures(given: {
  props: Pick<SiteSceneProps, "looks" | "showPoints">;
  lines: FoundContours;
  contents: SceneContents;
  view: SceneView;
}): ReactElement {
  const { props, lines, contents, view } = given;
  const { heights } = props.looks;
  return heights === "on" || (heights === "leaf" && props.showPoints) ? (
    <SpotHeights contents={contents} view={view} />
  ) : (
    <ContourLabels {...{ lines, contents, view }} />
  );
}
