import { words } from "../words/index.js";
import type { Estimate } from "../estimate/index.js";
import { materialsOf, NATIVE } from "../site/index.js";
import type { Site } from "../site/index.js";

type ByMaterial = Estimate["cut"];

/** All of it together, m³. */
export const sumOf = (volumes: ByMaterial): number =>
  Object.values(volumes).reduce((sum, volume) => sum + volume, 0);

/** What people call a material; the id itself when the site no longer names it. */
export function materialName(site: Site, id: string): string {
  if (id === NATIVE) return words.desk.ownEarth;
  return materialsOf(site).get(id)?.name ?? id;
}

/** What people call a material that is dug: own earth is dug again where it was put back before. */
export function dugName(site: Site, id: string): string {
  return id === NATIVE ? words.desk.earlierBackfill : materialName(site, id);
}
