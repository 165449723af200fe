/** What a site says of rules: its local numbers, its own setbacks, and what was taken on. */
import { z } from "zod";

const word = z.string().min(1);

export const localRuleSchema = z.looseObject({
  id: word.describe("id of a rule in shared/catalogue/safety-rules.json"),
  value: z.number().nonnegative().describe("in the rule's own SI unit"),
  source: z.string().optional().describe("where the local number is written"),
});

export const setbackSchema = z.looseObject({
  from: word.describe("what keeps off: tank, field, pipe, building, dig or pile"),
  to: word.describe("kind of limit, or building or tank for works of the scheme"),
  distance: z.number().nonnegative().describe("m in plan between the nearest edges"),
  source: z.string().describe("title, publisher and section, or the person's own words"),
});

export const acceptedSchema = z.looseObject({
  code: word.describe("code of the finding"),
  where: word.describe("id of what it concerns"),
  scheme: z.string().optional().describe("id of the scheme; absent: every scheme"),
  said: z
    .string()
    .optional()
    .describe("the finding's first sentence then; it covers no other of the same code and place"),
  reason: z.string().min(3).describe("why it is taken on, in the person's words"),
  by: z.string().optional(),
  on: z.string().optional().describe("date, ISO 8601"),
});
