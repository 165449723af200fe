/** The call to the utility locate service before digging (in the US: 811), and its answer. */
import { z } from "zod";

export const locateSchema = z.looseObject({
  ticket: z.string().min(1).optional().describe("number that the locate service gave"),
  date: z.iso
    .date("a date as YYYY-MM-DD")
    .optional()
    .describe("day on which the call was made, YYYY-MM-DD"),
  days: z
    .int()
    .min(0)
    .max(60)
    .optional()
    .describe("whole working days to wait after the call, as the state sets; absent: not known"),
});
