import { useDesk } from "../../store/index.js";
import { words } from "../../words/index.js";
import type { BarTool } from "./barTool.js";
import { useShowTools } from "./showTools.js";

function useSectionTool(): BarTool {
  const on = useDesk((desk) => desk.section !== null);
  const { startSection, stopSection } = useDesk.getState();
  return {
    id: "section",
    name: words.looking.section,
    title: words.looking.sectionTitle,
    on,
    press: () => (on ? stopSection() : startSection()),
  };
}

function useSnapTool(): BarTool {
  const on = useDesk((desk) => desk.snapping);
  const { show } = useDesk.getState();
  return {
    id: "snap",
    name: words.drawing.snap,
    title: words.drawing.snapTitle,
    on,
    press: () => show({ snapping: !on }),
  };
}

function useMeasureTool(): BarTool {
  const on = useDesk((desk) => desk.measuring);
  const { show, stopPlacing, stopSection } = useDesk.getState();
  return {
    id: "measure",
    name: words.looking.measure,
    title: words.looking.measureTitle,
    on,
    press: () => {
      if (!on) {
        stopPlacing();
        if ((useDesk.getState().section ?? []).length < 2) stopSection();
      }
      show({ measuring: !on, watering: false });
    },
  };
}

function useWaterTool(): BarTool {
  const on = useDesk((desk) => desk.watering);
  const { show, stopPlacing, stopSection } = useDesk.getState();
  return {
    id: "water",
    name: words.water.tool,
    title: words.water.toolTitle,
    on,
    press: () => {
      if (!on) {
        stopPlacing();
        if ((useDesk.getState().section ?? []).length < 2) stopSection();
      }
      show({ watering: !on, measuring: false });
    },
  };
}

/**
 * All tools of the bar, the most used first: what does not fit goes into the menu from the end.
 * A new one is a hook of its own that gives a `BarTool`, and one more line here.
 */
export function useBarTools(): readonly BarTool[] {
  return [useSectionTool(), useMeasureTool(), useWaterTool(), useSnapTool(), ...useShowTools()];
}
