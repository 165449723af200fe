/** A site without what this version of its file does not know. */
import { z } from "zod";
import { siteSchema, type Site } from "./schema.js";

/**
 * The same site without any field that the schema does not name. A file keeps such fields, as a later
 * version may need them; a copy for somebody else cannot, since nobody can tell what they hold.
 */
export function onlyKnown(site: Site): Site {
  return siteSchema.parse(knownOf(siteSchema, site));
}

function knownOf(schema: z.core.$ZodType, value: unknown): unknown {
  if (schema instanceof z.ZodOptional) return knownOf(schema.unwrap(), value);
  if (Array.isArray(value)) {
    if (!(schema instanceof z.ZodArray)) return value;
    return value.map((item) => knownOf(schema.element, item));
  }
  if (typeof value !== "object" || value === null) return value;
  if (schema instanceof z.ZodDiscriminatedUnion) return knownOf(optionOf(schema, value), value);
  const fields: [string, unknown][] = Object.entries(value);
  if (schema instanceof z.ZodRecord) {
    return Object.fromEntries(
      fields.map(([key, field]) => [key, knownOf(schema.valueType, field)]),
    );
  }
  // A value of another shape than the schema's is told by the parse that follows.
  if (!(schema instanceof z.ZodObject)) return value;
  const shape = schema.shape as Readonly<Record<string, z.core.$ZodType>>;
  const known = fields.filter(([key]) => Object.hasOwn(shape, key));
  return Object.fromEntries(known.map(([key, field]) => [key, knownOf(shape[key]!, field)]));
}

/** The option of a union that takes the value; the union itself where none does. */
function optionOf(union: z.ZodDiscriminatedUnion, value: object): z.core.$ZodType {
  return union.options.find((option) => z.safeParse(option, value).success) ?? union;
}
