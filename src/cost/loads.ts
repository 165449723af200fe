import type { DigResult } from "../dig/index.js";
import { knownMaterial, looseForCompacted, truckLoads } from "../machines/index.js";
import { NATIVE } from "../site/index.js";
import type { Material, Quantity, Scheme } from "../site/index.js";
import type { ImportLoads, Loads } from "./types.js";

/** m³ loose in one truckload when the scheme says nothing: typical, no source. */
export const DEFAULT_TRUCK_VOLUME = 8;

/** Material that comes in when the site's own earth does not suffice. */
export const SHORTFALL_MATERIAL = "imported-fill";

/** m³ in place of one material that must be bought, and the works that it goes into. */
export interface Bought {
  material: string;
  placed: number;
  where: string[];
}

/**
 * Everything that goes in and is not the site's own earth, by material, in the order of the works.
 * The shortfall of own earth is not in it: see `Earth.importCompacted`.
 */
export function boughtMaterials(dig: DigResult): Bought[] {
  const byMaterial = new Map<string, Bought>();
  for (const work of dig.works) {
    for (const [material, placed] of Object.entries(work.fill)) {
      if (material === NATIVE || !(placed > 0)) continue;
      const bought = byMaterial.get(material) ?? { material, placed: 0, where: [] };
      bought.placed += placed;
      bought.where.push(work.id);
      byMaterial.set(material, bought);
    }
  }
  return [...byMaterial.values()];
}

/** kg of m³ in place: by bank density ÷ compacted, or for aggregate by its density as placed. */
export function massInPlace(placed: number, material: Material): number {
  return (placed * material.density) / placedFromDensity(material);
}

/** m³ in place of the 1 m³ that a material's density speaks of. */
function placedFromDensity(material: Material): number {
  return material.kind === "aggregate" ? 1 : material.compacted;
}

/** Truckloads of surplus away and of each bought material in, waste included, with their workings. */
export function loadsOf(
  scheme: Scheme,
  dig: DigResult,
  materials: ReadonlyMap<string, Material>,
): Loads {
  const truckVolume = scheme.machines?.truckVolume ?? DEFAULT_TRUCK_VOLUME;
  const ordered = 1 + (scheme.costs?.waste ?? 0);
  const placed = new Map(boughtMaterials(dig).map((b) => [b.material, b.placed]));
  if (dig.earth.importCompacted > 0) {
    const already = placed.get(SHORTFALL_MATERIAL) ?? 0;
    placed.set(SHORTFALL_MATERIAL, already + dig.earth.importCompacted);
  }
  return {
    truckVolume,
    surplus: loadsWorking(dig.earth.surplusLoose, truckVolume, []),
    imports: [...placed].map(([id, volume]) =>
      importLoads(ordered * volume, knownMaterial(id, materials), truckVolume),
    ),
  };
}

/** Mass and whole truckloads of m³ in place of one material. */
export function importLoads(placed: number, material: Material, truckVolume: number): ImportLoads {
  const loose = looseForCompacted(placed, material);
  const bulking = [
    { name: "volume in place", value: placed, unit: "m³" },
    { name: "loose from bank", value: material.loose, unit: "" },
    { name: "compacted from bank", value: material.compacted, unit: "" },
  ];
  return {
    material: material.id,
    name: material.name,
    placed,
    loose,
    mass: {
      value: massInPlace(placed, material),
      unit: "kg",
      formula: "volume in place × density ÷ what it keeps of its volume when placed",
      inputs: [
        { name: "volume in place", value: placed, unit: "m³" },
        { name: "density", value: material.density, unit: "kg/m³" },
        { name: "keeps of its volume when placed", value: placedFromDensity(material), unit: "" },
      ],
      source: material.source,
    },
    loads: loadsWorking(loose, truckVolume, bulking, material.source),
  };
}

function loadsWorking(
  loose: number,
  truckVolume: number,
  bulking: Quantity["inputs"],
  source = "geometry and the materials' own swell",
): Quantity {
  const loosened =
    bulking.length === 0
      ? "loose volume"
      : "volume in place ÷ compacted from bank × loose from bank = loose volume;";
  return {
    value: truckLoads(loose, truckVolume),
    unit: "load",
    formula: `${loosened} ÷ volume of one truckload, rounded up to whole loads`,
    inputs: [
      ...bulking,
      { name: "loose volume", value: loose, unit: "m³" },
      { name: "volume of one truckload", value: truckVolume, unit: "m³" },
    ],
    source: `${source}; truckload as the scheme says, else ${DEFAULT_TRUCK_VOLUME} m³ (typical, no source)`,
  };
}
