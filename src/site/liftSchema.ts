/**
 * The machines part of a scheme beyond hours and hire: the crane that sets the tanks, the way in to
 * the site, and the person's own diggers. SI: m, kg, m², Pa; slopes are rise per run; money in the
 * currency of the site.
 */
import { z } from "zod";

const finite = z.number();
const positive = finite.positive();
const notNegative = finite.nonnegative();
const id = z
  .string()
  .min(1)
  .refine((word) => !(word in Object.prototype), "is a word that cannot be an id");
const place = z.tuple([finite, finite]);

const loadRowSchema = z.looseObject({
  radius: positive.describe("m in plan from the axis of rotation to the hoist line under load"),
  load: positive.describe("kg rated at that radius, hook block and slings included"),
});

const craneFigures = {
  mass: positive.optional().describe("kg of the crane on its outriggers, without the load"),
  block: notNegative.optional().describe("kg of the hook block, which counts as load"),
  outriggers: positive.optional().describe("m between the outrigger pads, across the machine"),
  padArea: positive.optional().describe("m² of ground under one outrigger's pad or mat"),
};

/** The crane: a row of the catalogue, or the chart of the one on offer. */
export const craneSchema = z.discriminatedUnion("by", [
  z.looseObject({
    by: z.literal("catalogue"),
    id: id.describe("id of a row of the catalogue's cranes"),
    ...craneFigures,
  }),
  z.looseObject({
    by: z.literal("table"),
    name: z.string().describe("what the crane is called"),
    table: z
      .array(loadRowSchema)
      .min(1)
      .describe("the load chart for the boom length and outriggers to be used"),
    ...craneFigures,
    source: z.string().optional().describe("whose chart it is; absent: entered in this scheme"),
  }),
]);

export const liftSchema = z.looseObject({
  crane: craneSchema,
  rigging: notNegative.describe("kg of slings, shackles and spreader, which count as load"),
  stands: z
    .array(
      z.looseObject({
        id,
        name: z.string(),
        at: place.describe("axis of rotation of the crane in plan"),
      }),
    )
    .describe("places where the crane might stand"),
  groundBearing: positive
    .optional()
    .describe("Pa that the ground under the pads may carry, as someone competent says"),
  edgeFactor: positive
    .optional()
    .describe(
      "distance kept from the hole's edge, in depths of the hole; absent: the rule crane-back (1.5)",
    ),
  padShare: positive
    .max(1)
    .optional()
    .describe("share of crane and load that one outrigger may carry; absent: 0.65"),
});

export const accessSchema = z.looseObject({
  width: positive.optional().describe("m, the narrowest place on the way in"),
  slope: notNegative.optional().describe("the steepest stretch of the way in, rise per run"),
  setBack: notNegative
    .optional()
    .describe(
      "m that a machine keeps from the top edge; absent: the rule spoil-back (29 CFR 1926.651(j)(2))",
    ),
  truckSide: positive
    .optional()
    .describe("m, top of the side of the truck to be loaded; absent: 2.5"),
});

const rate = z
  .looseObject({ low: positive, likely: positive, high: positive })
  .refine((r) => r.low <= r.likely && r.likely <= r.high, "low ≤ likely ≤ high");

/** A digger of the person's own: like a row of the catalogue but for the figures given here. */
export const ownDiggerSchema = z.looseObject({
  id: id.describe("its own id; an id of the catalogue stands in for that row"),
  like: id.describe("catalogue id of the digger whose figures it has unless given here"),
  name: z.string().optional(),
  mass: positive.optional().describe("kg"),
  digDepth: positive.optional().describe("m, greatest depth that the bucket reaches"),
  reach: positive.optional().describe("m at ground level, from the axis that it swings on"),
  dumpHeight: positive.optional().describe("m, greatest height of the bucket's edge when emptied"),
  bucket: positive.optional().describe("m³ heaped"),
  bucketWidth: positive.optional().describe("m"),
  narrowBucket: positive.optional().describe("m, its narrowest bucket"),
  width: positive.optional().describe("m over the tracks"),
  trackLength: positive.optional().describe("m of track on the ground"),
  tailSwing: positive.optional().describe("m from the axis to the farthest part behind"),
  groundPressure: positive.optional().describe("Pa under its tracks"),
  mostSlope: positive.optional().describe("slope that it may stand on, rise per run"),
  fuelPerHour: positive.optional().describe("m³/h"),
  hammer: rate.optional().describe("m³ bank broken in an hour"),
  rates: z
    .looseObject({
      hour: rate.optional(),
      day: rate.optional(),
      week: rate.optional(),
      fourWeeks: rate.optional(),
      delivery: rate.optional(),
      hammerDay: rate.optional(),
    })
    .optional()
    .describe("money for each; four weeks are 28 days"),
  source: z.string().optional().describe("where the figures come from"),
});
