/** Water on the ground as found, asked of a site. Drawn ditches are no part of that ground. */
import {
  hollowsOf as poolsOn,
  lineOnGround as onGround,
  waterFrom as wayOn,
  type LineOnGround,
  type Pool,
  type WaterWay,
} from "../runoff/index.js";
import { ruleOf, type PlanPoint, type Site } from "../site/index.js";
import { groundOf } from "./estimate.js";

/** Where the water from a place runs, site coordinates, m; null off the survey. */
export function waterFrom(site: Site, at: PlanPoint): WaterWay | null {
  return wayOn(groundOf(site), at);
}

/** The hollows in which water stands as deep as the site's rule asks, the deepest first. */
export function hollowsOf(site: Site): Pool[] {
  return poolsOn(groundOf(site), ruleOf(site, "hollow-from").value);
}

/** How a line lies on the ground as found; null where an end of it is off the survey. */
export function lineOnGround(site: Site, path: readonly PlanPoint[]): LineOnGround | null {
  return onGround(groundOf(site), path);
}
