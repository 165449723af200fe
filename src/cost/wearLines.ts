import type { DigResult } from "../dig/index.js";
import type { Material } from "../site/index.js";
import { cataloguePrices } from "./catalogue.js";
import { costLine } from "./line.js";
import type { Pricing } from "./line.js";
import type { CostLine } from "./types.js";

/** What rock wears off teeth and hammer: a price for each m³ of it in the bank; none without rock. */
export function wearLines(
  pricing: Pricing,
  dig: DigResult,
  materials: ReadonlyMap<string, Material>,
): CostLine[] {
  return [...cataloguePrices().values()].flatMap((row) => {
    const inputs = Object.entries(dig.cut).flatMap(([id, volume]) => {
      const material = materials.get(id);
      const worn = material !== undefined && material.kind === row.wears && volume > 0;
      return worn ? [{ name: material.name, value: volume, unit: "m³" }] : [];
    });
    if (inputs.length === 0) return [];
    const quantity = {
      value: inputs.reduce((sum, { value }) => sum + value, 0),
      unit: "m³",
      formula: "rock of this kind, in the bank",
      inputs,
      source: "geometry",
    };
    return [costLine(pricing, row, { quantity })];
  });
}
