import { memo } from "react";
import type { ReactNode } from "react";
import type { Estimate, Stage } from "../estimate/index.js";
import { SiteScene } from "../scene/index.js";
import type { Selection, SiteSceneProps } from "../scene/index.js";
import type { Site } from "../site/index.js";
import type { Line } from "./sectionLines.js";

/** What of the ground the picture can show beside its plain look. */
export interface Shading {
  depths: boolean;
  through: boolean;
}

interface Props {
  site: Site;
  schemeId: string;
  estimate: Estimate | null;
  stage: Stage;
  theme: "light" | "dark";
  reducedMotion: boolean;
  view: "orbit" | "plan";
  selected: Selection | null;
  frameAsked: number;
  section: Line | null;
  shading: Shading;
  measuring: boolean;
  onSelect: (selection: Selection | null) => void;
  onSection: (line: Line) => void;
  onMeasureEnd: () => void;
}

const nothing = (): void => undefined;

/** All of the scene that edits: nothing here does. */
const LOOKED_AT_ONLY = {
  fixed: true,
  patch: null,
  working: null,
  onWorkAgain: nothing,
  onStopWalking: nothing,
  also: [],
  several: false,
  placing: null,
  snapping: true,
  shadows: true,
  watering: false,
  onWaterEnd: nothing,
  onKeepWay: nothing,
  drains: null,
  showProbes: true,
  showPoints: false,
  probeWorth: null,
  cranePlaces: [],
  onSelectAll: nothing,
  onGather: nothing,
  onPlace: nothing,
  onCancelPlacing: nothing,
  onSectionTap: nothing,
  onStandMove: nothing,
  onSectionCancel: nothing,
  onPictureReady: nothing,
  onDragBegin: nothing,
  onRemoveCorner: nothing,
  onDragMove: nothing,
  onDragEnd: nothing,
} satisfies Partial<SiteSceneProps>;

/** The site in three dimensions and in plan, to be looked at. */
export const ViewerScene = memo(function ViewerScene(props: Props): ReactNode {
  const { shading, section, onSection, ...given } = props;
  return (
    <SiteScene
      {...LOOKED_AT_ONLY}
      {...given}
      section={section}
      looks={{
        ...shading,
        ...{ machines: false, setbacks: false, steep: false },
        ...{ contourStep: null, heights: "off" },
      }}
      onSectionMove={onSection}
      onSectionAcross={onSection}
    />
  );
});
