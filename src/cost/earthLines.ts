import type { DigResult } from "../dig/index.js";
import { knownMaterial } from "../machines/index.js";
import { NATIVE } from "../site/index.js";
import type { Material, Quantity, Scheme } from "../site/index.js";
import { cataloguePrices, priceRow } from "./catalogue.js";
import type { PriceRow } from "./catalogue.js";
import { costLine } from "./line.js";
import type { Pricing } from "./line.js";
import { boughtMaterials, importLoads, SHORTFALL_MATERIAL } from "./loads.js";
import type { Bought } from "./loads.js";
import { LEAST_LEFT } from "./leftEarth.js";
import type { CostLine, Loads } from "./types.js";

/** Price line of a material: its own, else that of other aggregate or other earth. */
function materialPrice(material: Material): PriceRow {
  for (const row of cataloguePrices().values()) {
    if (row.material === material.id) return row;
  }
  return priceRow(
    material.kind === "aggregate" ? "material-other-aggregate" : "material-other-earth",
  );
}

/** Gravel, bedding, bed filling and fill that is bought, one line for each material. */
export function boughtLines(
  pricing: Pricing,
  dig: DigResult,
  materials: ReadonlyMap<string, Material>,
  truckVolume: number,
): CostLine[] {
  const lines = boughtMaterials(dig).map((bought) =>
    materialLine(pricing, bought, knownMaterial(bought.material, materials), truckVolume),
  );
  if (dig.earth.importCompacted > 0) {
    const shortfall = {
      material: SHORTFALL_MATERIAL,
      placed: dig.earth.importCompacted,
      where: [],
    };
    const fill = knownMaterial(SHORTFALL_MATERIAL, materials);
    const line = materialLine(pricing, shortfall, fill, truckVolume);
    lines.push({
      ...line,
      quantity: besideLeft(line.quantity, dig.earth.left, materials),
      id: `shortfall-${SHORTFALL_MATERIAL}`,
      name: `${fill.name}, where the site's own earth runs short`,
    });
  }
  return lines;
}

/** What is bought where own earth runs short, with what of it is left over all the same. */
function besideLeft(
  quantity: Quantity,
  left: DigResult["earth"]["left"],
  materials: ReadonlyMap<string, Material>,
): Quantity {
  const rows = Object.entries(left).filter(([id, bank]) => id !== NATIVE && bank > LEAST_LEFT);
  if (rows.length === 0) return quantity;
  return {
    ...quantity,
    formula: `${quantity.formula}; own earth that is fit to go back is all counted, what is left over is not fit`,
    inputs: [
      ...quantity.inputs,
      ...rows.flatMap(([id, bank]) => {
        const { name, reusable } = knownMaterial(id, materials);
        return [
          { name: `left over as it lay: ${name}`, value: bank, unit: "m³" },
          { name: `share of ${name} taken as fit`, value: reusable, unit: "" },
        ];
      }),
    ],
  };
}

function materialLine(
  pricing: Pricing,
  bought: Bought,
  material: Material,
  truckVolume: number,
): CostLine {
  const row = materialPrice(material);
  const coming = importLoads(bought.placed * (1 + pricing.waste), material, truckVolume);
  return costLine(pricing, row, {
    id: `material-${material.id}`,
    name: row.material === material.id ? row.name : material.name,
    quantity: ordered(pricing, row.per === "t" ? chargedMass(pricing, coming.mass) : coming.loads),
    ...(bought.where.length > 0 ? { where: bought.where } : {}),
  });
}

/** What is ordered with the waste named in its working; nothing changes without any. */
function ordered({ waste }: Pricing, quantity: Quantity): Quantity {
  if (waste === 0) return quantity;
  return {
    ...quantity,
    formula: `${quantity.formula}; the volume with ${Math.round(1000 * waste) / 10}% waste`,
  };
}

/** A delivery of little is charged as a least load. */
function chargedMass({ leastLoad }: Pricing, mass: Quantity): Quantity {
  if (mass.value >= leastLoad || mass.value === 0) return mass;
  return {
    value: leastLoad,
    unit: "kg",
    formula: "the least load that is charged, which is more than what is needed",
    inputs: [
      { name: "needed", value: mass.value, unit: "kg" },
      { name: "least load", value: leastLoad, unit: "kg" },
    ],
    source: "entered for this scheme",
  };
}

/** Hauling the surplus away; none where a pile on the site takes it. */
export function haulLines(pricing: Pricing, scheme: Scheme, loads: Loads): CostLine[] {
  if (loads.surplus.value === 0 || keepsSurplus(scheme)) return [];
  return [costLine(pricing, priceRow("haul-away"), { quantity: loads.surplus })];
}

/** True when the scheme has a pile, which takes the surplus. */
export function keepsSurplus(scheme: Scheme): boolean {
  return scheme.works.some((work) => work.kind === "pile");
}
