/** Outlines from longitude and latitude turned into limits of a site, and the other way round. */
import { areaOutline, limitKind, type Limit, type PlanPoint, type Work } from "../site/index.js";
import type { EarthOutline } from "./geoJsonIn.js";
import { toEarth, toPlane, type EarthPlace } from "./onEarth.js";

const MILLIMETRES = 1000;
/** Decimals of a degree: some millimetre. */
const DEGREE_DIGITS = 8;

/** What a limit keeps of numbers that its outline brought along; m, and V. */
const KEPT = ["setback", "voltage", "height", "depth", "radius", "width"] as const;
const MAY_BE_NOTHING: readonly string[] = ["setback", "depth"];

/**
 * Where x 0, y 0 of the site lies on the earth, when a place on the earth is known to lie at a place
 * of the site (m).
 */
export function originFrom(place: EarthPlace, at: PlanPoint): EarthPlace {
  // The plane touches the earth at its origin; asking from there again takes the last millimetres.
  let origin = place;
  for (let i = 0; i < 3; i++) {
    const [x, y] = toPlane(origin, place);
    origin = toEarth(origin, [x - at[0], y - at[1]]);
  }
  return origin;
}

/** An outline as a limit of this kind, in the site's plane to the millimetre; its id is the caller's. */
export function limitFrom(
  outline: EarthOutline,
  kind: string,
  origin: EarthPlace,
  id: string,
): Limit {
  const places = outline.places.map((place): PlanPoint => {
    const [x, y] = toPlane(origin, place);
    return [Math.round(x * MILLIMETRES) / MILLIMETRES, Math.round(y * MILLIMETRES) / MILLIMETRES];
  });
  const name = outline.name ?? capital(limitKind(kind)?.name ?? kind);
  const kept = Object.fromEntries(
    KEPT.flatMap((key) => {
      const value = outline.numbers[key];
      const fits =
        value !== undefined && (value > 0 || (value === 0 && MAY_BE_NOTHING.includes(key)));
      return fits ? [[key, value] as const] : [];
    }),
  );
  const [at] = places;
  if (outline.shape === "place" && at !== undefined) return { id, kind, name, at, ...kept };
  return {
    ...{ id, kind, name, path: places },
    ...(outline.shape === "area" ? { closed: true } : {}),
    ...kept,
  };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The site's limits and its works' outlines as GeoJSON text (RFC 7946). */
export function writeGeoJson(
  limits: readonly Limit[],
  works: readonly Work[],
  origin: EarthPlace,
): string {
  const features = [
    ...limits.flatMap((limit) => limitFeatures(limit, origin)),
    ...works.flatMap((work) => workFeatures(work, origin)),
  ];
  return `${JSON.stringify({ type: "FeatureCollection", features }, null, 1)}\n`;
}

interface Feature {
  type: "Feature";
  properties: Record<string, string | number>;
  geometry: { type: string; coordinates: unknown };
}

function limitFeatures(limit: Limit, origin: EarthPlace): Feature[] {
  const numbers = Object.fromEntries(
    KEPT.flatMap((key) => (limit[key] === undefined ? [] : [[key, limit[key]] as const])),
  );
  const name = limit.name ?? limitKind(limit.kind)?.name ?? limit.kind;
  const properties = { kind: limit.kind, name, id: limit.id, ...numbers };
  const features: Feature[] = [];
  if (limit.at !== undefined) features.push(featureOf("Point", [limit.at], properties, origin));
  if (limit.path !== undefined && limit.path.length > 1) {
    const type = limit.closed === true && limit.path.length > 2 ? "Polygon" : "LineString";
    features.push(featureOf(type, limit.path, properties, origin));
  }
  return features;
}

function workFeatures(work: Work, origin: EarthPlace): Feature[] {
  const properties = { work: work.kind, name: work.name, id: work.id };
  if (work.kind === "trench") return [featureOf("LineString", work.path, properties, origin)];
  if (work.kind === "pile") return [featureOf("Point", [work.at], properties, origin)];
  if (work.kind === "strip") {
    return work.area.by === "outline"
      ? [featureOf("Polygon", work.area.outline, properties, origin)]
      : [];
  }
  const outline = areaOutline(work);
  return outline === null ? [] : [featureOf("Polygon", outline, properties, origin)];
}

function featureOf(
  type: "Point" | "LineString" | "Polygon",
  places: readonly PlanPoint[],
  properties: Feature["properties"],
  origin: EarthPlace,
): Feature {
  const written = (type === "Polygon" ? anticlockwise(places) : places).map((place) => {
    const { longitude, latitude } = toEarth(origin, place);
    return [Number(longitude.toFixed(DEGREE_DIGITS)), Number(latitude.toFixed(DEGREE_DIGITS))];
  });
  const coordinates =
    type === "Point" ? written[0] : type === "LineString" ? written : [[...written, written[0]]];
  return { type: "Feature", properties, geometry: { type, coordinates } };
}

/** Outer edges run anticlockwise (RFC 7946, section 3.1.6). */
function anticlockwise(places: readonly PlanPoint[]): PlanPoint[] {
  const twice = places.reduce((sum, [x, y], i) => {
    const [nx, ny] = places[(i + 1) % places.length]!;
    return sum + x * ny - nx * y;
  }, 0);
  return twice < 0 ? [...places].reverse() : [...places];
}
