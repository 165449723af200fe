import { takeGround } from "../estimate/index.js";
import type { Site } from "../site/index.js";
import type { Answer } from "./triangulating.worker.js";

/** Surveys of more points than this are triangulated away from the page. */
const MOST_AT_ONCE = 5000;

/** Whether a site's survey is too large to be triangulated between two frames. */
export function isLarge(site: Site): boolean {
  return site.survey.points.length > MOST_AT_ONCE;
}

/** What the one who waits for a ground is told. */
export interface GroundWaiting {
  onShare: (share: number) => void;
  /** The ground is made: an estimate of the site no longer triangulates. */
  onReady: () => void;
  onFault: (text: string) => void;
}

/** Makes the ground of a site in a worker. Returns how to give up; after that nothing is told. */
export function groundInWorker(site: Site, waiting: GroundWaiting): () => void {
  const worker = new Worker(new URL("./triangulating.worker.ts", import.meta.url), {
    type: "module",
  });
  const stop = (): void => {
    worker.terminate();
  };
  worker.addEventListener("message", ({ data: answer }: MessageEvent<Answer>) => {
    if ("share" in answer) {
      waiting.onShare(answer.share);
      return;
    }
    stop();
    if ("fault" in answer) {
      waiting.onFault(answer.fault);
      return;
    }
    takeGround(site, answer.ahead);
    waiting.onReady();
  });
  worker.addEventListener("error", (event) => {
    stop();
    waiting.onFault(event.message === "" ? "the worker did not start" : event.message);
  });
  worker.postMessage(site.survey);
  return stop;
}
