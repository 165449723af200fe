import { thicknessAt, waterTable, type BaseGround } from "../ground/index.js";
import type { HoleGround } from "../safety/index.js";
import { materialsOf, type PlanPoint, type Site } from "../site/index.js";

/** What the holes' checks ask of the ground as found, in site coordinates. */
export function holeGround(
  site: Site,
  { regions, tin: { origin } }: BaseGround,
  groundAt: (at: PlanPoint) => number,
): HoleGround {
  const [ox, oy] = origin;
  const water = waterTable(site.ground, origin);
  return {
    groundAt,
    thicknessAt: ([x, y]) => thicknessAt(regions, x - ox, y - oy),
    waterAt: water === null ? null : ([x, y]) => water(x - ox, y - oy),
  };
}

/**
 * How deep below the ground the first rock lies, whether it is ripped or broken, and what it is
 * called; null where the site has none or no probe came so far down.
 */
export function rockGround(
  site: Site,
  { thicknessAt: layersAt }: Pick<HoleGround, "thicknessAt">,
): ((at: PlanPoint) => { depth: number; name: string }) | null {
  const { layers, probes } = site.ground;
  const materials = materialsOf(site);
  const first = layers.findIndex(({ material }) => {
    const kind = materials.get(material)?.kind;
    return kind === "rock" || kind === "rippable";
  });
  const rock = layers[first];
  if (rock === undefined) return null;
  const isMet = probes.some(({ stoppedIn }) => {
    const last = layers.findIndex(({ id }) => id === stoppedIn);
    return last < 0 || last >= first;
  });
  if (first > 0 && !isMet) return null;
  const name = rock.name.toLowerCase();
  return (at) => ({
    depth: layersAt(at)
      .slice(0, first)
      .reduce((sum, thick) => sum + thick, 0),
    name,
  });
}
