import { z } from "zod";
import { siteSchema } from "./schema.js";

/** The site file's schema as JSON Schema (draft 2020-12), written from the one in code. */
export function siteJsonSchema(): unknown {
  return {
    ...z.toJSONSchema(siteSchema, { io: "input" }),
    title: "Bankyard site, version 1",
    description:
      "SI throughout: m, m², m³, kg, s. x east, y north, z up. Bearings in degrees clockwise from north; wall slopes as run per 1 of rise; pipe fall as rise per run. File name *.site.json.",
  };
}
