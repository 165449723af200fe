/**
 * Longitude and latitude to the site's plane and back. The one file that asks turf how far and which
 * way; turf's earth is a sphere, whose distances differ from those on the WGS 84 ellipsoid by up to
 * some 0.7% (most at the equator along a meridian), half a metre in a hundred. So east and north are
 * stretched by the ellipsoid's own radii at the origin, which leaves millimetres over a lot.
 */
import { bearing } from "@turf/bearing";
import { destination } from "@turf/destination";
import { distance } from "@turf/distance";
import { earthRadius } from "@turf/helpers";
import type { PlanPoint } from "../site/index.js";

/** Degrees on WGS 84. */
export interface EarthPlace {
  longitude: number;
  latitude: number;
}

/** WGS 84: equatorial radius, m, and flattening (NIMA TR8350.2). */
const RADIUS = 6_378_137;
const FLATTENING = 1 / 298.257223563;

/** How the sphere's east and north are stretched at a latitude. */
function stretch(latitude: number): { east: number; north: number } {
  const square = FLATTENING * (2 - FLATTENING);
  const inside = 1 - square * Math.sin((latitude * Math.PI) / 180) ** 2;
  const across = RADIUS / Math.sqrt(inside);
  const along = (RADIUS * (1 - square)) / inside ** 1.5;
  return { east: across / earthRadius, north: along / earthRadius };
}

const pair = ({ longitude, latitude }: EarthPlace): [number, number] => [longitude, latitude];

/** A place on the earth in the plane that touches it at the origin, m east and north. */
export function toPlane(origin: EarthPlace, place: EarthPlace): PlanPoint {
  const far = distance(pair(origin), pair(place), { units: "meters" });
  if (far === 0) return [0, 0];
  const turn = (bearing(pair(origin), pair(place)) * Math.PI) / 180;
  const { east, north } = stretch(origin.latitude);
  return [far * Math.sin(turn) * east, far * Math.cos(turn) * north];
}

/** A place of the plane on the earth: the other way round. */
export function toEarth(origin: EarthPlace, [x, y]: PlanPoint): EarthPlace {
  const { east, north } = stretch(origin.latitude);
  const [e, n] = [x / east, y / north];
  const far = Math.hypot(e, n);
  if (far === 0) return origin;
  const end = destination(pair(origin), far, (Math.atan2(e, n) * 180) / Math.PI, {
    units: "meters",
  });
  const [longitude = 0, latitude = 0] = end.geometry.coordinates;
  return { longitude, latitude };
}
