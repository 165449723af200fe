import rows from "../../shared/catalogue/materials.json" with { type: "json" };
import { materialSchema } from "./schema.js";
import type { Material, Site } from "./schema.js";

let checked: ReadonlyMap<string, Material> | undefined;

/**
 * The catalogue's materials by id, in catalogue order, each checked by the site file's own schema
 * (kg per m³; loose and compacted as m³ from 1 m³ in the bank, or from 1 m³ as placed for
 * aggregate). A row that breaks the schema or repeats an id is a broken catalogue: it throws.
 * Sources stand in each row of shared/catalogue/materials.json.
 */
export function catalogueMaterials(): ReadonlyMap<string, Material> {
  checked ??= checkedMaterials(rows.materials);
  return checked;
}

/**
 * The materials that a site may name: the catalogue, with the site's own added to it and standing
 * in for any of the same id. Never fails for a checked site; a repeated id keeps the last.
 */
export function materialsOf(site: Pick<Site, "materials">): ReadonlyMap<string, Material> {
  const all = new Map(catalogueMaterials());
  for (const material of site.materials ?? []) all.set(material.id, material);
  return all;
}

function checkedMaterials(candidates: readonly unknown[]): ReadonlyMap<string, Material> {
  const byId = new Map<string, Material>();
  for (const candidate of candidates) {
    const material = materialSchema.parse(candidate);
    if (byId.has(material.id)) {
      throw new Error(`materials catalogue: got "${material.id}" twice, expected each id once`);
    }
    byId.set(material.id, material);
  }
  return byId;
}
