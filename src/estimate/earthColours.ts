/** The tone of each kind of earth: one list that the scene and the models taken away read. */
import { NATIVE } from "../site/index.js";
import type { Material, MaterialKind } from "../site/index.js";

const COLOURS: Readonly<Record<MaterialKind | "native", string>> = {
  topsoil: "#5a4330",
  soil: "#c79f63",
  rippable: "#9a9c95",
  rock: "#6c7272",
  aggregate: "#cfc9ba",
  fill: "#d8bb86",
  native: "#b98f58",
};

/** CSS hex of a kind of earth; "native" is the site's own earth put back. */
export function earthColour(kind: MaterialKind | "native"): string {
  return COLOURS[kind];
}

/** CSS hex of a material by its id; one that is not listed is drawn as soil. */
export function materialColour(id: string, materials: ReadonlyMap<string, Material>): string {
  return earthColour(id === NATIVE ? NATIVE : (materials.get(id)?.kind ?? "soil"));
}
