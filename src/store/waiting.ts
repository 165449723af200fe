import type { Site } from "../site/index.js";
import type { DeskActions } from "./deskState.js";
import type { DeskTools } from "./deskTools.js";
import { groundInWorker, isLarge } from "./groundWorker.js";

/** How a site comes on the desk: at once, or when the ground of its large survey is made. */
export interface Waiting extends Pick<DeskActions, "stopWaiting"> {
  whenGround: (site: Site, show: () => void) => void;
}

/** Holds at most one site that waits for its ground; another one takes its place. */
export function waiting({ get, set }: Pick<DeskTools, "get" | "set">): Waiting {
  let giveUp: (() => void) | null = null;

  function end(): void {
    giveUp?.();
    giveUp = null;
    set({ waiting: null });
  }

  /** Ends the waiting for a site that does not come; without another the page is empty. */
  function endWithout(): void {
    end();
    if (get().history === null) set({ status: "empty" });
  }

  return {
    whenGround(site, show) {
      end();
      if (!isLarge(site)) {
        show();
        return;
      }
      const { name } = site;
      const points = site.survey.points.length;
      set({ waiting: { name, points, share: 0 }, starting: false });
      giveUp = groundInWorker(site, {
        onShare: (share) => set({ waiting: { name, points, share } }),
        onReady() {
          end();
          show();
        },
        onFault(text) {
          endWithout();
          const problem = {
            code: "bad-survey" as const,
            path: "survey.points",
            text: `no ground could be made of the survey: ${text}`,
            mend: "mend the survey and open it again",
          };
          set({ unopened: { file: name, problems: [problem] } });
        },
      });
    },

    stopWaiting() {
      endWithout();
      set({ notice: "Stopped. The site on the desk is as it was." });
    },
  };
}
