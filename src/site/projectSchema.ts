/** Who, where and when of a plan, and what a person answers on the permit's list. */
import { z } from "zod";

export const projectSchema = z.looseObject({
  owner: z.string().optional(),
  parcel: z.string().optional().describe("number or name of the parcel"),
  place: z.string().optional().describe("address, or how to find the lot"),
  preparer: z.string().optional().describe("who measured and drew"),
  contact: z.string().optional().describe("who orders, and answers the telephone"),
  telephone: z.string().optional().describe("of whoever orders, as it is dialled"),
  date: z.string().optional().describe("ISO 8601"),
  benchmark: z
    .looseObject({
      point: z.string().optional().describe("id of a survey point"),
      note: z.string().optional().describe("what it is, such as a nail in a root"),
    })
    .optional(),
});

export const checklistAnswerSchema = z.looseObject({
  item: z.string().min(1).describe("id of a row of shared/catalogue/permit-items.json"),
  state: z
    .enum(["not-applicable", "by-hand"])
    .describe("by-hand: it is shown elsewhere, as the note says"),
  though: z
    .boolean()
    .optional()
    .describe("said of an item that the site shows: this office does not ask for it all the same"),
  note: z.string().min(3).describe("the reason, or where it is shown"),
});
