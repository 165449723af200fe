import { materialColour } from "../estimate/index.js";
import { NATIVE, type Material } from "../site/index.js";
import { earthTone, type EarthTone } from "./palette.js";

/** How a material of the mesh is drawn; unknown ids are drawn as soil. */
export function toneOf(id: string, materials: ReadonlyMap<string, Material>): EarthTone {
  const { pattern } = earthTone(id === NATIVE ? NATIVE : (materials.get(id)?.kind ?? "soil"));
  return { colour: materialColour(id, materials), pattern };
}
