/** Where a building's new drain outlet goes. */
import { groundAt } from "../estimate/index.js";
import type { Building, PlanPoint, Site } from "../site/index.js";
import { toCentimetre } from "./rounded.js";

/** m under the floor, and under the ground there, that a new outlet lies (typical, no source). */
export const OUTLET_UNDER = 0.6;

/**
 * The invert of a new outlet at a place, elevation in m: 0.6 m under the floor or, where that is
 * lower, under the ground as found; under the floor alone beyond the survey.
 */
export function outletInvert(site: Site, building: Pick<Building, "base">, at: PlanPoint): number {
  const ground = groundAt(site, at);
  return toCentimetre(Math.min(building.base, ground ?? Infinity) - OUTLET_UNDER);
}

/**
 * The middle of the side on the lowest ground, to the centimetre: where a drain starts with the
 * least digging. The first side where the survey reaches none.
 */
export function lowestSide(site: Site, { outline }: Pick<Building, "outline">): PlanPoint {
  const sides = outline.map(([x, y], i) => {
    const [u, v] = outline[(i + 1) % outline.length]!;
    const at: PlanPoint = [toCentimetre((x + u) / 2), toCentimetre((y + v) / 2)];
    return { at, ground: groundAt(site, at) ?? Infinity };
  });
  return sides.reduce((low, side) => (side.ground < low.ground ? side : low)).at;
}
