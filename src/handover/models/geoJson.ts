/**
 * The plan as GeoJSON (RFC 7946): survey, limits, works, dug outlines, pipes and contours, each with
 * the trade's name of its layer. Longitude and latitude (WGS 84) where the site is placed on the
 * earth; otherwise metres east and north of the site's own origin, which RFC 7946 does not allow, so
 * the file says so.
 */
import {
  contours,
  foundContours,
  groundAt,
  invertLine,
  workOutline,
} from "../../estimate/index.js";
import type { Estimate } from "../../estimate/index.js";
import type { PlanPoint, Site, Work } from "../../site/index.js";
import { toEarth } from "../../survey/index.js";
import { fileName } from "../job.js";
import type { HandoverFile, HandoverJob, HandoverMaker } from "../job.js";

type Position = [number, number] | [number, number, number];

type Geometry =
  | { type: "Point"; coordinates: Position }
  | { type: "LineString"; coordinates: Position[] }
  | { type: "Polygon"; coordinates: Position[][] }
  | { type: "MultiPolygon"; coordinates: Position[][][] };

interface Feature {
  type: "Feature";
  id?: string;
  geometry: Geometry;
  properties: Record<string, unknown>;
}

/** Puts a place of the site where the file has it. */
type Placing = (at: PlanPoint, z?: number) => Position;

/** Eight decimals of a degree are about a millimetre. */
const DEGREE_DIGITS = 8;
const METRE_DIGITS = 4;

const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));

function placingOf(site: Site): Placing {
  const { place } = site;
  return (at, z) => {
    const earth = place === undefined ? null : toEarth(place, at);
    const [a, b]: Position =
      earth === null
        ? [rounded(at[0], METRE_DIGITS), rounded(at[1], METRE_DIGITS)]
        : [rounded(earth.longitude, DEGREE_DIGITS), rounded(earth.latitude, DEGREE_DIGITS)];
    return z === undefined ? [a, b] : [a, b, rounded(z, METRE_DIGITS)];
  };
}

type Ring = readonly (readonly [number, number])[];

function areaOfRing(ring: Ring): number {
  return ring.reduce((sum, [x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length]!;
    return sum + (x * ny - nx * y) / 2;
  }, 0);
}

function inside(ring: Ring, [x, y]: readonly [number, number]): boolean {
  return ring.reduce((is, [ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length]!;
    const crosses = ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax;
    return crosses ? !is : is;
  }, false);
}

/** Rings of the engine (outer ones counter-clockwise, holes clockwise) as polygons with their holes. */
export function polygonsOf(rings: readonly Ring[]): Ring[][] {
  const outer = rings.filter((ring) => areaOfRing(ring) > 0).map((ring): Ring[] => [ring]);
  for (const hole of rings.filter((ring) => areaOfRing(ring) < 0)) {
    outer.find((polygon) => inside(polygon[0]!, hole[0]!))?.push(hole);
  }
  return outer;
}

class Collection {
  readonly features: Feature[] = [];
  constructor(private readonly put: Placing) {}

  add(
    layer: string,
    geometry: Geometry | null,
    properties: Record<string, unknown>,
    id?: string,
  ): void {
    if (geometry === null) return;
    this.features.push({
      type: "Feature",
      ...(id === undefined ? {} : { id }),
      geometry,
      properties: { layer, ...properties },
    });
  }

  point(at: PlanPoint, z?: number): Geometry {
    return { type: "Point", coordinates: this.put(at, z) };
  }

  line(path: readonly PlanPoint[]): Geometry | null {
    return path.length < 2
      ? null
      : { type: "LineString", coordinates: path.map((at) => this.put(at)) };
  }

  /** Closed, and the right way round, as the standard wants it. */
  private closed(ring: Ring): Position[] {
    return [...ring, ring[0]!].map((at) => this.put(at as PlanPoint));
  }

  area(outline: Ring): Geometry | null {
    if (outline.length < 3) return null;
    const round = areaOfRing(outline) < 0 ? [...outline].reverse() : outline;
    return { type: "Polygon", coordinates: [this.closed(round)] };
  }

  areas(rings: readonly Ring[]): Geometry | null {
    const polygons = polygonsOf(rings);
    if (polygons.length === 0) return null;
    return {
      type: "MultiPolygon",
      coordinates: polygons.map((polygon) => polygon.map((ring) => this.closed(ring))),
    };
  }
}

function addSurvey(to: Collection, site: Site): void {
  const { points, breaklines, boundary } = site.survey;
  for (const { id, x, y, z, note } of points) {
    to.add("Spot heights", to.point([x, y], z), { id, elevation: z, ...(note && { note }) });
  }
  const byId = new Map(points.map((point) => [point.id, point]));
  for (const chain of breaklines ?? []) {
    const path = chain.flatMap((id): PlanPoint[] => {
      const point = byId.get(id);
      return point === undefined ? [] : [[point.x, point.y]];
    });
    to.add("Breaklines", to.line(path), { points: chain.join(" ") });
  }
  if (boundary !== undefined) to.add("Edge of the survey", to.area(boundary), {});
  for (const probe of site.ground.probes) {
    const layers = site.ground.layers.slice(0, -1);
    const depths = layers.map((layer, i) => [layer.name, probe.thickness[i] ?? 0]);
    to.add("Probes", to.point([probe.x, probe.y]), {
      id: probe.id,
      thickness: Object.fromEntries(depths),
    });
  }
}

function addLimits(to: Collection, site: Site): void {
  for (const limit of site.limits ?? []) {
    const { id, kind, name, at, path, closed, setback, voltage, height, depth, radius, width } =
      limit;
    const geometry =
      at !== undefined
        ? to.point(at)
        : path === undefined
          ? null
          : closed === true
            ? to.area(path)
            : to.line(path);
    const measures = { setback, voltage, height, depth, radius, width };
    to.add("Limits", geometry, { kind, name: name ?? kind, ...measures }, id);
  }
}

function addWork(to: Collection, site: Site, work: Work, estimate: Estimate): void {
  const { id, kind, name } = work;
  const outline = workOutline(work);
  const quantities = estimate.works.find((one) => one.id === id);
  if (outline !== null) {
    to.add("Works", to.area(outline), { id, kind, name, ...measuresOf(quantities) }, id);
  } else if (work.kind === "pile") {
    to.add("Works", to.point(work.at), { id, kind, name }, id);
    to.add("Spoil heaps", to.areas(quantities?.heap?.toe ?? []), { work: id, name });
  }
  to.add("Top of excavation", to.areas(quantities?.outlines?.daylight ?? []), { work: id, name });
  to.add("Toe of excavation", to.areas(quantities?.outlines?.toe ?? []), { work: id, name });
  if (work.kind !== "trench") return;
  for (const pipe of work.pipes) {
    const line = invertLine(work, pipe, (at) => groundAt(site, at));
    to.add(
      "Pipes",
      to.line(line.map(([x, y]): PlanPoint => [x, y])),
      {
        id: pipe.id,
        name: pipe.name,
        service: pipe.service,
        inside: pipe.inside,
        startInvert: line[0]?.[2],
        endInvert: line[line.length - 1]?.[2],
      },
      pipe.id,
    );
  }
}

function measuresOf(work: Estimate["works"][number] | undefined): Record<string, unknown> {
  if (work === undefined) return {};
  return { cut: work.cut, fill: work.fill, floor: work.floor, deepest: work.deepest };
}

/** The plan of a scheme as a feature collection. Throws like `estimate`. */
export function geoJsonOf(job: HandoverJob): Record<string, unknown> {
  const { site, estimate, schemeId } = job;
  const to = new Collection(placingOf(site));
  addSurvey(to, site);
  for (const { elevation, heavy, closed, line } of contours(site, foundContours(site).step)) {
    const path = closed ? [...line, line[0]!] : line;
    to.add("Contours", to.line(path as PlanPoint[]), { elevation, index: heavy });
  }
  addLimits(to, site);
  const works = site.schemes.find((scheme) => scheme.id === schemeId)?.works ?? [];
  for (const work of works) addWork(to, site, work, estimate);
  return {
    type: "FeatureCollection",
    name: site.name,
    scheme: schemeId,
    made: job.madeAt,
    coordinates:
      site.place === undefined
        ? "metres east and north of the site's own origin: the site is not placed on the earth"
        : "longitude and latitude, WGS 84; elevations in metres above the site's own datum",
    cautions: estimate.cautions,
    features: to.features,
  };
}

/** The plan as one file. */
export const makeGeoJson: HandoverMaker = (job) => {
  const file: HandoverFile = {
    name: fileName(job, "plan", "geojson"),
    type: "application/geo+json",
    data: JSON.stringify(geoJsonOf(job)),
  };
  return Promise.resolve([file]);
};
