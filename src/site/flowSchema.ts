/**
 * The flow part of a scheme: design flow and soil, what each pressure system is made of, and the
 * limits that a person sets in place of the catalogue's. SI as everywhere in the file: m, m³, m³/s,
 * s, W; heads in m of water. Geometry (inverts, paths, tanks, beds) is never repeated here: it is
 * read from the works, so that moving a tank changes its pump's duty.
 */
import { z } from "zod";

const finite = z.number();
const positive = finite.positive();
const notNegative = finite.nonnegative();
const share = finite.min(0).max(1);
const id = z.string().min(1);
const count = z.int().positive();

/** One limit of the flow checks by its catalogue id, with the person's own value and who says so. */
export const flowRuleSchema = z.looseObject({
  id: id.describe("id of a row of the catalogue's flow rules"),
  value: notNegative.describe("SI, in the unit of that row"),
  source: z.string().optional().describe("who says so; absent: set in this scheme"),
});

/** What comes down the drain in a day, and how the day's peak compares. */
export const designFlowSchema = z.discriminatedUnion("by", [
  z.looseObject({ by: z.literal("daily"), flow: positive.describe("m³/s over the day") }),
  z.looseObject({
    by: z.literal("bedrooms"),
    bedrooms: count.describe("bedrooms of the dwelling"),
    table: id.optional().describe("catalogue id of a table of design flows"),
  }),
  z.looseObject({
    by: z.literal("people"),
    people: positive.describe("people who use it on a day"),
    each: positive.describe("m³/s for each person over the day"),
    source: z.string().optional(),
  }),
  z.looseObject({
    by: z.literal("fixtures"),
    fixtures: z.array(
      z.looseObject({
        name: z.string().describe("what it is, such as a shower"),
        count: count.describe("how many there are"),
        each: positive.describe("m³/s for each over the day"),
      }),
    ),
    source: z.string().optional(),
  }),
]);

/** How fast the soil takes water: measured, by class of a table, or the person's own figure. */
export const soilRateSchema = z.discriminatedUnion("by", [
  z.looseObject({
    by: z.literal("percolation"),
    rate: positive.describe("s for each m that the water falls in the test hole"),
    table: id.optional().describe("catalogue id of a table of loading rates"),
  }),
  z.looseObject({
    by: z.literal("class"),
    class: id.describe("id of a row of the table"),
    table: id.optional().describe("catalogue id of a table of soil classes"),
  }),
  z.looseObject({
    by: z.literal("rate"),
    rate: positive.describe("m³/s on each m², that is m/s"),
    source: z.string().optional(),
  }),
]);

/** How head is lost along a pressure pipe. */
export const frictionSchema = z.discriminatedUnion("by", [
  z.looseObject({
    by: z.literal("hazen-williams"),
    c: positive.describe("Hazen–Williams C; absent friction: 140"),
  }),
  z.looseObject({
    by: z.literal("darcy"),
    roughness: notNegative.describe("m, of the pipe's wall"),
    celsius: finite.min(0).max(60).optional().describe("water's temperature; absent: 10"),
  }),
]);

/** Fittings of one kind, by their row in the catalogue. */
export const fittingSchema = z.looseObject({
  id: id.describe("id of a row of the catalogue's fittings"),
  count: count.describe("how many there are"),
});

export const pumpSchema = z.looseObject({
  id,
  name: z.string(),
  curve: z
    .array(
      z.looseObject({
        flow: notNegative.describe("m³/s"),
        head: notNegative.describe("m"),
        power: notNegative.optional().describe("W taken from the supply"),
      }),
    )
    .min(2)
    .optional()
    .describe("the maker's points; absent: those of the catalogue row of this id"),
  source: z.string().optional(),
});

/** The inside of a chamber in plan; absent, a box of the tank's own body less its walls. */
export const chamberSchema = z.discriminatedUnion("by", [
  z.looseObject({
    by: z.literal("box"),
    length: positive.describe("m, inside"),
    width: positive.describe("m, inside"),
  }),
  z.looseObject({ by: z.literal("round"), diameter: positive.describe("m, inside, standing") }),
  z.looseObject({
    by: z.literal("lying"),
    diameter: positive.describe("m, inside"),
    length: positive.describe("m, inside"),
  }),
  z.looseObject({
    by: z.literal("table"),
    rows: z
      .array(
        z.looseObject({
          depth: notNegative.describe("m over the floor"),
          volume: notNegative.describe("m³ below it"),
        }),
      )
      .min(2),
  }),
]);

export const lateralsSchema = z.looseObject({
  count: count.describe("laterals on this branch"),
  length: positive.describe("m, each"),
  inside: positive.describe("m, bore"),
  apart: positive.describe("m between neighbours along the manifold"),
  feed: z.enum(["end", "middle"]).describe("where the manifold is fed"),
  manifold: z
    .looseObject({ inside: positive.describe("m, bore") })
    .describe("pipe that joins the laterals"),
  holes: z.looseObject({
    diameter: positive.describe("m"),
    apart: positive.describe("m"),
    first: notNegative.describe("m from the manifold to the first hole"),
  }),
});

/** One way from the end of the main to a bed, with its own valve. */
export const branchSchema = z.looseObject({
  id,
  name: z.string(),
  bed: id.optional().describe("work that it serves: a bed, a trench or a pad"),
  height: finite.describe(
    "m of the laterals above the bed's base, a pad's top, or the ground at the main's end",
  ),
  inside: positive.describe("m, bore of the branch"),
  length: notNegative.describe(
    "m of pipe from the main's end to the manifold, besides the rise, which follows from the heights",
  ),
  fittings: z.array(fittingSchema).optional(),
  valve: z
    .looseObject({
      open: share.describe("0 shut to 1 fully open"),
      loss: notNegative.describe("loss coefficient K when fully open"),
    })
    .optional(),
  share: positive
    .optional()
    .describe(
      "of the flow, against the other branches; absent: 1, or where none has one, by holes",
    ),
  laterals: lateralsSchema,
});

export const doseSchema = z.looseObject({
  perDay: positive.describe("doses a day that are wanted"),
  volume: positive.optional().describe("m³ of one dose; absent: the day's flow over the doses"),
  off: notNegative
    .optional()
    .describe("m above the chamber's floor where the pump stops; absent: the tank's low water"),
  alarmAbove: positive.optional().describe("m above the level where the pump starts"),
  reserve: notNegative.optional().describe("m³ kept free above the alarm; absent: one day's flow"),
});

/** A pump and all that it feeds. */
export const pressureSystemSchema = z.looseObject({
  id,
  name: z.string(),
  tank: id.describe("tank that the pump stands in"),
  floor: notNegative
    .optional()
    .describe("m of the chamber's floor above the tank's underside; absent: the usual"),
  chamber: chamberSchema.optional(),
  main: z.array(id).describe("ids of the pressure pipes from the tank on, in order"),
  riser: z
    .looseObject({
      inside: positive.describe("m, bore"),
      length: notNegative.describe("m"),
    })
    .optional()
    .describe("pipe inside the tank, from the pump to the main"),
  fittings: z.array(fittingSchema).optional().describe("on the main"),
  checkValve: z.boolean().optional().describe("holds the main full; absent: it drains back"),
  drainValve: z
    .boolean()
    .optional()
    .describe("at the main's low place, opened by hand to empty it; absent: none"),
  friction: frictionSchema.optional(),
  pumps: z.array(pumpSchema).min(1),
  pump: id.describe("the one of `pumps` in use"),
  alternating: z.boolean().optional().describe("two alike take turns"),
  branches: z.array(branchSchema).min(1),
  distalHead: positive.optional().describe("m wanted at the last hole; absent: by hole size"),
  dose: doseSchema,
});

export const flotationSchema = z.looseObject({
  water: notNegative.describe("m of the highest groundwater below the ground at the tank"),
  anchor: notNegative.optional().describe("kg added to the tank, weighed in water"),
});

export const flowSchema = z.looseObject({
  leastFall: z
    .array(z.looseObject({ upToInside: positive, fall: notNegative, source: z.string() }))
    .optional()
    .describe("local least falls by inside diameter, replacing the catalogue's"),
  mostFall: positive.optional().describe("rise per run"),
  leastCover: notNegative.optional().describe("m of ground over a pipe"),
  rules: z.array(flowRuleSchema).optional().describe("own values for the catalogue's flow rules"),
  design: designFlowSchema.optional(),
  peak: finite.min(1).optional().describe("peak flow in a drain ÷ the day's mean; absent: a rule"),
  soil: soilRateSchema.optional(),
  field: z.array(id).optional().describe("trenches, beds and pads whose floors take the water"),
  pressure: z.array(pressureSystemSchema).optional(),
  flotation: flotationSchema.optional(),
});
