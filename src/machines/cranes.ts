/** The catalogue's cranes and the rules of lifting that have a figure. */
import { z } from "zod";
import craneRows from "../../shared/catalogue/cranes.json" with { type: "json" };

const positive = z.number().positive();
const ruleSchema = z.object({ value: positive, source: z.string() });

const craneSchema = z.object({
  id: z.string().min(1),
  name: z.string(),
  mass: positive,
  block: z.number().nonnegative(),
  outriggers: positive,
  padArea: positive,
  table: z.array(z.object({ radius: positive, load: positive })).min(1),
  source: z.string(),
});

const catalogueSchema = z.object({
  cranes: z.array(craneSchema).min(1),
  lines: z.object({
    clearances: z.array(z.object({ upTo: positive, least: positive })).min(1),
    clearancesSource: z.string(),
    unknownVoltage: positive,
    unknownVoltageSource: z.string(),
  }),
  rules: z.object({
    padShare: ruleSchema,
    nearRating: ruleSchema,
    truckSide: ruleSchema,
  }),
});

/** One crane of the catalogue: kg, m, m²; its chart as kg at m of radius, block and slings in it. */
export type Crane = z.infer<typeof craneSchema>;
/** One row of a load chart: kg rated at a radius, m. */
export type ChartRow = Crane["table"][number];

let checked: z.infer<typeof catalogueSchema> | undefined;

function catalogue(): z.infer<typeof catalogueSchema> {
  return (checked ??= catalogueSchema.parse(craneRows));
}

/** The catalogue's cranes, all generic and invented; throws if the catalogue breaks its schema. */
export function catalogueCranes(): readonly Crane[] {
  return catalogue().cranes;
}

/** The rules of lifting and loading that the catalogue gives a figure, each with its source. */
export function liftRules(): z.infer<typeof catalogueSchema>["rules"] {
  return catalogue().rules;
}

/**
 * The row of a load chart that counts at a radius: the next longer one listed, for between two lines
 * of a chart the longer radius applies (US Navy NAVEDTRA 14081, quoted second hand). Under the
 * shortest radius it is the shortest; beyond the longest there is none, and so no rating.
 */
export function chartRow(table: readonly ChartRow[], radius: number): ChartRow | null {
  let next: ChartRow | null = null;
  for (const row of table) {
    // A radius that is a chart's own but for rounding is that line, not the next.
    if (row.radius < radius - 1e-9) continue;
    if (next === null || row.radius < next.radius) next = row;
  }
  return next;
}

/** How far a machine and its load keep from an overhead line, and how that is known. */
export interface LineClearance {
  /** m. */
  least: number;
  /** Over 1,000 kV the line's owner says how far, and `least` is only the table's last figure. */
  isOwners: boolean;
  source: string;
}

/**
 * Least distance, m, from an overhead line of that many volts: 29 CFR 1926.1408 Table A, quoted
 * second hand. A line of unknown voltage is kept 20 ft from, as 1926.1408(a)(2)(ii) allows
 * (recalled).
 */
export function lineClearance(voltage: number | undefined): LineClearance {
  const { clearances, clearancesSource, unknownVoltage, unknownVoltageSource } = catalogue().lines;
  if (voltage === undefined) {
    return { least: unknownVoltage, isOwners: false, source: unknownVoltageSource };
  }
  const row = clearances.find(({ upTo }) => voltage <= upTo);
  const { least } = row ?? clearances.at(-1)!;
  return { least, isOwners: row === undefined, source: clearancesSource };
}
