import type { DigResult } from "../dig/index.js";
import { NATIVE } from "../site/index.js";
import type { Material } from "../site/index.js";

/** The material of an id; an id that the checked site does not know is a broken invariant. */
export function knownMaterial(id: string, materials: ReadonlyMap<string, Material>): Material {
  const material = materials.get(id);
  if (!material) throw new Error(`material: got "${id}", expected an id that the site knows`);
  return material;
}

/**
 * Loose and compacted volume per bank volume of the site's own earth that goes back: the mean of
 * what is dug, weighted by bank volume × share reusable; where nothing dug is reusable, that of
 * the catalogue's imported fill, which must then stand in for it.
 */
export function ownEarth(
  cut: DigResult["cut"],
  materials: ReadonlyMap<string, Material>,
): { loose: number; compacted: number } {
  let [bank, loose, compacted] = [0, 0, 0];
  for (const [id, volume] of Object.entries(cut)) {
    if (id === NATIVE) continue;
    const material = knownMaterial(id, materials);
    const reused = volume * material.reusable;
    bank += reused;
    loose += reused * material.loose;
    compacted += reused * material.compacted;
  }
  if (bank > 0) return { loose: loose / bank, compacted: compacted / bank };
  const fill = knownMaterial("imported-fill", materials);
  return { loose: fill.loose, compacted: fill.compacted };
}
