/** Zones in plan about lines and holes, and the edge of bare ground, for drawing. Site coordinates, m. */
import { areasOf, besideLine, unionOf, type Areas } from "../dig/index.js";
import { disturbedGround } from "../land/index.js";
import type { PlanPoint, Site } from "../site/index.js";
import { schemeOf } from "./estimate.js";
import { groundAt } from "./lookup.js";
import type { Estimate } from "./types.js";

/** All within some rings and within `distance` m of them; round at outward corners. */
export function aroundRings(
  rings: readonly (readonly (readonly [number, number])[])[],
  distance: number,
): Areas {
  const edges = rings.flatMap((ring) => {
    const [first] = ring;
    if (first === undefined) return [];
    const line = [...ring, first].map(([x, y]): PlanPoint => [x, y]);
    return [besideLine(line, distance)];
  });
  return unionOf([areasOf(rings), ...edges]);
}

/** The ground that a scheme lays bare: each area with its holes, as rings that repeat their first place. */
export function bareGround(site: Site, schemeId: string, { works }: Estimate): Areas {
  return disturbedGround(schemeOf(site, schemeId), works, (at) => groundAt(site, at) ?? NaN);
}
