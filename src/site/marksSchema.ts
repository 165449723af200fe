import { z } from "zod";

/** How the person keeps a thing from being changed or seen; neither changes any figure. */
export const marks = {
  locked: z
    .boolean()
    .optional()
    .describe("true: not moved, changed in shape or removed until unlocked; absent: free"),
  hidden: z
    .boolean()
    .optional()
    .describe("true: not drawn and not picked in the scene, but still counted; absent: shown"),
};
