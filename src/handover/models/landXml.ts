/**
 * The ground's surfaces as LandXML 1.2 (landxml.org, 2008): as found, dug and backfilled, each as
 * points and faces. A surface there has one height at a place, so vertical walls are left out: above
 * and below one the points lie over each other. Coordinates are "northing easting elevation".
 */
import XMLBuilder from "fast-xml-builder";
import { foundShape, STAGE_NAMES, stageMesh } from "../../estimate/index.js";
import type { GroundMesh, Stage } from "../../estimate/index.js";
import type { Site } from "../../site/index.js";
import { elevation } from "../../units/index.js";
import type { UnitSystem } from "../../units/index.js";
import { fileName } from "../job.js";
import type { HandoverFile, HandoverJob, HandoverMaker } from "../job.js";

/** Points and triangles of numbers from 0; site coordinates, m. */
export interface TopSurface {
  points: readonly (readonly [number, number, number])[];
  faces: readonly (readonly [number, number, number])[];
}

/** A triangle whose normal rises less than this stands upright: a wall, which a surface cannot hold. */
const UPRIGHT = 1e-3;

/** Corners closer than this are one point, m: a mesh's coordinates are exact to about as much. */
const SAME = 2e-5;

/** What of a stage's mesh has the sky above it: all but upright walls and the block's sides. */
export function topSurface(mesh: GroundMesh): TopSurface {
  const numbers = new Map<string, number>();
  const points: [number, number, number][] = [];
  const faces: [number, number, number][] = [];
  const numberOf = (vertex: number): number => {
    const place = [0, 1, 2].map((part) => mesh.positions[3 * vertex + part]!);
    const key = place.map((part) => Math.round(part / SAME)).join(" ");
    const known = numbers.get(key);
    if (known !== undefined) return known;
    numbers.set(key, points.length);
    points.push([
      place[0]! + mesh.origin[0],
      place[1]! + mesh.origin[1],
      place[2]! + mesh.origin[2],
    ]);
    return points.length - 1;
  };
  for (let vertex = 0; vertex + 2 < mesh.faceOf.length; vertex += 3) {
    if (mesh.normals[3 * vertex + 2]! <= UPRIGHT) continue;
    const face = [numberOf(vertex), numberOf(vertex + 1), numberOf(vertex + 2)] as const;
    if (new Set(face).size === 3) faces.push([...face]);
  }
  return { points, faces };
}

/** Attributes of `Units`: what the schema asks for of each system. */
const UNITS: Readonly<Record<UnitSystem, Record<string, Record<string, string>>>> = {
  us: {
    Imperial: {
      "@areaUnit": "squareFoot",
      "@linearUnit": "foot",
      "@volumeUnit": "cubicFeet",
      "@temperatureUnit": "fahrenheit",
      "@pressureUnit": "inHG",
    },
  },
  metric: {
    Metric: {
      "@areaUnit": "squareMeter",
      "@linearUnit": "meter",
      "@volumeUnit": "cubicMeter",
      "@temperatureUnit": "celsius",
      "@pressureUnit": "HPA",
    },
  },
};

/** Five digits are a hundredth of a millimetre, or less, in either system. */
function printed(value: number, units: UnitSystem): string {
  return elevation.toSystem(value, units).toFixed(5);
}

function surfaceElement(
  name: string,
  desc: string,
  { points, faces }: TopSurface,
  units: UnitSystem,
): Record<string, unknown> {
  const heights = points.map((point) => point[2]);
  const least = heights.reduce((low, z) => Math.min(low, z), Infinity);
  const most = heights.reduce((high, z) => Math.max(high, z), -Infinity);
  return {
    "@name": name,
    "@desc": desc,
    Definition: {
      "@surfType": "TIN",
      "@elevMax": printed(most, units),
      "@elevMin": printed(least, units),
      Pnts: {
        P: points.map(([x, y, z], i) => ({
          "@id": i + 1,
          "#text": `${printed(y, units)} ${printed(x, units)} ${printed(z, units)}`,
        })),
      },
      Faces: { F: faces.map((face) => face.map((number) => number + 1).join(" ")) },
    },
  };
}

/** The survey's own triangles, whose corners are the points that were measured. */
export function foundSurface(site: Site): TopSurface {
  const { origin, x, y, z, triangles } = foundShape(site);
  const faces: [number, number, number][] = [];
  for (let i = 0; i + 2 < triangles.length; i += 3) {
    faces.push([triangles[i]!, triangles[i + 1]!, triangles[i + 2]!]);
  }
  return {
    points: Array.from(x, (_east, v) => [x[v]! + origin[0], y[v]! + origin[1], z[v]! + origin[2]]),
    faces,
  };
}

/** Surfaces of the job as it goes: what a machine is guided by, and what is left in the end. */
const STAGES_TAKEN: readonly Stage[] = ["dug", "backfilled"];

function surfacesOf(job: HandoverJob): Record<string, unknown>[] {
  const { site, schemeId } = job;
  const found = surfaceElement("As found", "From the survey", foundSurface(site), site.units);
  return [
    found,
    ...STAGES_TAKEN.map((stage) =>
      surfaceElement(
        capital(STAGE_NAMES[stage]),
        `Scheme ${schemeId}, the ground when all works are ${STAGE_NAMES[stage]}; upright walls left out`,
        topSurface(stageMesh(site, schemeId, stage)),
        site.units,
      ),
    ),
  ];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** One LandXML file with all surfaces. Throws like `estimate`. */
export function landXmlOf(job: HandoverJob): string {
  const [date, rest] = job.madeAt.split("T");
  const builder = new XMLBuilder({
    ignoreAttributes: false,
    attributeNamePrefix: "@",
    format: true,
    suppressEmptyNode: true,
  });
  const cautions = job.estimate.cautions.map((caution, i) => ({
    "@label": `caution ${i + 1}`,
    "@value": caution,
  }));
  return builder.build({
    "?xml": { "@version": "1.0", "@encoding": "UTF-8" },
    LandXML: {
      "@xmlns": "http://www.landxml.org/schema/LandXML-1.2",
      "@version": "1.2",
      "@date": date,
      "@time": (rest ?? "00:00:00Z").replace(/Z$/, ""),
      "@language": "English",
      "@readOnly": "false",
      Units: UNITS[job.site.units],
      Project: { "@name": job.site.name, "@desc": `Scheme ${job.schemeId}` },
      Application: { "@name": "Bankyard", "@desc": "Earthwork estimate; not a survey record" },
      Surfaces: {
        Surface: surfacesOf(job),
        Feature: { "@name": "Cautions", Property: cautions },
      },
    },
  });
}

/** The surfaces as one file. */
export const makeLandXml: HandoverMaker = (job) => {
  const file: HandoverFile = {
    name: fileName(job, "surfaces landxml", "xml"),
    type: "application/xml",
    data: landXmlOf(job),
  };
  return Promise.resolve([file]);
};
