import { z } from "zod";
import pipeRows from "../../shared/catalogue/pipes.json" with { type: "json" };
import priceRows from "../../shared/catalogue/prices.json" with { type: "json" };
import { PRICE_UNITS } from "../site/index.js";

const notNegative = z.number().nonnegative();
const positive = z.number().positive();

const priceSchema = z
  .object({
    id: z.string().min(1),
    name: z.string(),
    per: z.enum(PRICE_UNITS),
    low: notNegative,
    likely: notNegative,
    high: notNegative,
    source: z.string(),
    material: z.string().optional(),
    pipe: z.string().optional(),
    volumeUpTo: positive.optional(),
    wears: z.enum(["rippable", "rock"]).optional(),
    when: z.enum(["works", "pressure-pipe"]).optional(),
  })
  .refine((p) => p.low <= p.likely && p.likely <= p.high, "low ≤ likely ≤ high");

const pipeRowSchema = z.object({
  id: z.string(),
  name: z.string(),
  material: z.string(),
  outside: positive,
  inside: positive,
});

/** One line of the price list: money for one `per`; t is 1,000 kg, L a litre. */
export type PriceRow = z.infer<typeof priceSchema>;
/** What the cost needs of a catalogue pipe, m. */
export type PipeRow = z.infer<typeof pipeRowSchema>;

let prices: ReadonlyMap<string, PriceRow> | undefined;
let pipes: readonly PipeRow[] | undefined;

/** The price list by id, all of it demo prices; throws if it breaks its schema or repeats an id. */
export function cataloguePrices(): ReadonlyMap<string, PriceRow> {
  if (prices) return prices;
  const byId = new Map<string, PriceRow>();
  for (const row of z.array(priceSchema).parse(priceRows.prices)) {
    if (byId.has(row.id)) {
      throw new Error(`price list: got "${row.id}" twice, expected each id once`);
    }
    byId.set(row.id, row);
  }
  prices = byId;
  return byId;
}

/** The price line of an id that code names; throws when the catalogue lacks it. */
export function priceRow(id: string): PriceRow {
  const row = cataloguePrices().get(id);
  if (!row) throw new Error(`price list: got no line "${id}", expected it in the catalogue`);
  return row;
}

/** The catalogue's pipes; throws if a row breaks its schema. */
export function cataloguePipes(): readonly PipeRow[] {
  pipes ??= z.array(pipeRowSchema).parse(pipeRows.pipes);
  return pipes;
}

/** The catalogue's pipe that prices a line; null for a line of anything else. */
export function pipeRowOf({ id }: { id: string }): PipeRow | null {
  return cataloguePipes().find((pipe) => `pipe-${pipe.id}` === id) ?? null;
}
