import { z } from "zod";
import diggingRows from "../../shared/catalogue/digging.json" with { type: "json" };
import machineRows from "../../shared/catalogue/machines.json" with { type: "json" };
import { without, withoutAbsent } from "../site/index.js";
import type { Finding, OwnDigger, Scheme } from "../site/index.js";

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
  trackLength: positive,
  tailSwing: positive,
  groundPressure: positive,
  mostSlope: positive,
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
  byHand: z.object({
    rates: z.object({
      loose: rangeSchema,
      firm: rangeSchema,
      clay: rangeSchema,
      boulderClay: rangeSchema,
    }),
    source: z.string(),
  }),
});

/**
 * One digger: kg, m, heaped bucket m³, ground pressure Pa, slope as rise per run, fuel m³/h, hammer
 * m³ bank/h, rates. `reach` is at ground level and `tailSwing` behind, both from the axis of swing.
 */
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

/**
 * The diggers that a scheme may choose from: the catalogue's, with the person's own standing in for
 * those of the same id and added after them. What an own digger leaves out is as its `like`; one
 * like no digger of the catalogue is left out (`ownDiggerFindings` says so).
 */
export function diggersOf(scheme: Pick<Scheme, "machines">): readonly Digger[] {
  const all = new Map(catalogueDiggers().map((digger) => [digger.id, digger]));
  for (const own of scheme.machines?.diggers ?? []) {
    const like = catalogueDiggers().find(({ id }) => id === own.like);
    if (like !== undefined) all.set(own.id, ownDigger(own, like));
  }
  return [...all.values()];
}

function ownDigger(own: OwnDigger, like: Digger): Digger {
  const { hammer, rates, source, ...figures } = without(own, "like");
  const entered = source ?? "entered in this scheme";
  return {
    ...like,
    name: like.id === own.id ? like.name : `${like.name} (${own.id})`,
    ...withoutAbsent(figures),
    hammer: hammer === undefined ? like.hammer : { ...hammer, source: entered },
    rates:
      rates === undefined
        ? like.rates
        : {
            ...like.rates,
            ...withoutAbsent(rates),
            source: `${entered}; else ${like.rates.source}`,
          },
    source: `${entered}; figures not given are those of ${like.name}: ${like.source}`,
  } as Digger;
}

/** What is wrong with the person's own diggers: one like none of the catalogue, or given twice. */
export function ownDiggerFindings(scheme: Pick<Scheme, "machines">): Finding[] {
  const own = scheme.machines?.diggers ?? [];
  const known = catalogueDiggers().map(({ id }) => id);
  const findings: Finding[] = [];
  const say = (code: string, text: string) =>
    findings.push({ level: "caution", code, where: "site", text, source: "the site file" });
  own.forEach(({ id, like }, i) => {
    if (!known.includes(like)) {
      say(
        "machine.unknown-like",
        `The digger “${id}” is like “${like}”, which the catalogue does not have, so it is left out. Use one of: ${known.join(", ")}.`,
      );
    }
    if (own.findIndex((other) => other.id === id) < i) {
      say("machine.twice", `The digger “${id}” is given twice; the last one counts. Rename one.`);
    }
  });
  return findings;
}

/** The digging tables of the catalogue; throws if the catalogue breaks its schema. */
export function diggingTables(): DiggingTables {
  tables ??= diggingSchema.parse(diggingRows);
  return tables;
}
