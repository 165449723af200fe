import type { PlanPoint } from "../site/index.js";
import type { DeskActions } from "./deskState.js";
import type { DeskTools } from "./deskTools.js";

type Sectioning = Pick<DeskActions, "startSection" | "tapSection" | "moveSection" | "stopSection">;

/** Ends of a section nearer to each other than this are no line, m. */
const NO_LINE = 0.05;

/** The section's line: what is looked at, and no part of the document. */
export function sectioning({ get, set }: DeskTools): Sectioning {
  return {
    startSection(line) {
      set({
        section: line ?? [],
        placing: null,
        measuring: false,
        watering: false,
        ...(line ? {} : { selected: null }),
      });
    },

    tapSection(at) {
      const { section } = get();
      if (section === null || section.length > 1) return;
      const [first] = section;
      if (first !== undefined && near(first, at)) return;
      set({ section: [...section, at] });
    },

    moveSection([from, to]) {
      const { section } = get();
      if (section === null || section.length < 2 || near(from, to)) return;
      set({ section: [from, to] });
    },

    stopSection() {
      set({ section: null });
    },
  };
}

function near(a: PlanPoint, b: PlanPoint): boolean {
  return Math.hypot(a[0] - b[0], a[1] - b[1]) < NO_LINE;
}
