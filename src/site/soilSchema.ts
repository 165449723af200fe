/** What a person has found of a layer's soil, for its class as an excavation's wall. */
import { z } from "zod";

export const soilSchema = z.looseObject({
  ground: z.enum(["rock", "soil"]).optional(),
  rock: z
    .enum(["stable", "fractured"])
    .optional()
    .describe("stable: it stands upright and stays whole while the hole is open"),
  grain: z
    .enum(["cohesive", "silt", "angular-gravel", "granular"])
    .optional()
    .describe(
      "cohesive: clay, silty or sandy clay, clay loam; silt: silt, silt loam, sandy loam; granular: sand, gravel, loamy sand",
    ),
  strength: z
    .enum(["high", "middle", "low"])
    .optional()
    .describe("unconfined compressive strength: 1.5 tsf or more; between; 0.5 tsf or less"),
  fissured: z.boolean().optional(),
  shaken: z.boolean().optional().describe("by traffic, pile driving or the like"),
  disturbed: z.boolean().optional().describe("dug before, or fill"),
  dips: z
    .enum(["no", "gently", "steeply"])
    .optional()
    .describe("layers that dip into the hole; steeply: at 4 across to 1 up or more"),
  water: z
    .enum(["dry", "seeps", "submerged"])
    .optional()
    .describe("seeps: water comes out of it freely"),
});
