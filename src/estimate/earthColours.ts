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

/** What soils are told apart by; `soil`: none of the others. */
export type SoilShade = "soil" | "sand" | "silt" | "clay";

const SOIL_COLOURS: Readonly<Record<SoilShade, string>> = {
  soil: COLOURS.soil,
  sand: "#dcc27e",
  silt: "#b3a684",
  clay: "#a5653f",
};

/**
 * Which of these a material is by the word in its id or name alone: no field of a material says how
 * coarse it is. Sand with gravel, and loams, are plain soil.
 */
export function soilShade({ id, name }: Pick<Material, "id" | "name">): SoilShade {
  const words = `${id} ${name}`.toLowerCase();
  if (/gravel|loam/.test(words)) return "soil";
  return (
    (["clay", "silt", "sand"] as const).find((w) => new RegExp(`\\b${w}\\b`).test(words)) ?? "soil"
  );
}

/** CSS hex of a soil of a shade. */
export const soilColour = (shade: SoilShade): string => SOIL_COLOURS[shade];

/** CSS hex of a material by its id; one that is not listed is drawn as soil. */
export function materialColour(id: string, materials: ReadonlyMap<string, Material>): string {
  const known = materials.get(id);
  if (known?.kind === "soil") return soilColour(soilShade(known));
  return earthColour(id === NATIVE ? NATIVE : (known?.kind ?? "soil"));
}
