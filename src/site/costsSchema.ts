/** The part of a scheme that says what its cost holds besides what follows from the works. */
import { z } from "zod";

const notNegative = z.number().nonnegative();

/** What one price is for: t is 1,000 kg, L a litre, load one truckload, h an hour, d a day. */
export const PRICE_UNITS = ["t", "m3", "load", "m", "each", "h", "d", "L", "lump"] as const;

/** A line of the person's own: so many of something at a price. */
export const ownLineSchema = z.looseObject({
  id: z.string().min(1),
  name: z.string(),
  per: z.enum(PRICE_UNITS),
  count: notNegative.describe("how many of `per`"),
  price: notNegative.describe("money for one `per`"),
  low: notNegative.optional().describe("the least that it may cost; absent: the price"),
  high: notNegative.optional().describe("the most that it may cost; absent: the price"),
  note: z.string().optional(),
});

/** What is added to a scheme's cost; every field may be absent. */
export const costsSchema = z.looseObject({
  waste: z
    .number()
    .min(0)
    .max(1)
    .optional()
    .describe("share ordered beyond what is needed of all that comes in by the truck; absent: 0"),
  leastLoad: notNegative
    .optional()
    .describe("kg that a delivery is charged for at least; absent: 0"),
  tax: z.number().min(0).max(1).optional().describe("share added to every line; absent: 0"),
  lines: z.array(ownLineSchema).optional().describe("lines of the person's own"),
});
