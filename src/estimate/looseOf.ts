import { materialsOf, NATIVE, type Site } from "../site/index.js";
import type { Estimate } from "./types.js";

/**
 * Loose volume of a volume in the bank, m³. Own earth that is dug again has no factor of its own:
 * it has what the balance of the earth counts it with, so that the lines of a table add up to
 * `earth.loose`.
 */
export function looseOf(
  site: Site,
  { cut, earth }: Pick<Estimate, "cut" | "earth">,
  id: string,
  bank: number,
): number {
  const materials = materialsOf(site);
  const own = materials.get(id)?.loose;
  if (own !== undefined) return bank * own;
  const again = cut[id] ?? 0;
  if (id !== NATIVE || !(again > 0)) {
    throw new Error(`"${id}" is dug, expected a material that the site names or dug-out backfill`);
  }
  const others = Object.entries(cut).reduce(
    (sum, [other, volume]) => sum + volume * (materials.get(other)?.loose ?? 0),
    0,
  );
  return (bank * (earth.loose - others)) / again;
}
