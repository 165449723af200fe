import { NATIVE, type Material } from "../site/index.js";
import { earthTone, type EarthTone } from "./palette.js";

/** How a material of the mesh is drawn; unknown ids are drawn as soil. */
export function toneOf(id: string, materials: ReadonlyMap<string, Material>): EarthTone {
  return id === NATIVE ? earthTone(NATIVE) : earthTone(materials.get(id)?.kind ?? "soil");
}
