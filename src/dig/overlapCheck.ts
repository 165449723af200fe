/** A work that digs out what an earlier one put in: they lie over each other. */
import { ruleOf, type Finding, type Locality, type Material } from "../site/index.js";
import { earthVolume } from "../units/index.js";
import type { UnitSystem } from "../units/index.js";
import type { WorkQuantities } from "./types.js";

/**
 * A caution when a work takes out more bought gravel or sand than meets at a joint. Trenches that end
 * in a tank's bedding take out a little; a trench drawn over another takes out nearly all of it.
 */
export function overlapFindings(
  site: Locality & { units: UnitSystem },
  work: WorkQuantities,
  materials: ReadonlyMap<string, Material>,
): Finding[] {
  const bought = Object.entries(work.cut)
    .filter(([id]) => materials.get(id)?.kind === "aggregate")
    .reduce((sum, [, volume]) => sum + volume, 0);
  const from = ruleOf(site, "dug-again-from");
  if (bought < from.value) return [];
  return [
    {
      level: "caution",
      code: "dig.digs-earlier-work",
      where: work.id,
      text: `${work.name} digs out ${earthVolume.print(bought, site.units)} of gravel or sand that works before it put in: it lies over one of them. Move it, or change the order.`,
      source: `geometry; asked from ${earthVolume.print(from.value, site.units)}: ${from.source}`,
    },
  ];
}
