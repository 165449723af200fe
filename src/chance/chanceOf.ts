import type { Site } from "../site/index.js";
import { chanceModel, DEFAULT_SEED, runChance, shapeOf } from "./model.js";
import { summarise } from "./summary.js";
import type { Chance } from "./types.js";

/** Simulates a scheme `runs` times (2 or more) in one go. Throws like `estimate`. */
export function chanceOf(site: Site, schemeId: string, runs: number, seed = DEFAULT_SEED): Chance {
  const model = chanceModel(site, schemeId, seed);
  return summarise(shapeOf(model), [runChance(model, 0, runs)]);
}
