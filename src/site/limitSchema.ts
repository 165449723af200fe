/** What limits a site: lines and places that something has to keep off, or that lie in the ground. */
import { z } from "zod";
import { marks } from "./marksSchema.js";
import { planPointSchema } from "./planPointSchema.js";

const positive = z.number().positive();
const notNegative = z.number().nonnegative();

export const limitSchema = z.looseObject({
  id: z
    .string()
    .min(1)
    .refine((word) => !(word in Object.prototype), "is a word that cannot be an id"),
  kind: z.string().describe("one of src/site/limitKinds.ts, or any other word"),
  name: z.string().optional(),
  at: planPointSchema.optional().describe("place of a limit that is a point"),
  path: z.array(planPointSchema).optional().describe("line of a limit that is a line or an edge"),
  closed: z.boolean().optional().describe("the path closes on itself: an area, not a line"),
  setback: notNegative.optional().describe("m in plan to be kept from it; the person's local rule"),
  setbackReplaces: z
    .boolean()
    .optional()
    .describe(
      "the setback stands in place of the table's rows, where a row asks for more; the greater holds unless so",
    ),
  voltage: positive.optional().describe("V of an overhead power line, as its owner says"),
  height: positive.optional().describe("m of an overhead line's lowest wire above the ground"),
  depth: notNegative.optional().describe("m from the ground down to the top of a buried line"),
  radius: positive.optional().describe("m, the circle of a tree's roots, or around a place"),
  width: positive.optional().describe("m across, of an easement or drive given by its middle line"),
  built: z
    .boolean()
    .optional()
    .describe(
      "a drive that the job builds: its ground counts as laid bare; its width has to be given",
    ),
  note: z.string().optional(),
  ...marks,
});
