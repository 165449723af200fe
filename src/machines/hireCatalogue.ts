import { z } from "zod";
import rows from "../../shared/catalogue/hires.json" with { type: "json" };

const positive = z.number().positive();
const notNegative = z.number().nonnegative();

function ordered(range: { low: number; likely: number; high: number }): boolean {
  return range.low <= range.likely && range.likely <= range.high;
}

const money = z
  .object({ low: notNegative, likely: notNegative, high: notNegative })
  .refine(ordered, "low ≤ likely ≤ high");
const time = z
  .object({ low: positive, likely: positive, high: positive })
  .refine(ordered, "low ≤ likely ≤ high");

const hireSchema = z.object({
  id: z.string().min(1),
  name: z.string(),
  resource: z.enum(["compactor", "craneTruck", "dumpTruck"]),
  within: z.string().optional(),
  day: money,
  week: money,
  fourWeeks: money,
  delivery: money,
  source: z.string(),
});

const catalogueSchema = z.object({
  hires: z.array(hireSchema),
  hammer: z.object({
    weekInDays: positive,
    fourWeeksInWeeks: positive,
    back: money,
    source: z.string(),
  }),
  locate: z.object({ days: positive.int(), source: z.string() }),
  times: z.object({
    layPerHour: time,
    setTank: time,
    fillTank: time,
    testLine: time,
    setPump: time,
    electrical: time,
    testPump: time,
    haulLoad: time,
    spreadPerHour: time,
    source: z.string(),
  }),
});

/**
 * What is hired beside the digger, in money. `within` names the line of the price list whose price
 * already holds this hire, so that nobody adds both.
 */
export type HireRow = z.infer<typeof hireSchema>;
/** Everything of the catalogue of hires, and the usual wait after a locate call in working days; times in h of a crew of two, m/h or m³/h. */
export type HireCatalogue = z.infer<typeof catalogueSchema>;

let checked: HireCatalogue | undefined;

/** The catalogue of hires and hand times, all typical or demo; throws if it breaks its schema. */
export function hireCatalogue(): HireCatalogue {
  checked ??= catalogueSchema.parse(rows);
  return checked;
}
