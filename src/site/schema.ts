/**
 * The site file, version 1: its schema, and the types that follow from it.
 *
 * This is the one source of truth for the document. SI throughout: m, m², m³, m³/s, kg, s.
 * x is east, y is north, z is up; bearings are degrees clockwise from north (+y); wall slopes
 * are run per 1 of rise; pipe fall is rise per run. Unknown fields are kept as they are, so that
 * a file written by a later version of the app loses nothing when this one saves it.
 */
import { z } from "zod";
import { daysSchema } from "./daysSchema.js";
import { costsSchema, type ownLineSchema } from "./costsSchema.js";
import { flowSchema } from "./flowSchema.js";
import { accessSchema, liftSchema, ownDiggerSchema } from "./liftSchema.js";
import { locateSchema } from "./locateSchema.js";
import { limitSchema } from "./limitSchema.js";
import { marks } from "./marksSchema.js";
import { planPointSchema } from "./planPointSchema.js";
import { soilSchema } from "./soilSchema.js";
import { checklistAnswerSchema, projectSchema } from "./projectSchema.js";
import type { planWindowSchema } from "./sheetsSchema.js";
import { sheetsSchema } from "./sheetsSchema.js";
import { acceptedSchema, localRuleSchema, setbackSchema } from "./rulesSchema.js";

const finite = z.number();
const positive = finite.positive();
const notNegative = finite.nonnegative();
const share = finite.min(0).max(1);
// Ids become keys of plain records, where a few words already mean something.
const id = z
  .string()
  .min(1)
  .refine((word) => !(word in Object.prototype), "is a word that cannot be an id");

export const materialSchema = z.looseObject({
  id,
  name: z.string(),
  kind: z.enum(["topsoil", "soil", "rippable", "rock", "aggregate", "fill"]),
  density: positive.describe("kg per m³ in the bank; for aggregate, as placed and compacted"),
  loose: positive.describe("m³ loose from 1 m³ in the bank"),
  compacted: positive.describe("m³ compacted from 1 m³ in the bank"),
  wallRun: notNegative.describe("steepest wall that stands, run per 1 of rise; 0 is vertical"),
  reusable: share.describe("share fit to go back as backfill, 0 to 1"),
  grade: z.string().optional().describe("size and kind that is ordered, as a yard sells it"),
  source: z.string(),
});

export const surveyPointSchema = z.looseObject({
  id,
  x: finite,
  y: finite,
  z: finite,
  note: z.string().optional(),
});

export const layerSchema = z.looseObject({
  id,
  name: z.string(),
  material: id,
  soil: soilSchema.optional().describe("what was found of it as an excavation's wall"),
});

export const probeSchema = z.looseObject({
  id,
  x: finite,
  y: finite,
  thickness: z.array(notNegative).describe("m, one for each layer but the last; 0 where absent"),
  stoppedIn: id
    .optional()
    .describe("id of the layer in which the probe stopped: it is at least as thick as given there"),
  water: notNegative.optional().describe("m below the ground at which water was met"),
  note: z.string().optional(),
  ...marks,
});

const wallRun = notNegative.describe("run per 1 of rise; 0 is vertical");

export const wallsSchema = z.discriminatedUnion("by", [
  z.looseObject({
    by: z.literal("run"),
    run: wallRun.describe("run per 1 of rise of every side; 0 is vertical"),
    sides: z
      .array(wallRun)
      .optional()
      .describe(
        "each side's own run instead: tank [front, right, back, left] looking along its bearing from the centre; trench [left, right] looking along its path; pad one for each side, side i from corner i to corner i+1 as written",
      ),
  }),
  z.looseObject({
    by: z.literal("layers"),
    ledge: notNegative
      .optional()
      .describe("m, level ledge where a flatter layer starts on top of a steeper one; absent: 0"),
  }),
  z.looseObject({
    by: z.literal("benches"),
    rise: positive,
    tread: positive,
    first: positive.optional().describe("m, rise of the lowest bench face; absent: as `rise`"),
  }),
]);

const depthOf = z.looseObject({ depth: notNegative, material: id });

const crown = finite
  .min(0)
  .max(0.5)
  .optional()
  .describe("share of the backfill's depth that it is heaped above the ground, for settling");

/** How long a hole stays open. */
const openDay = z
  .boolean()
  .optional()
  .describe("true: the hole is open 24 hours or less, as somebody has promised");

export const tankSchema = z.looseObject({
  kind: z.literal("tank"),
  id,
  name: z.string(),
  ...marks,
  at: planPointSchema.describe("centre in plan"),
  bearing: finite.describe("of the long side, degrees clockwise from north"),
  body: z.looseObject({
    length: positive,
    width: positive,
    height: positive,
    emptyMass: positive.optional(),
    liquidVolume: positive.optional(),
    inlet: finite.optional().describe("invert above the underside, m"),
    outlet: finite.optional().describe("invert above the underside, m"),
    lowWater: notNegative
      .optional()
      .describe("level at which a pump in the tank stops, above the underside, m"),
  }),
  base: finite.describe("elevation of the underside"),
  overdig: notNegative.describe("hole floor is the body plus this on all four sides"),
  bedding: depthOf,
  walls: wallsSchema,
  openDay,
  backfill: id,
  crown,
});

export const padSchema = z.looseObject({
  kind: z.literal("pad"),
  id,
  name: z.string(),
  ...marks,
  outline: z.array(planPointSchema).min(3),
  top: finite.describe("finished elevation; with `fall`, at the outline's centre of area"),
  course: depthOf.optional(),
  walls: wallsSchema,
  fillRun: notNegative.describe("slope of the fill's side, run per 1 of rise"),
  fill: id,
  fall: z
    .looseObject({
      bearing: finite.describe("the way that the pad falls, degrees clockwise from north"),
      slope: finite.min(0).max(1).describe("drop per run in plan"),
    })
    .optional()
    .describe("the pad is a plane that falls this way, not level"),
  levels: z
    .array(z.looseObject({ outline: z.array(planPointSchema).min(3), top: finite }))
    .optional()
    .describe("further levels of a stepped pad: same fall, course, walls, fillRun and fill"),
});

export const pipeSchema = z.looseObject({
  id,
  name: z.string(),
  service: z.enum(["gravity", "pressure", "conduit"]),
  inside: positive,
  outside: positive,
  material: z.string(),
  grade: z.discriminatedUnion("by", [
    z.looseObject({ by: z.literal("inverts"), start: finite, end: finite }),
    z.looseObject({ by: z.literal("fall"), start: finite, fall: finite }),
    z.looseObject({ by: z.literal("cover"), depth: notNegative }),
  ]),
  cleanouts: z
    .array(notNegative)
    .optional()
    .describe("m from the path's start to each cleanout on a gravity pipe"),
  wiring: z
    .enum(["direct", "pvc", "gfci"])
    .optional()
    .describe(
      "what a conduit's trench holds: cable without conduit, plastic conduit, or a circuit of 120 V and at most 20 A with GFCI; absent: plastic conduit",
    ),
});

export const trenchSchema = z.looseObject({
  kind: z.literal("trench"),
  id,
  name: z.string(),
  ...marks,
  path: z.array(planPointSchema).min(2),
  width: positive,
  walls: wallsSchema,
  openDay,
  bedding: depthOf,
  zone: z.looseObject({ above: notNegative, material: id }),
  backfill: id,
  crown,
  ends: z
    .looseObject({ start: wallRun.optional(), end: wallRun.optional() })
    .optional()
    .describe("slope of the end walls, run per 1 of rise; absent or 0: vertical"),
  pipes: z.array(pipeSchema).min(1),
});

export const bedSchema = z.looseObject({
  kind: z.literal("bed"),
  id,
  name: z.string(),
  ...marks,
  at: planPointSchema,
  bearing: finite,
  length: positive,
  width: positive,
  height: positive,
  wall: notNegative.describe("thickness of the bed's own wall, inside the outside size"),
  base: finite,
  filling: z.array(z.looseObject({ material: id, depth: positive })),
  overflow: notNegative
    .optional()
    .describe("invert of its overflow above the base, m; absent: it has none"),
  follows: z
    .literal("ground")
    .optional()
    .describe("moved, its base rises and falls with the ground as found; absent: it stays level"),
});

export const buildingSchema = z.looseObject({
  kind: z.literal("building"),
  id,
  name: z.string(),
  ...marks,
  outline: z.array(planPointSchema).min(3),
  base: finite,
  height: positive,
  outlets: z
    .array(z.looseObject({ id, name: z.string(), at: planPointSchema, invert: finite }))
    .optional()
    .describe("where drains leave it; invert is an elevation"),
});

export const pileSchema = z.looseObject({
  kind: z.literal("pile"),
  id,
  name: z.string(),
  ...marks,
  at: planPointSchema,
  material: id,
  repose: positive.optional().describe("angle of repose, degrees"),
  height: positive.optional().describe("m, most height: a higher heap gets a flat top"),
  keepOff: notNegative
    .optional()
    .describe(
      "m that its toe keeps from every dug edge; absent: the rule spoil-back (2 ft, 29 CFR 1926.651(j)(2))",
    ),
});

export const stripSchema = z.looseObject({
  kind: z.literal("strip"),
  id,
  name: z.string(),
  ...marks,
  area: z.discriminatedUnion("by", [
    z.looseObject({ by: z.literal("outline"), outline: z.array(planPointSchema).min(3) }),
    z.looseObject({
      by: z.literal("work"),
      work: id.describe("id of a pad, tank, building or bed of the same scheme"),
      beyond: notNegative.describe("m in plan that the strip reaches beyond the work"),
    }),
  ]),
  depth: positive.optional().describe("m taken off; absent: the whole top layer"),
  putBack: z
    .looseObject({ depth: positive })
    .optional()
    .describe("m spread at the very end over what is bare within the area"),
});

export const workSchema = z.discriminatedUnion("kind", [
  tankSchema,
  padSchema,
  trenchSchema,
  bedSchema,
  buildingSchema,
  pileSchema,
  stripSchema,
]);

/** A change to one catalogue price for this scheme: the catalogue line's id and the new price. */
export const priceChoiceSchema = z.looseObject({
  id,
  price: notNegative,
  low: notNegative.optional(),
  high: notNegative.optional(),
  source: z.string().optional(),
});

export const schemeSchema = z.looseObject({
  id,
  name: z.string(),
  works: z.array(workSchema),
  flow: flowSchema.optional(),
  machines: z
    .looseObject({
      digger: id.optional().describe("catalogue id of the machine that digs"),
      hoursPerDay: positive.optional(),
      efficiency: share.optional(),
      truckVolume: positive.optional().describe("m³ loose carried in one truckload"),
      days: daysSchema.optional().describe("how the days of the job run"),
      diggers: z
        .array(ownDiggerSchema)
        .optional()
        .describe("the person's own diggers, beside those of the catalogue"),
      access: accessSchema.optional(),
      lift: liftSchema.optional(),
    })
    .optional(),
  prices: z.array(priceChoiceSchema).optional(),
  costs: costsSchema.optional(),
});

export const siteSchema = z.looseObject({
  format: z.literal("bankyard-site"),
  version: z.literal(1),
  name: z.string(),
  notes: z.string().optional(),
  units: z.enum(["us", "metric"]),
  currency: z.string().regex(/^[A-Z]{3}$/, "three capital letters, as in ISO 4217"),
  place: z
    .looseObject({
      longitude: finite.min(-180).max(180),
      latitude: finite.min(-90).max(90),
    })
    .optional(),
  survey: z.looseObject({
    points: z.array(surveyPointSchema).min(3),
    breaklines: z.array(z.array(id)).optional(),
    boundary: z.array(planPointSchema).min(3).optional(),
    tolerance: positive
      .optional()
      .describe("m: points nearer than this in plan are one point; absent: 0.001"),
  }),
  ground: z.looseObject({
    layers: z.array(layerSchema).min(1),
    probes: z.array(probeSchema),
    doubt: z
      .looseObject({
        range: positive
          .optional()
          .describe("m over which one probe tells of the ground beside it; absent: 20"),
        share: positive
          .optional()
          .describe(
            "least standard deviation of a layer's thickness, as a share of its mean; absent: 0.3",
          ),
      })
      .optional()
      .describe("how far the layers may differ between and beyond the probes"),
  }),
  materials: z.array(materialSchema).optional(),
  limits: z.array(limitSchema).optional(),
  rules: z
    .array(localRuleSchema)
    .optional()
    .describe("numbers of published rules that this site replaces by its local ones"),
  setbacks: z
    .array(setbackSchema)
    .optional()
    .describe("distances to keep between works and limits; absent: the published ones"),
  locate: locateSchema.optional(),
  project: projectSchema.optional(),
  checklist: z.array(checklistAnswerSchema).optional(),
  sheets: sheetsSchema.optional().describe("how the plan is printed"),
  accepted: z
    .array(acceptedSchema)
    .optional()
    .describe("findings that a person has looked at and taken on, each with a reason"),
  leftOut: z
    .array(z.string())
    .optional()
    .describe("what this copy was made without, for somebody else: costs, names"),
  schemes: z.array(schemeSchema).min(1),
});

/**
 * The named fields of a checked value. The file may carry more (they are kept), but code reads
 * only what the schema names, so a misspelt field is a compile error.
 */
type Known<T> = T extends readonly unknown[]
  ? { [K in keyof T]: Known<T[K]> }
  : T extends object
    ? { [K in keyof T as string extends K ? never : K]: Known<T[K]> }
    : T;

/** The whole document, as checked by `readSite`. Treated as immutable: edits return a new one. */
export type Site = Known<z.infer<typeof siteSchema>>;
export type Scheme = Known<z.infer<typeof schemeSchema>>;
export type OwnLine = Known<z.infer<typeof ownLineSchema>>;
export type Work = Known<z.infer<typeof workSchema>>;
export type Tank = Known<z.infer<typeof tankSchema>>;
export type Pad = Known<z.infer<typeof padSchema>>;
export type Trench = Known<z.infer<typeof trenchSchema>>;
export type Bed = Known<z.infer<typeof bedSchema>>;
export type Building = Known<z.infer<typeof buildingSchema>>;
export type Pile = Known<z.infer<typeof pileSchema>>;
export type Strip = Known<z.infer<typeof stripSchema>>;
export type Flow = Known<z.infer<typeof flowSchema>>;
export type PressureSystem = NonNullable<Flow["pressure"]>[number];
export type Pump = PressureSystem["pumps"][number];
export type Branch = PressureSystem["branches"][number];
export type Pipe = Known<z.infer<typeof pipeSchema>>;
export type Walls = Known<z.infer<typeof wallsSchema>>;
export type Material = Known<z.infer<typeof materialSchema>>;
export type SurveyPoint = Known<z.infer<typeof surveyPointSchema>>;
export type Layer = Known<z.infer<typeof layerSchema>>;
export type Probe = Known<z.infer<typeof probeSchema>>;
export type Limit = Known<z.infer<typeof limitSchema>>;
export type LocalRule = Known<z.infer<typeof localRuleSchema>>;
export type Setback = Known<z.infer<typeof setbackSchema>>;
export type Project = Known<z.infer<typeof projectSchema>>;
export type ChecklistAnswer = Known<z.infer<typeof checklistAnswerSchema>>;
export type PrintedSheets = Known<z.infer<typeof sheetsSchema>>;
export type PlanWindow = Known<z.infer<typeof planWindowSchema>>;
export type Accepted = Known<z.infer<typeof acceptedSchema>>;
export type PriceChoice = Known<z.infer<typeof priceChoiceSchema>>;
export type Lift = Known<z.infer<typeof liftSchema>>;
export type Access = Known<z.infer<typeof accessSchema>>;
export type OwnDigger = Known<z.infer<typeof ownDiggerSchema>>;
export type MaterialKind = Material["kind"];
/** [x, y] in metres in the site's plane. */
export type PlanPoint = z.infer<typeof planPointSchema>;

/** The backfill and fill id that stands for the site's own earth. */
export const NATIVE = "native";
