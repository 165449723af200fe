/** What drawings call the things in the ground. */
import { materialsOf, NATIVE } from "../site/index.js";
import type { Site } from "../site/index.js";
import { words } from "../words/index.js";

const BUILT: Readonly<Record<string, string>> = {
  tank: words.sectionPanel.tank,
  wall: words.sectionPanel.bedWall,
  building: words.sectionPanel.building,
};

/** A material in words; for what no catalogue knows, what it is built as, or its id. */
export function nameOfMaterial(site: Site, material: string): string {
  if (material === NATIVE) return words.sectionPanel.siteEarthPutBack;
  return materialsOf(site).get(material)?.name ?? BUILT[material] ?? material;
}
