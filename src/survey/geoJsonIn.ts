/** Reads GeoJSON (RFC 7946: longitude and latitude on WGS 84) as outlines that may become limits. */
import type { EarthPlace } from "./onEarth.js";

/** A place, line or area of the file; each part of a "Multi" is one of its own. */
export interface EarthOutline {
  /** Of the file: "features[2]", with the part where there are several. */
  path: string;
  name: string | null;
  /** Id of a kind of limit that its properties tell of; null where they tell nothing. */
  kind: string | null;
  shape: "place" | "line" | "area";
  /** Corners; an area's first is not repeated at its end. */
  places: readonly EarthPlace[];
  /** The file's own properties that are numbers, by name. */
  numbers: Readonly<Record<string, number>>;
}

/** What in the file is wrong or left out. */
export interface GeoProblem {
  path: string;
  what: string;
  mend: string;
}

type Json = Record<string, unknown>;

const isObject = (value: unknown): value is Json =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** Outlines in the order of the file; what cannot be used is in `problems`, each with its path. */
export function readGeoJson(text: string): { outlines: EarthOutline[]; problems: GeoProblem[] } {
  const found: Found = { outlines: [], problems: [] };
  let root: unknown;
  try {
    root = JSON.parse(text);
  } catch (fault) {
    const what = `is not JSON: ${fault instanceof Error ? fault.message : String(fault)}`;
    return { outlines: [], problems: [{ path: "file", what, mend: "save it again as GeoJSON" }] };
  }
  if (isObject(root) && root["crs"] !== undefined) {
    found.problems.push({
      path: "crs",
      what: "names a coordinate system of its own",
      mend: "GeoJSON (RFC 7946) is longitude and latitude on WGS 84: save it as that if it is not",
    });
  }
  readRoot(root, found);
  if (found.outlines.length === 0 && found.problems.length === 0) {
    found.problems.push({
      path: "features",
      what: "has nothing in it",
      mend: "choose a file with points, lines or polygons",
    });
  }
  return found;
}

interface Found {
  outlines: EarthOutline[];
  problems: GeoProblem[];
}

function readRoot(root: unknown, found: Found): void {
  if (!isObject(root)) {
    found.problems.push(notGeoJson("file"));
    return;
  }
  if (root["type"] !== "FeatureCollection") {
    readFeature(root, "file", found);
    return;
  }
  const features = root["features"];
  if (!Array.isArray(features)) {
    found.problems.push({ ...notGeoJson("features"), what: "is not a list" });
    return;
  }
  features.forEach((feature, i) => readFeature(feature, `features[${i}]`, found));
}

const notGeoJson = (path: string): GeoProblem => ({
  path,
  what: "is no GeoJSON",
  mend: "expected a FeatureCollection, a Feature or a geometry",
});

function readFeature(feature: unknown, path: string, found: Found): void {
  if (!isObject(feature)) {
    found.problems.push(notGeoJson(path));
    return;
  }
  const isFeature = feature["type"] === "Feature";
  const properties = isFeature && isObject(feature["properties"]) ? feature["properties"] : {};
  readGeometry(isFeature ? feature["geometry"] : feature, path, properties, found);
}

function readGeometry(geometry: unknown, path: string, properties: Json, found: Found): void {
  if (geometry === null || !isObject(geometry)) {
    found.problems.push({ path, what: "has no geometry", mend: "leave it out or draw it" });
    return;
  }
  const { type, coordinates } = geometry;
  if (type === "GeometryCollection") {
    const parts = geometry["geometries"];
    if (!Array.isArray(parts)) found.problems.push(notGeoJson(path));
    else parts.forEach((part, i) => readGeometry(part, `${path} part ${i + 1}`, properties, found));
    return;
  }
  const many = typeof type === "string" && type.startsWith("Multi");
  const shape = SHAPES[String(type)];
  if (shape === undefined) {
    found.problems.push({ ...notGeoJson(path), what: `has the type ${String(type)}` });
    return;
  }
  const parts: unknown[] = many && Array.isArray(coordinates) ? coordinates : [coordinates];
  parts.forEach((part, i) => {
    const where = parts.length > 1 ? `${path} part ${i + 1}` : path;
    readPart(shape, part, where, properties, found);
  });
}

const SHAPES: Readonly<Record<string, EarthOutline["shape"]>> = {
  Point: "place",
  MultiPoint: "place",
  LineString: "line",
  MultiLineString: "line",
  Polygon: "area",
  MultiPolygon: "area",
};
/** Fewest places of each shape. */
const LEAST = { place: 1, line: 2, area: 3 } as const;

function readPart(
  shape: EarthOutline["shape"],
  part: unknown,
  path: string,
  properties: Json,
  found: Found,
): void {
  const rings: unknown[] = shape === "area" && Array.isArray(part) ? part : [part];
  const line: unknown = shape === "place" ? [part] : rings[0];
  if (!Array.isArray(line)) {
    found.problems.push({ path, what: "has no coordinates", mend: "leave it out or draw it" });
    return;
  }
  const places: EarthPlace[] = [];
  for (const [i, position] of (line as unknown[]).entries()) {
    const place = placeOf(position);
    if (typeof place === "string") {
      found.problems.push({ path: `${path}, position ${i + 1}`, what: place, mend: DEGREES });
      return;
    }
    places.push(place);
  }
  if (shape === "area" && samePlace(places[0], places.at(-1)) && places.length > 1) places.pop();
  if (places.length < LEAST[shape]) {
    const what = `has ${places.length} places of its own, ${LEAST[shape]} are needed`;
    found.problems.push({ path, what, mend: "draw it with more corners" });
    return;
  }
  if (rings.length > 1) {
    const what = `has ${rings.length - 1} inner edge${rings.length > 2 ? "s" : ""}, left out`;
    found.problems.push({ path, what, mend: "only the outer edge is taken" });
  }
  const told = tellOf(properties);
  found.outlines.push({ path, ...told, shape, places });
}

const DEGREES = "give longitude, then latitude, in degrees on WGS 84";

function placeOf(position: unknown): EarthPlace | string {
  if (!Array.isArray(position)) return "is no pair of numbers";
  const [longitude, latitude] = position as unknown[];
  if (typeof longitude !== "number" || typeof latitude !== "number") return "is no pair of numbers";
  if (Math.abs(latitude) > 90 && Math.abs(latitude) <= 180 && Math.abs(longitude) <= 90) {
    return "has its latitude first";
  }
  if (Math.abs(longitude) > 180 || Math.abs(latitude) > 90) {
    return `is no longitude and latitude: ${longitude}, ${latitude}`;
  }
  return { longitude, latitude };
}

function samePlace(a: EarthPlace | undefined, b: EarthPlace | undefined): boolean {
  return a?.longitude === b?.longitude && a?.latitude === b?.latitude;
}

/** Words of properties that tell of a kind of limit; the first that fits is taken. */
const TELLING: readonly (readonly [RegExp, string])[] = [
  [/\breserve\b/, "reserve-field"],
  [/neighbou?r.*\bwell\b|\bwell\b.*neighbou?r/, "neighbour-well"],
  [/water[ _-]?(line|main|pipe|service)/, "water-line"],
  [/\bwell\b/, "well"],
  [/\bspring\b/, "spring"],
  [/\b(seasonal|intermittent|ephemeral)\b/, "seasonal-watercourse"],
  [/\b(ditch|swale|drain)\b/, "ditch"],
  [/\bflood/, "flood-path"],
  [/\b(wetland|marsh|bog|swamp)\b/, "wetland"],
  [/\b(stream|creek|river|brook|watercourse|pond|lake)\b/, "watercourse"],
  [/\boverhead\b|\bpower ?line\b/, "overhead-line"],
  [/\bgas\b/, "buried-gas"],
  [/\bcable\b|\btelecom|\bfib(er|re)\b/, "buried-cable"],
  [/\b(buried|underground|utility|sewer|conduit)\b/, "buried-line"],
  [/\beasement\b|\bright[ _-]of[ _-]way\b/, "easement"],
  [/\b(building|house|dwelling|garage|shed|barn|cabin)\b/, "building"],
  [/\b(drive|driveway|road|lane|track)\b/, "drive"],
  [/\btree\b/, "tree"],
  [/\b(lot|parcel|boundary|property)\b/, "lot-line"],
];
/** Properties that tell what a thing is, before its name does. */
const KIND_KEYS = /^(kind|type|class|category|feature|layer|use|usage|description)$/i;
const NAME_KEYS = /^(name|title|label)$/i;

function tellOf(properties: Json): Pick<EarthOutline, "name" | "kind" | "numbers"> {
  const entries = Object.entries(properties);
  const textsOf = (keys: RegExp): string[] =>
    entries.flatMap(([key, value]) => (keys.test(key) && typeof value === "string" ? [value] : []));
  const names = textsOf(NAME_KEYS);
  const name = names.find((one) => one.trim() !== "")?.trim() ?? null;
  const numbers = Object.fromEntries(
    entries.flatMap(([key, value]) => (typeof value === "number" ? [[key, value] as const] : [])),
  );
  const kinds = [...textsOf(KIND_KEYS), ...names].map(kindIn);
  return { name, kind: kinds.find((kind) => kind !== null) ?? null, numbers };
}

/** The kind of limit that a text names: its id, or by a word in it. */
export function kindIn(text: string): string | null {
  const plain = text.toLowerCase().replace(/[_-]+/g, " ");
  const isId = TELLING.find(([, kind]) => kind.replace(/-/g, " ") === plain.trim());
  return (isId ?? TELLING.find(([words]) => words.test(plain)))?.[1] ?? null;
}
