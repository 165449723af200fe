/** The ground as found, ready for a GPU: made once for a survey and its probes. */
import {
  BLOCK_SIZE,
  blocksIn,
  cellsAlong,
  LayeredGround,
  type BaseGround,
  type Place,
  type Tin,
} from "../ground/index.js";
import type { Site } from "../site/index.js";
import { groundOf } from "./estimate.js";
import { MeshBuilder, type Vector } from "./meshBuilder.js";
import { FACE, type GroundMesh } from "./types.js";
import { addBands } from "./wallMesh.js";

/** The ground as found. All m from `origin`: site = origin + place. Never written once made. */
export interface FoundPicture {
  origin: readonly [number, number, number];
  /** x, y, z and the unit normal of each vertex of the survey's triangles, which share them. */
  positions: Float32Array;
  normals: Float32Array;
  /** Vertices of each triangle, three numbers each; neighbours in plan are near in the list. */
  triangles: Uint32Array;
  /** Material of the top layer. */
  material: string;
  /** The sides of the block at the survey's edge; without edges. */
  block: GroundMesh;
  /** For each side of the survey's edge its first vertex in `block`, and last how many there are. */
  sides: Uint32Array;
  /** For each side of the survey's edge the triangle that it belongs to. */
  sideTriangles: Uint32Array;
  /** Underside of the block. */
  bottom: number;
}

/** Where the triangles of the ground as found lie, for questions about places and rays. */
export interface FoundShape {
  origin: readonly [number, number, number];
  /** Vertices, m from `origin`. */
  x: Float64Array;
  y: Float64Array;
  z: Float64Array;
  /** Number of the survey's point at each vertex; crossings of breaklines follow without one. */
  points: Uint32Array;
  triangles: Uint32Array;
  /** Triangles in a row that share a box. */
  blockSize: number;
  boxes: {
    west: Float64Array;
    south: Float64Array;
    east: Float64Array;
    north: Float64Array;
    lowest: Float64Array;
    highest: Float64Array;
  };
  /** Numbers of the boxes that hold a place, or come within `slack` m of it. */
  boxesAt: (x: number, y: number, slack: number) => readonly number[];
}

const pictures = new WeakMap<Tin, { ground: Site["ground"]; picture: FoundPicture }>();
const normals = new WeakMap<Tin, Float32Array>();

/** The picture of a site's ground as found; remembered like the ground. Throws like `estimate`. */
export function foundPicture(site: Site): FoundPicture {
  const base = groundOf(site);
  const known = pictures.get(base.tin);
  if (known?.ground === site.ground) return known.picture;
  const picture = pictureOf(base);
  pictures.set(base.tin, { ground: site.ground, picture });
  return picture;
}

/** Lets a picture that was made in another thread of the same ground be this site's. */
export function adoptPicture(site: Site, picture: FoundPicture): void {
  const { tin } = groundOf(site);
  pictures.set(tin, { ground: site.ground, picture });
  normals.set(tin, picture.normals);
}

/** Where the triangles of a site's ground as found lie. Throws like `estimate`. */
export function foundShape(site: Site): FoundShape {
  const { tin } = groundOf(site);
  const { origin, x, y, z, points, triangles, blocks } = tin;
  return {
    ...{ origin, x, y, z, points, triangles },
    blockSize: BLOCK_SIZE,
    boxes: blocks,
    boxesAt: (px, py, slack) => blocksIn(tin, [px - slack, py - slack, px + slack, py + slack]),
  };
}

function pictureOf(base: BaseGround): FoundPicture {
  const { tin } = base;
  const positions = new Float32Array(3 * tin.x.length);
  for (let v = 0; v < tin.x.length; v++) {
    positions[3 * v] = tin.x[v]!;
    positions[3 * v + 1] = tin.y[v]!;
    positions[3 * v + 2] = tin.z[v]!;
  }
  const below = Math.max(2, 0.25 * (tin.highest - tin.lowest));
  const bottom = tin.lowest - below;
  return {
    origin: tin.origin,
    positions,
    normals: vertexNormals(tin),
    triangles: tin.triangles,
    material: base.layers[base.layers.length - 1]!.material,
    ...blockOf(base, bottom),
    bottom,
  };
}

function blockOf(
  base: BaseGround,
  bottom: number,
): Pick<FoundPicture, "block" | "sides" | "sideTriangles"> {
  const ground = new LayeredGround(base);
  const { tin } = base;
  const mesh = new MeshBuilder();
  const sides = new Uint32Array(tin.hull.length + 1);
  for (let side = 0; side < tin.hull.length; side++) {
    addBlockSide(mesh, ground, side, bottom);
    sides[side + 1] = mesh.vertices;
  }
  const sideTriangles = trianglesAtEdge(tin);
  ground.release();
  return { block: mesh.build(tin.origin), sides, sideTriangles };
}

/** Adds the wall under one side of the survey's edge, as the ground now stands, down to `bottom`. */
export function addBlockSide(
  mesh: MeshBuilder,
  ground: LayeredGround,
  side: number,
  bottom: number,
): void {
  const { tin } = ground.base;
  const v = tin.hull[side]!;
  const w = tin.hull[(side + 1) % tin.hull.length]!;
  const p: Place = [tin.x[v]!, tin.y[v]!];
  const q: Place = [tin.x[w]!, tin.y[w]!];
  const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
  const normal: Vector = [(q[1] - p[1]) / length, (p[0] - q[0]) / length, 0];
  for (const stretch of cellsAlong(ground, p, q)) {
    const place = (along: number): Place => [
      p[0] + ((q[0] - p[0]) * along) / length,
      p[1] + ((q[1] - p[1]) * along) / length,
    ];
    const ends = [place(stretch.from), place(stretch.to)] as const;
    addBands(mesh, stretch, ends, { start: bottom, end: bottom }, normal, FACE.block);
  }
}

/** The triangle inside each side of the hull. */
function trianglesAtEdge({ triangles, twins, hull }: Tin): Uint32Array {
  const at = new Map<number, number>();
  for (let side = 0; side < twins.length; side++) {
    if (twins[side] === -1) at.set(triangles[side]!, Math.floor(side / 3));
  }
  return Uint32Array.from(hull, (vertex) => at.get(vertex) ?? 0);
}

/** Unit normal at each vertex: the mean of its triangles', each by its area. */
export function vertexNormals(tin: Tin): Float32Array {
  let known = normals.get(tin);
  if (!known) normals.set(tin, (known = normalsOf(tin)));
  return known;
}

function normalsOf({ x, y, z, triangles }: Tin): Float32Array {
  const sums = new Float64Array(3 * x.length);
  for (let side = 0; side < triangles.length; side += 3) {
    const a = triangles[side]!;
    const b = triangles[side + 1]!;
    const c = triangles[side + 2]!;
    const [ux, uy, uz] = [x[b]! - x[a]!, y[b]! - y[a]!, z[b]! - z[a]!];
    const [vx, vy, vz] = [x[c]! - x[a]!, y[c]! - y[a]!, z[c]! - z[a]!];
    const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    for (let k = 0; k < 3; k++) {
      const at = 3 * triangles[side + k]!;
      sums[at]! += nx;
      sums[at + 1]! += ny;
      sums[at + 2]! += nz;
    }
  }
  const units = new Float32Array(sums.length);
  for (let at = 0; at < sums.length; at += 3) {
    const length = Math.hypot(sums[at]!, sums[at + 1]!, sums[at + 2]!);
    if (length === 0) units[at + 2] = 1;
    else for (let k = 0; k < 3; k++) units[at + k] = sums[at + k]! / length;
  }
  return units;
}
