/** What of the ground is no longer as found at a stage, ready for a GPU. */
import {
  cellsAlong,
  corners,
  type LayeredGround,
  surfaceOf,
  valueAt,
  type Cell,
  type Place,
} from "../ground/index.js";
import type { Site } from "../site/index.js";
import { CellFinder } from "./cellFinder.js";
import { stageDig } from "./dugSites.js";
import { groundOf, schemeOf } from "./estimate.js";
import { addBlockSide, foundPicture, vertexNormals } from "./foundPicture.js";
import { MeshBuilder, type Plane, type Vector } from "./meshBuilder.js";
import { FACE, type GroundMesh, type Stage } from "./types.js";
import { flatNormal, unit } from "./vectors.js";
import { addBands, STEP, type Ends } from "./wallMesh.js";

/** The ground of a stage as what differs from its `FoundPicture`. */
export interface StagePatch {
  /** Triangles of the survey that are not drawn as found: the patch stands in their place. */
  touched: Uint32Array;
  /** Cells of the touched triangles, their walls, the block's sides under them, crisp edges. */
  mesh: GroundMesh;
  /**
   * For each vertex of the mesh how far it lies under the ground as found, m: more than 0 in a cut,
   * less on a fill; 0 on the sides of the block.
   */
  depths: Float32Array;
  /** The deepest cut and the highest fill of these, m; 0 where there is none. */
  deepest: number;
  highest: number;
}

/** Neighbours are looked for this far beyond an edge, m. */
const NUDGE = 1e-5;

/** What a stage changes of the ground as found; nothing at the first stage. Throws like `estimate`. */
export function stagePatch(site: Site, schemeId: string, stage: Stage): StagePatch {
  const scheme = schemeOf(site, schemeId);
  const base = groundOf(site);
  if (stage === "found") {
    const mesh = new MeshBuilder().build(base.tin.origin);
    const none = { depths: new Float32Array(), deepest: 0, highest: 0 };
    return { touched: new Uint32Array(), mesh, ...none };
  }
  const ground = stageDig(site, scheme, base, stage);
  return patchOf(ground, foundPicture(site).sideTriangles, foundPicture(site).bottom);
}

function patchOf(ground: LayeredGround, sideTriangles: Uint32Array, bottom: number): StagePatch {
  const mesh = new MeshBuilder();
  const finder = new CellFinder(ground);
  const touched = Uint32Array.from(ground.touchedTriangles());
  const normals = vertexNormals(ground.base.tin);
  for (const t of touched) {
    mesh.under = planeOf(ground, t);
    for (const cell of finder.cellsOf(t)) addSurface(mesh, ground, normals, t, cell);
  }
  for (const t of touched) {
    mesh.under = planeOf(ground, t);
    for (const cell of finder.cellsOf(t)) {
      if (cell.face !== "found") addSteps(mesh, finder, t, cell);
    }
  }
  mesh.under = null;
  const isTouched = new Set(touched);
  sideTriangles.forEach((triangle, side) => {
    if (isTouched.has(triangle)) addBlockSide(mesh, ground, side, bottom);
  });
  const depths = mesh.depths();
  const [deepest, highest] = reachOf(depths);
  return { touched, mesh: mesh.build(ground.base.tin.origin), depths, deepest, highest };
}

function reachOf(depths: Float32Array): [number, number] {
  let [deepest, highest] = [0, 0];
  for (const depth of depths) {
    if (depth > deepest) deepest = depth;
    if (-depth > highest) highest = -depth;
  }
  return [deepest, highest];
}

/** The plane of a triangle of the survey; one that is a line in plan is level. */
function planeOf({ base: { tin } }: LayeredGround, triangle: number): Plane {
  const [a, b, c] = corners(tin, triangle);
  const [ux, uy, uz] = [tin.x[b]! - tin.x[a]!, tin.y[b]! - tin.y[a]!, tin.z[b]! - tin.z[a]!];
  const [vx, vy, vz] = [tin.x[c]! - tin.x[a]!, tin.y[c]! - tin.y[a]!, tin.z[c]! - tin.z[a]!];
  const twice = ux * vy - uy * vx;
  const at: Vector = [tin.x[a]!, tin.y[a]!, tin.z[a]!];
  if (twice === 0) return { at, east: 0, north: 0 };
  return { at, east: (uz * vy - vz * uy) / twice, north: (ux * vz - vx * uz) / twice };
}

function isStructure(cell: Cell): boolean {
  return cell.layers[cell.layers.length - 1]!.structure;
}

function addSurface(
  mesh: MeshBuilder,
  ground: LayeredGround,
  vertexNormal: Float32Array,
  triangle: number,
  cell: Cell,
): void {
  if (isStructure(cell)) return;
  const top = surfaceOf(cell);
  const { x, y, layers } = cell;
  const material = mesh.numberOf(layers[layers.length - 1]!.material);
  const flat = cell.face === "found" ? null : flatNormal(x, y, top);
  const face = FACE[cell.face];
  const places = x.map((_, i): Vector => [x[i]!, y[i]!, top[i]!]);
  const normals = places.map(
    ([px, py]) => flat ?? mixedNormal(ground, vertexNormal, triangle, px, py),
  );
  for (let i = 1; i + 1 < x.length; i++) {
    mesh.vertex(places[0]!, normals[0]!, material, face);
    mesh.vertex(places[i]!, normals[i]!, material, face);
    mesh.vertex(places[i + 1]!, normals[i + 1]!, material, face);
  }
}

/** Vertical faces at the edges of a dug or filled cell, and the crisp lines along them. */
function addSteps(mesh: MeshBuilder, finder: CellFinder, triangle: number, cell: Cell): void {
  const top = surfaceOf(cell);
  const count = cell.x.length;
  for (let i = 0; i < count; i++) {
    const j = i + 1 === count ? 0 : i + 1;
    const p: Vector = [cell.x[i]!, cell.y[i]!, top[i]!];
    const q: Vector = [cell.x[j]!, cell.y[j]!, top[j]!];
    const length = Math.sqrt((q[0] - p[0]) ** 2 + (q[1] - p[1]) ** 2);
    if (length < 1e-6) continue;
    const out: Place = [(NUDGE * (q[1] - p[1])) / length, (-NUDGE * (q[0] - p[0])) / length];
    const mx = (p[0] + q[0]) / 2 + out[0];
    const my = (p[1] + q[1]) / 2 + out[1];
    const beyond = finder.cellBeyond(mx, my, triangle, cell);
    if (!beyond) continue;
    const rise = valueAt(beyond, surfaceOf(beyond), mx, my) - (p[2] + q[2]) / 2;
    if (rise > STEP) stepBetween(finder.ground, p, q, out, mesh);
    // A neighbour as found has no turn of its own, so a drop to it is drawn from this side.
    else if (rise < -STEP && beyond.face === "found") dropTo(mesh, cell, beyond, [i, j], out);
    if (isCrisp(finder, cell, beyond, Math.abs(rise))) mesh.edge(p, q);
  }
}

/** Draws a cell's own layers as the wall over a lower neighbour, along its edge from i to j. */
function dropTo(
  mesh: MeshBuilder,
  cell: Cell,
  beyond: Cell,
  [i, j]: readonly [number, number],
  out: Place,
): void {
  const ends: [Place, Place] = [
    [cell.x[i]!, cell.y[i]!],
    [cell.x[j]!, cell.y[j]!],
  ];
  const below = surfaceOf(beyond);
  const foot = {
    start: valueAt(beyond, below, ...ends[0]),
    end: valueAt(beyond, below, ...ends[1]),
  };
  const wall = {
    cell,
    at: (values: readonly number[]): Ends => ({ start: values[i]!, end: values[j]! }),
  };
  addBands(mesh, wall, ends, foot, [out[0] / NUDGE, out[1] / NUDGE, 0], FACE.filled);
}

/** Draws the wall that stands above the edge p–q. */
function stepBetween(
  ground: LayeredGround,
  p: Vector,
  q: Vector,
  out: Place,
  mesh: MeshBuilder,
): void {
  const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
  const slope = (q[2] - p[2]) / length;
  const from: Place = [p[0] + out[0], p[1] + out[1]];
  const to: Place = [q[0] + out[0], q[1] + out[1]];
  const wallNormal: Vector = [-out[0] / NUDGE, -out[1] / NUDGE, 0];
  for (const stretch of cellsAlong(ground, from, to)) {
    const foot = { start: p[2] + slope * stretch.from, end: p[2] + slope * stretch.to };
    const head = stretch.at(surfaceOf(stretch.cell));
    const rise = Math.max(head.start - foot.start, head.end - foot.end);
    if (rise < STEP) continue;
    const place = (along: number): Place => [
      p[0] + ((q[0] - p[0]) * along) / length,
      p[1] + ((q[1] - p[1]) * along) / length,
    ];
    const ends: [Place, Place] = [place(stretch.from), place(stretch.to)];
    addBands(mesh, stretch, ends, foot, wallNormal, FACE.dug);
    mesh.edge([...ends[0], head.start], [...ends[1], head.end]);
  }
}

/** Lines are drawn at daylight, at the foot of walls, and where dug faces change direction. */
function isCrisp(finder: CellFinder, cell: Cell, beyond: Cell, rise: number): boolean {
  if (rise >= STEP) return true;
  if (beyond.face === "found") return true;
  if (beyond.face !== cell.face) return cell.face === "dug";
  if (cell.face !== "dug") return false;
  const [one, other] = [finder.slopeOf(cell), finder.slopeOf(beyond)];
  return one[0] * other[0] + one[1] * other[1] + one[2] * other[2] < 0.99;
}

/** The survey's own smooth normal at a place of a triangle. */
function mixedNormal(
  { base: { tin } }: LayeredGround,
  normal: Float32Array,
  triangle: number,
  x: number,
  y: number,
): Vector {
  const [a, b, c] = corners(tin, triangle);
  const twice = (p: number, q: number): number =>
    (tin.x[q]! - tin.x[p]!) * (y - tin.y[p]!) - (tin.y[q]! - tin.y[p]!) * (x - tin.x[p]!);
  const [wa, wb, wc] = [twice(b, c), twice(c, a), twice(a, b)];
  const mix = (axis: number): number =>
    wa * normal[3 * a + axis]! + wb * normal[3 * b + axis]! + wc * normal[3 * c + axis]!;
  return unit(mix(0), mix(1), mix(2));
}
