/** All that a view of a stage shows, in space: faces by layer, lines, and what is named. */
import {
  FACE,
  groundAt,
  hasCome,
  invertLine,
  lotEdge,
  materialColour,
  stageMesh,
  subdivide,
  surveyTriangles,
  workMiddle,
  workOutline,
} from "../../estimate/index.js";
import type { GroundMesh, Stage } from "../../estimate/index.js";
import { materialsOf } from "../../site/index.js";
import type { Site, Work } from "../../site/index.js";
import { nameOfMaterial } from "../../sheets/index.js";
import type { Pen } from "../../sheets/index.js";
import { words } from "../../words/index.js";
import type { HandoverJob } from "../job.js";
import { GRASS, SOLID_COLOURS, solidsOf } from "../models/solids.js";
import type { Solid } from "../models/solids.js";
import { creasesOf } from "./creases.js";
import { contourShapes, type ContourShapes } from "./contourShapes.js";
import { limitShapes, type LineLayer } from "./limitShapes.js";
import { normalOf, unit, type Place } from "./normals.js";
import { chain, runsOf, type Face, type Stroke } from "./shapes.js";
import { thinned } from "./thinned.js";

export interface ViewScene {
  /** Site coordinates of this scene's origin. */
  origin: Place;
  /** What a reader must know of how it is drawn; null for nothing. */
  note: string | null;
  faces: readonly Face[];
  /** Base colour of each layer of faces, in the order in which they are listed. */
  layers: ReadonlyMap<string, string>;
  /** Lines of the survey's edge and of things that stand; those of works; contours. */
  outlines: readonly Stroke[];
  edges: readonly Stroke[];
  contours: ContourShapes;
  /** Limits, what is laid against erosion, works to come: each kind by its name. */
  lines: readonly LineLayer[];
  /** Lines of tanks and pipes, which are told apart where the ground covers them. */
  buried: readonly Stroke[];
  /** Works come first. */
  names: readonly ViewName[];
}

/** What is named, and whether it is a work or a limit. */
export interface ViewName {
  name: string;
  at: Place;
  of: "work" | "limit";
}

const says = words.pictures.view;

/** The scene of a stage. Throws like `estimate`. */
export function viewScene(whole: HandoverJob, stage: Stage): ViewScene {
  const job = { ...whole, site: thinned(whole.site) };
  const { site, schemeId } = job;
  const mesh = stageMesh(site, schemeId, stage);
  const works = (site.schemes.find(({ id }) => id === schemeId)?.works ?? []).filter(
    (work) => work.hidden !== true,
  );
  const solids = works.flatMap((work) => solidsOf(site, work, stage));
  const faces: Face[] = [];
  const layers = new Map<string, string>();
  addGround(site, mesh, faces, layers);
  for (const solid of solids) addSolid(site, solid, mesh.origin, faces, layers);
  const bodies = solids.filter(({ kind }) => !isPipe(kind));
  const creases = (list: readonly Solid[]): Stroke[] =>
    list.flatMap(({ corners }) => creasesOf(local(corners, mesh.origin)));
  const tanks = creases(bodies.filter(({ kind }) => kind === "concrete"));
  const names = namesOf(site, works, mesh, faces);
  const limits = limitShapes(job, stage, mesh.origin);
  for (const [name, colour] of limits.layers) layers.set(name, colour);
  return {
    origin: mesh.origin,
    note: thinningNote(whole.site, site),
    faces: [...faces, ...limits.faces],
    layers,
    outlines: [
      ...rimOf(site, mesh.origin),
      ...tanks,
      ...creases(bodies.filter(({ kind }) => kind !== "concrete")),
    ],
    edges: pairs(mesh.edges),
    contours: contourShapes(job, stage, mesh.origin),
    lines: [...limits.lines, ...plannedLines(site, works, stage, mesh.origin)],
    buried: hasCome(stage, "set") ? [...tanks, ...pipeLines(site, works, mesh.origin)] : [],
    names: [...names, ...limits.names.map((name) => ({ ...name, of: "limit" as const }))],
  };
}

const isPipe = (kind: Solid["kind"]): boolean =>
  kind === "gravity" || kind === "pressure" || kind === "conduit";

function placeIn(list: ArrayLike<number>, vertex: number): Place {
  return [list[3 * vertex]!, list[3 * vertex + 1]!, list[3 * vertex + 2]!];
}

function pairs(list: ArrayLike<number>): Stroke[] {
  return Array.from({ length: Math.floor(list.length / 6) }, (_, i): Stroke => [
    placeIn(list, 2 * i),
    placeIn(list, 2 * i + 1),
  ]);
}

function local(corners: readonly number[], origin: Place): Place[] {
  return Array.from({ length: corners.length / 3 }, (_, i): Place => {
    const [x, y, z] = placeIn(corners, i);
    return [x - origin[0], y - origin[1], z - origin[2]];
  });
}

function addGround(site: Site, mesh: GroundMesh, faces: Face[], layers: Map<string, string>): void {
  const materials = materialsOf(site);
  layers.set(says.found, GRASS);
  const names = mesh.materials.map((id) => nameOfMaterial(site, id));
  for (let v = 0; v < mesh.faceOf.length; v += 3) {
    const number = mesh.materialOf[v]!;
    const isFound = mesh.faceOf[v] === FACE.found;
    const layer = isFound ? says.found : names[number]!;
    if (!isFound) layers.set(layer, materialColour(mesh.materials[number]!, materials));
    const normals = [0, 1, 2].map((k) => placeIn(mesh.normals, v + k));
    const corners = [0, 1, 2].map((k) => placeIn(mesh.positions, v + k));
    faces.push({
      corners: [corners[0]!, corners[1]!, corners[2]!],
      normal: unit(normals.reduce((a, b) => [a[0] + b[0], a[1] + b[1], a[2] + b[2]])),
      layer,
    });
  }
}

function addSolid(
  site: Site,
  { kind, corners: given }: Solid,
  origin: Place,
  faces: Face[],
  layers: Map<string, string>,
): void {
  const isBuilt = typeof kind === "string";
  const layer = isBuilt ? says.solids[kind] : nameOfMaterial(site, kind.material);
  layers.set(
    layer,
    isBuilt ? SOLID_COLOURS[kind] : materialColour(kind.material, materialsOf(site)),
  );
  const corners = local(given, origin);
  for (let i = 0; i + 2 < corners.length; i += 3) {
    const [a, b, c] = [corners[i]!, corners[i + 1]!, corners[i + 2]!];
    const normal = normalOf(a, b, c);
    if (normal !== null) faces.push({ corners: [a, b, c], normal, layer });
  }
}

/** The edge of the survey on the ground as found. */
function rimOf(site: Site, origin: Place): Stroke[] {
  const rim = lotEdge(site).flatMap(([x, y]): Place[] => {
    const z = groundAt(site, [x, y]);
    return z === null ? [] : [[x - origin[0], y - origin[1], z - origin[2]]];
  });
  return rim.map((at, i): Stroke => [at, rim[(i + 1) % rim.length]!]);
}

/** The middle of each pipe. */
function pipeLines(site: Site, works: readonly Work[], origin: Place): Stroke[] {
  return works.flatMap((work) => {
    if (work.kind !== "trench") return [];
    return work.pipes.flatMap((pipe) => {
      const line = invertLine(work, pipe, (at) => groundAt(site, at)).map(
        ([x, y, invert]): Place => [
          x - origin[0],
          y - origin[1],
          invert + pipe.inside / 2 - origin[2],
        ],
      );
      return chain(line);
    });
  });
}

const PLANNED: Pen = { width: 0.25, color: "#26323a", dash: [1.3, 0.9] };

/** Outlines on the ground of works that are not begun at a stage. */
function plannedLines(
  site: Site,
  works: readonly Work[],
  stage: Stage,
  origin: Place,
): LineLayer[] {
  if (hasCome(stage, "dug")) return [];
  const strokes = works.flatMap((work) => {
    if (work.kind === "building") return [];
    const outline = workOutline(work);
    if (outline?.[0] === undefined) return [];
    const places = subdivide([...outline, outline[0]], 1).map(([x, y]): Place | null => {
      const z = groundAt(site, [x, y]);
      return z === null ? null : [x - origin[0], y - origin[1], z + 0.05 - origin[2]];
    });
    return runsOf(places).flatMap(chain);
  });
  return strokes.length === 0 ? [] : [{ name: says.planned, pen: PLANNED, strokes, listed: true }];
}

function thinningNote(whole: Site, drawn: Site): string | null {
  if (drawn === whole) return null;
  const count = (site: Site): string => site.survey.points.length.toLocaleString("en-US");
  const triangles = surveyTriangles(drawn).length.toLocaleString("en-US");
  return says.thinned(count(drawn), count(whole), triangles);
}

/** Where each work is named: at its middle, on the highest of what is there. */
function namesOf(
  site: Site,
  works: readonly Work[],
  { origin }: GroundMesh,
  faces: readonly Face[],
): ViewName[] {
  return works.flatMap((work) => {
    if (work.kind === "strip" && work.area.by !== "outline") return [];
    const [x, y] = workMiddle(work);
    const [east, north] = [x - origin[0], y - origin[1]];
    const ground = groundAt(site, [x, y]);
    const top = highestAt(faces, east, north) ?? (ground === null ? null : ground - origin[2]);
    return top === null
      ? []
      : [{ name: work.name, at: [east, north, top] as const, of: "work" as const }];
  });
}

function highestAt(faces: readonly Face[], x: number, y: number): number | null {
  let top: number | null = null;
  for (const { corners } of faces) {
    const [a, b, c] = corners;
    const size = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
    if (Math.abs(size) < 1e-9) continue;
    const s = ((x - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (y - a[1])) / size;
    const t = ((b[0] - a[0]) * (y - a[1]) - (x - a[0]) * (b[1] - a[1])) / size;
    if (s < 0 || t < 0 || s + t > 1) continue;
    const z = a[2] + s * (b[2] - a[2]) + t * (c[2] - a[2]);
    if (top === null || z > top) top = z;
  }
  return top;
}
