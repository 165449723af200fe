/** The steepest wall that a layer is given: by its class where its soil was typed, else by material. */
import walls from "../../shared/catalogue/walls.json" with { type: "json" };
import type { Layer, Material } from "./schema.js";
import { soilClass, type SoilClass, type SoilClassId } from "./soilClass.js";

/** Run per 1 of rise of a class of Table B-1; throws when the catalogue lacks it. */
export function classRun(id: Exclude<SoilClassId, "untyped"> | "type-a-short"): number {
  const row = walls.classes.find((each) => each.id === id);
  if (row === undefined) throw new Error(`walls catalogue: got no "${id}", expected it`);
  return row.run;
}

/** The class of a layer; untyped when nobody has answered anything. */
export function layerClass(layer: Pick<Layer, "soil">): SoilClass {
  return soilClass(layer.soil ?? {});
}

/**
 * Run per 1 of rise that a layer's wall is dug at when each layer stands at its own slope: that of
 * its class, or of its material while it is untyped.
 */
export function layerRun(
  layer: Pick<Layer, "soil" | "material">,
  materials: ReadonlyMap<string, Material>,
): number {
  const { id } = layerClass(layer);
  return id === "untyped" ? (materials.get(layer.material)?.wallRun ?? 0) : classRun(id);
}

/**
 * The same for every material of the site's layers: where two layers are of one material, the
 * flatter of their runs, since a dug cell knows only its material.
 */
export function runsByMaterial(
  layers: readonly Layer[],
  materials: ReadonlyMap<string, Material>,
): Map<string, number> {
  const runs = new Map<string, number>();
  for (const layer of layers) {
    const run = layerRun(layer, materials);
    runs.set(layer.material, Math.max(run, runs.get(layer.material) ?? 0));
  }
  return runs;
}
