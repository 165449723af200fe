/** How a plan is printed: what a person chose of paper, sheets and what a plan shows. */
import { z } from "zod";
import { planPointSchema } from "./planPointSchema.js";

export const planWindowSchema = z.looseObject({
  middle: planPointSchema.describe("what lies in the middle of the sheet, m"),
  scale: z.number().positive().describe("n of 1 : n"),
});

export const sheetsSchema = z.looseObject({
  paper: z.enum(["letter", "tabloid", "a4", "a3"]).optional(),
  windows: z
    .record(z.string().min(1), planWindowSchema)
    .optional()
    .describe("by the sheet's id; absent: the largest scale at which all is seen"),
  without: z
    .array(z.string().min(1))
    .optional()
    .describe(
      "what is not printed: what sheets show, such as section:tank-1:along, which stays the same on any paper; in older files ids of sheets",
    ),
});
