import { digScheme } from "../dig/index.js";
import {
  cellAt,
  cellsAlong,
  corners,
  LayeredGround,
  surfaceOf,
  valueAt,
  type BaseGround,
  type Cell,
  type Place,
  type Tin,
} from "../ground/index.js";
import type { Site } from "../site/index.js";
import { groundOf, schemeOf } from "./estimate.js";
import { MeshBuilder } from "./meshBuilder.js";
import { FACE, type GroundMesh, type Stage } from "./types.js";

type Vector = readonly [number, number, number];

/** Neighbours are looked for this far beyond an edge, m. */
const NUDGE = 1e-5;
/** Steps lower than this are not drawn, m. */
const STEP = 1e-4;

/**
 * The ground at a stage of the job as triangles: its surface, the vertical walls of holes with
 * their layers, the sides of the block at the survey's edge, and the crisp edges of works. Tanks
 * and pipes are left out: they are drawn as things. Pure; throws like `estimate`.
 */
export function stageMesh(site: Site, schemeId: string, stage: Stage): GroundMesh {
  const scheme = schemeOf(site, schemeId);
  const base = groundOf(site);
  const ground =
    stage === "found" ? new LayeredGround(base) : digScheme(site, scheme, base, stage).ground;
  const mesh = new MeshBuilder();
  const vertexNormals = normalsOf(base);
  const count = base.tin.triangles.length / 3;
  for (let t = 0; t < count; t++) {
    for (const cell of ground.cellsOf(t)) addSurface(mesh, base.tin, vertexNormals, t, cell);
  }
  for (const t of ground.touchedTriangles()) {
    for (const cell of ground.cellsOf(t)) {
      if (cell.face !== "found") addSteps(mesh, ground, t, cell);
    }
  }
  addBlock(mesh, ground);
  return mesh.build(base.tin.origin);
}

function isStructure(cell: Cell): boolean {
  return cell.layers[cell.layers.length - 1]!.structure;
}

function addSurface(
  mesh: MeshBuilder,
  tin: Tin,
  vertexNormals: readonly Vector[],
  triangle: number,
  cell: Cell,
): void {
  if (isStructure(cell)) return;
  const top = surfaceOf(cell);
  const places = cell.x.map((x, i): Vector => [x, cell.y[i]!, top[i]!]);
  const material = cell.layers[cell.layers.length - 1]!.material;
  if (cell.face === "found") {
    const normals = places.map((place) => mixedNormal(tin, vertexNormals, triangle, place));
    mesh.polygon(places, normals, material, FACE.found);
  } else {
    mesh.polygon(places, flatNormal(places), material, FACE[cell.face]);
  }
}

/** Vertical faces at the edges of a dug or filled cell, and the crisp lines along them. */
function addSteps(mesh: MeshBuilder, ground: LayeredGround, triangle: number, cell: Cell): void {
  const top = surfaceOf(cell);
  const count = cell.x.length;
  for (let i = 0; i < count; i++) {
    const j = (i + 1) % count;
    const p: Vector = [cell.x[i]!, cell.y[i]!, top[i]!];
    const q: Vector = [cell.x[j]!, cell.y[j]!, top[j]!];
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
    if (length < 1e-6) continue;
    const out: Place = [(NUDGE * (q[1] - p[1])) / length, (-NUDGE * (q[0] - p[0])) / length];
    const [mx, my] = [(p[0] + q[0]) / 2 + out[0], (p[1] + q[1]) / 2 + out[1]];
    const beyond = cellAt(ground, mx, my, triangle);
    if (!beyond) continue;
    const rise = valueAt(beyond, surfaceOf(beyond), mx, my) - (p[2] + q[2]) / 2;
    if (rise > STEP) stepBetween(ground, p, q, out, mesh);
    // A neighbour as found has no turn of its own, so a drop to it is drawn from this side.
    else if (rise < -STEP && beyond.face === "found") dropTo(mesh, cell, beyond, [i, j], out);
    if (isCrisp(cell, beyond, Math.abs(rise))) mesh.edge(p, q);
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

interface Ends {
  start: number;
  end: number;
}

/** The layers of a cell as bands on a vertical face, from `foot` up. */
function addBands(
  mesh: MeshBuilder,
  stretch: { cell: Cell; at: (values: readonly number[]) => Ends },
  [a, b]: [Place, Place],
  foot: Ends,
  normal: Vector,
  face: number,
): void {
  let low = foot;
  stretch.cell.layers.forEach((layer, i) => {
    const top = stretch.at(stretch.cell.tops[i]!);
    const high = { start: Math.max(top.start, foot.start), end: Math.max(top.end, foot.end) };
    if (!layer.structure && (high.start - low.start > STEP || high.end - low.end > STEP)) {
      const corners: Vector[] = [
        [...a, low.start],
        [...a, high.start],
        [...b, high.end],
        [...b, low.end],
      ];
      mesh.polygon(facing(corners, normal), normal, layer.material, face);
    }
    low = high;
  });
}

/** The corners in the order that makes the face look along its normal. */
function facing(corners: readonly Vector[], normal: Vector): readonly Vector[] {
  const [a, b, c, d] = corners as [Vector, Vector, Vector, Vector];
  const first = crossed(a, b, c);
  const second = crossed(a, c, d);
  const sign =
    normal[0] * (first[0] + second[0]) +
    normal[1] * (first[1] + second[1]) +
    normal[2] * (first[2] + second[2]);
  return sign >= 0 ? corners : [...corners].reverse();
}

/** Lines are drawn at daylight, at the foot of walls, and where dug faces change direction. */
function isCrisp(cell: Cell, beyond: Cell, rise: number): boolean {
  if (rise >= STEP) return true;
  if (beyond.face === "found") return true;
  if (beyond.face !== cell.face) return cell.face === "dug";
  if (cell.face !== "dug") return false;
  const [one, other] = [slopeOf(cell), slopeOf(beyond)];
  return one[0] * other[0] + one[1] * other[1] + one[2] * other[2] < 0.99;
}

/** Unit normal of a cell's surface. */
function slopeOf(cell: Cell): Vector {
  const top = surfaceOf(cell);
  return flatNormal(cell.x.map((x, i): Vector => [x, cell.y[i]!, top[i]!]));
}

function addBlock(mesh: MeshBuilder, ground: LayeredGround): void {
  const { tin } = ground.base;
  const bottom = blockBottom(ground);
  tin.hull.forEach((v, i) => {
    const w = tin.hull[(i + 1) % tin.hull.length]!;
    const p: Place = [tin.x[v]!, tin.y[v]!];
    const q: Place = [tin.x[w]!, tin.y[w]!];
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
    const normal: Vector = [(q[1] - p[1]) / length, (p[0] - q[0]) / length, 0];
    for (const stretch of cellsAlong(ground, p, q)) {
      const place = (along: number): Place => [
        p[0] + ((q[0] - p[0]) * along) / length,
        p[1] + ((q[1] - p[1]) * along) / length,
      ];
      const ends: [Place, Place] = [place(stretch.from), place(stretch.to)];
      addBands(mesh, stretch, ends, { start: bottom, end: bottom }, normal, FACE.block);
    }
  });
}

/** Height of the underside of the drawn block: a little below the lowest ground and floor. */
function blockBottom(ground: LayeredGround): number {
  const { tin } = ground.base;
  const below = Math.max(2, 0.25 * (tin.highest - tin.lowest));
  return tin.lowest - below;
}

function normalsOf(base: BaseGround): Vector[] {
  const { tin } = base;
  const sums = Array.from({ length: tin.x.length }, (): [number, number, number] => [0, 0, 0]);
  for (let t = 0; t < tin.triangles.length / 3; t++) {
    const vertices = corners(tin, t);
    const place = (v: number): Vector => [tin.x[v]!, tin.y[v]!, tin.z[v]!];
    const normal = crossed(place(vertices[0]), place(vertices[1]), place(vertices[2]));
    for (const v of vertices) {
      const sum = sums[v]!;
      sum[0] += normal[0];
      sum[1] += normal[1];
      sum[2] += normal[2];
    }
  }
  return sums.map(unit);
}

function mixedNormal(
  tin: Tin,
  vertexNormals: readonly Vector[],
  triangle: number,
  [x, y]: Vector,
): Vector {
  const [a, b, c] = corners(tin, triangle);
  const twice = (p: number, q: number): number =>
    (tin.x[q]! - tin.x[p]!) * (y - tin.y[p]!) - (tin.y[q]! - tin.y[p]!) * (x - tin.x[p]!);
  const [wa, wb, wc] = [twice(b, c), twice(c, a), twice(a, b)];
  const [na, nb, nc] = [vertexNormals[a]!, vertexNormals[b]!, vertexNormals[c]!];
  return unit([
    wa * na[0] + wb * nb[0] + wc * nc[0],
    wa * na[1] + wb * nb[1] + wc * nc[1],
    wa * na[2] + wb * nb[2] + wc * nc[2],
  ]);
}

/** Upward unit normal of a planar polygon (Newell's method). */
function flatNormal(places: readonly Vector[]): Vector {
  let [x, y, z] = [0, 0, 0];
  places.forEach(([ax, ay, az], i) => {
    const [bx, by, bz] = places[(i + 1) % places.length]!;
    x += (ay - by) * (az + bz);
    y += (az - bz) * (ax + bx);
    z += (ax - bx) * (ay + by);
  });
  return unit([x, y, z]);
}

function crossed(a: Vector, b: Vector, c: Vector): [number, number, number] {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  return [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
}

function unit([x, y, z]: Vector): Vector {
  const length = Math.hypot(x, y, z);
  return length > 0 ? [x / length, y / length, z / length] : [0, 0, 1];
}
