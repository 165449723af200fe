import { z } from "zod";
import diggingRows from "../../shared/catalogue/digging.json" with { type: "json" };
import machineRows from "../../shared/catalogue/machines.json" with { type: "json" };

const positive = z.number().positive();
const rangeSchema = z
  .object({ low: positive, likely: positive, high: positive })
  .refine((r) => r.low <= r.likely && r.likely <= r.high, "low ≤ likely ≤ high");

const diggerSchema = z.object({
  id: z.string().min(1),
  name: z.string(),
  mass: positive,
  digDepth: positive,
  reach: positive,
  dumpHeight: positive,
  bucket: positive,
  bucketWidth: positive,
  narrowBucket: positive,
  width: positive,
  fuelPerHour: positive,
  hammer: z.object({ low: positive, likely: positive, high: positive, source: z.string() }),
  rates: z.object({
    hour: rangeSchema,
    day: rangeSchema,
    week: rangeSchema,
    fourWeeks: rangeSchema,
    delivery: rangeSchema,
    hammerDay: rangeSchema,
    source: z.string(),
  }),
  source: z.string(),
});

const waySchema = z.object({
  ease: z.enum(["soft", "average", "hard"]),
  fill: rangeSchema,
  ripped: rangeSchema,
  hammered: z.boolean(),
  source: z.string(),
});

const sourcedRange = z.object({
  low: positive,
  likely: positive,
  high: positive,
  source: z.string(),
});

const diggingSchema = z.object({
  cycles: z
    .array(
      z.object({
        bucketUpTo: positive,
        soft: positive,
        average: positive,
        hard: positive,
        source: z.string(),
      }),
    )
    .min(1),
  swingDepth: z.object({
    shares: z.array(positive).min(2),
    at45: z.array(positive),
    at90: z.array(positive),
    at180: z.array(positive),
    source: z.string(),
  }),
  efficiency: z.object({ likely: positive.max(1), source: z.string() }),
  closeWork: sourcedRange,
  setUp: sourcedRange,
  byKind: z.object({
    topsoil: waySchema,
    soil: waySchema,
    fill: waySchema,
    aggregate: waySchema,
    rippable: waySchema,
    rock: waySchema,
  }),
  byMaterial: z.record(z.string(), waySchema),
  native: waySchema,
  compacting: sourcedRange,
});

/** One digger of the catalogue: kg, m, heaped bucket m³, fuel m³/h, hammer m³ bank/h, rates. */
export type Digger = z.infer<typeof diggerSchema>;
/** How one sort of material is dug: ease for the cycles, bucket fill, ripping, hammer. */
export type WayOfDigging = z.infer<typeof waySchema>;
/** The tables behind digging output; sources stand in each row. */
export type DiggingTables = z.infer<typeof diggingSchema>;

let diggers: readonly Digger[] | undefined;
let tables: DiggingTables | undefined;

/** The catalogue's diggers, lightest first as listed; throws if the catalogue breaks its schema. */
export function catalogueDiggers(): readonly Digger[] {
  diggers ??= z.array(diggerSchema).min(1).parse(machineRows.machines);
  return diggers;
}

/** The digging tables of the catalogue; throws if the catalogue breaks its schema. */
export function diggingTables(): DiggingTables {
  tables ??= diggingSchema.parse(diggingRows);
  return tables;
}
