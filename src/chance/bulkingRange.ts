import { z } from "zod";
import bulkingRows from "../../shared/catalogue/bulking.json" with { type: "json" };
import type { Range } from "../machines/index.js";
import type { Material } from "../site/index.js";

const rowSchema = z.object({ low: z.number().min(1), high: z.number().min(1), source: z.string() });
const tableSchema = z.object({
  byMaterial: z.record(z.string(), rowSchema),
  byKind: z.object({
    topsoil: rowSchema,
    soil: rowSchema,
    rippable: rowSchema,
    rock: rowSchema,
    aggregate: rowSchema,
    fill: rowSchema,
  }),
});

let table: z.infer<typeof tableSchema> | undefined;

/** m³ loose from 1 m³ in the bank: published ends, widened to hold the material's own figure. */
export function looseRange({ id, kind, loose }: Material): Range {
  table ??= tableSchema.parse(bulkingRows);
  const { low, high } = table.byMaterial[id] ?? table.byKind[kind];
  return { low: Math.min(low, loose), likely: loose, high: Math.max(high, loose) };
}
