/** Makes the ground of a large survey away from the page. */
import { makeGround } from "../estimate/index.js";
import type { GroundAhead } from "../estimate/index.js";
import type { Site } from "../site/index.js";

/** What the worker answers: how far it is, and in the end the ground or why there is none. */
export type Answer = { share: number } | { ahead: GroundAhead } | { fault: string };

self.addEventListener("message", ({ data: survey }: MessageEvent<Site["survey"]>) => {
  try {
    const made = makeGround(survey, (share) => {
      self.postMessage({ share } satisfies Answer);
    });
    if ("fault" in made) self.postMessage(made satisfies Answer);
    else {
      const answer: Answer = { ahead: made.ahead };
      self.postMessage(answer, { transfer: made.transfer });
    }
  } catch (fault) {
    const text = fault instanceof Error ? fault.message : String(fault);
    self.postMessage({ fault: text } satisfies Answer);
  }
});
